"""Words that order what has been read: "alternately", "continue the same to the end", "for the end", "repeat this"."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.lexicon import GERUNDS
from counterpane.craft.rows.mistakes import Fault
from counterpane.craft.rows.nest import Nest
from counterpane.craft.rows.phrasebook import phrases, ways
from counterpane.craft.rows.stops import Stop, take_count, take_stop
from counterpane.craft.rows.tree import Work
from counterpane.craft.rows.units import last_units
from counterpane.craft.rows.yarns import YARN_OPENINGS

_ALTERNATELY = phrases(
    "alternately", "alternatively", "alternate", "in turn", "by turns", *ways("so|thus", "alternately")
)
_SO = (
    "the same|thus|so|like this|this|in this manner|in this way|in the same way|in the same manner|in like manner"
    "|these stitches"
)
_ON = "|on|to work|to repeat|working|repeating"
# "Work as before" is none of these: so the fabric of earlier rows goes on, and not what this row has said.
_THE_SAME = phrases(
    *ways("work", _ON, _SO),
    *ways("continue|continuing|cont|go on|proceed|keep on|carry on", _ON, _SO + "|as before"),
    *ways("|and", "so on|so forth"),
    "etc",
    "& c",
    "and c",
)
_GO_ON = phrases("continue", "continuing", "cont", "go on", "keep on", "proceed")
_MAKES = frozenset({"making", "slipping", "taking", "turning", "bringing", "throwing"})
_THE_END = phrases(
    *ways("to finish|finish|finishing|finish off", "|,|with"),
    *ways(
        "for|at",
        "the",
        "end",
        "|of the row|of row|of each row|of the round|of the needle|of every row",
        "|,|:|-|- -|work",
    ),
    *ways(
        "|and",
        "end|ending|ends|finish|finishing|conclude|concluding|terminate|terminating|close|closing",
        "|the row|each row|row",
        "|with|by|thus|:",
    ),
    *ways("|and", "then", "for the end", "|:"),
)
_THIS = phrases(
    *ways("|the|all", "this|that|these|these stitches|last|above|pattern|whole|this pattern|both"),
    *ways("these|the last", "2|3|4", "stitches|sts"),
)
_REST = phrases(
    *ways("|and|, and", "knit|k", "that|it|this|them|these|those|those plain|them plain|these plain|the same"),
    *ways("|and|, and", "knit|k", "the last", "|one|st|stitch"),
)
_PURL_REST = phrases(*ways("|and|, and", "purl|pearl|seam|p", "that|it|this|them|these|those|the same"))
_THERE = phrases(*ways("there will|there should|you will|you should", "|then", "be|remain|have", "|left"))
_TO_WORK = phrases(
    *ways("|left", "to knit|to be knitted|to work|to be worked", "|at the end", "|of the row|of row|of each row"),
    *ways("|left", "at the end", "|of the row|of row|of each row"),
)

Order = Callable[[Cursor, Nest], bool]


def _alternately(cursor: Cursor, nest: Nest) -> bool:
    """Read "seam 7, and knit 2 alternately" and "alternately make 1, and knit 2 together"."""
    if not cursor.take(_ALTERNATELY):
        return False
    word = cursor.run[cursor.at - 1]
    frame = nest.frame
    stop = take_stop(cursor)
    if frame.items and (stop is not None or cursor.pausing):
        ends = all(token.norm in (".", ";") for token in cursor.run[cursor.at : cursor.at + 2])
        nest.fold(last_units(frame.items, 2), stop or Stop(rest=0 if ends else None))
    else:
        frame.alternate = (len(frame.items), None, word)
    return True


def counted_alternately(cursor: Cursor, nest: Nest) -> bool:
    """Read "8 times alternately", whose two units stand behind it."""
    before = cursor.at
    times = cursor.take_times()
    if times is None or not cursor.take(_ALTERNATELY):
        cursor.at = before
        return False
    word = cursor.run[cursor.at - 1]
    cursor.take_word(":", ",", "-")
    nest.frame.alternate = (len(nest.frame.items), times, word)
    return True


def counted_back(cursor: Cursor, nest: Nest) -> bool:
    """Read "knit 1, 8 times;" and "knit 2 together, twice": the count is of what stands before it."""
    before = cursor.at
    cursor.take_word("for")
    times = cursor.take_times()
    if times is None or not nest.frame.items or not cursor.pausing:
        cursor.at = before
        return False
    _count_back(nest, Stop(times=times))
    return True


def _count_back(nest: Nest, stop: Stop) -> None:
    """Repeat the stitches before a count."""
    start, doubtful = nest.frame.counted()
    if doubtful:
        readings = ("the last stitch so often", "all that stands before it so often")
        place = nest.frame.items[-1].place
        nest.faults.append(Fault("ambiguous-term", place, "times", readings=readings, fatal=False))
    nest.fold(start, stop)


def repeat_this(cursor: Cursor, nest: Nest) -> bool:
    """Read "repeat this 3 times" behind a clause, and "repeat this to the end"."""
    before = cursor.at
    if not cursor.take(_THIS) or not nest.frame.items:
        cursor.at = before
        return False
    if (stop := take_stop(cursor)) is not None:
        nest.repeat_list(stop)
    elif (count := take_count(cursor)) is not None:
        _count_back(nest, count)
    elif cursor.pausing:
        nest.repeat_list(Stop(rest=None if cursor.has_words else 0))
    else:
        cursor.at = before
        return False
    return True


def _same(cursor: Cursor, nest: Nest) -> bool:
    """Read "continue the same to the end", "and so on", "continue turning the wool and knitting 2 together"."""
    before = cursor.at
    if cursor.take(_THE_SAME):
        stop = take_stop(cursor)
        if nest.frame.items and (stop is not None or cursor.pausing):
            nest.go_on(None, stop or Stop(rest=0))
            return True
    cursor.at = before
    if cursor.take(_GO_ON) and _works(cursor) and nest.frame.items:
        nest.frame.going = len(nest.frame.items)
        return True
    cursor.at = before
    return False


def _works(cursor: Cursor) -> bool:
    """Tell whether stitches follow as something that goes on: "knitting 2 together", "turning the wool"."""
    word = cursor.word()
    return word.endswith("ing") and (word in GERUNDS or word in YARN_OPENINGS or word in _MAKES)


def _the_end(cursor: Cursor, nest: Nest) -> bool:
    """Move past "for the end:", "ending with": what follows closes the row."""
    if not cursor.take(_THE_END):
        return False
    nest.open_end()
    return True


def _rest(cursor: Cursor, nest: Nest) -> bool:
    """Read "until 1 stitch remains, and knit that": as many as the repeat before it leaves."""
    items = nest.frame.items
    left = getattr(items[-1], "stop", None) if items else None
    if not left:
        return False
    place = cursor.place
    key = "k" if cursor.take(_REST) else "p" if cursor.take(_PURL_REST) else None
    if key is None:
        return False
    if cursor.number() == left:
        cursor.at += 1
        cursor.take_stitches()
    nest.put(Work(key, left, place=place))
    return True


def _there_will_be(cursor: Cursor, nest: Nest) -> bool:
    """Read "there will be 3 plain stitches to knit at the end of the row"."""
    before = cursor.at
    if cursor.take(_THERE) and (number := cursor.take_number()) is not None:
        purled = cursor.word() in ("purl", "purled", "pearl", "pearled", "seamed", "seam")
        cursor.take_word("plain", "purl", "purled", "pearl", "pearled", "seamed", "seam")
        cursor.take_stitches()
        if cursor.take(_TO_WORK) and cursor.pausing:
            nest.open_end()
            nest.put(Work("p" if purled else "k", number, place=cursor.run[before].place))
            return True
    cursor.at = before
    return False


_ALL: tuple[tuple[frozenset[str], Order], ...] = (
    (_ALTERNATELY.openings, _alternately),
    (_THE_SAME.openings | _GO_ON.openings, _same),
    (_REST.openings | _PURL_REST.openings, _rest),
    (_THERE.openings, _there_will_be),
    (_THE_END.openings, _the_end),
)
ORDERS: Mapping[str, tuple[Order, ...]] = {
    word: tuple(order for openings, order in _ALL if word in openings)
    for word in frozenset().union(*(openings for openings, _ in _ALL))
}


def take_order(cursor: Cursor, nest: Nest) -> bool:
    """Move past words that order what has been read; no move where there are none."""
    return any(order(cursor, nest) for order in ORDERS.get(cursor.word(), ()))
