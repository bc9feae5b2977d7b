"""The clauses of a row beside its stitches, each with the words that it may begin with."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TypeAlias

from counterpane.craft.rows import asides, cables, colours, commands, edges, evenly, gathers, prose, stops
from counterpane.craft.rows.asides import aside_at
from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.fabrics import PATTERN, take_across, take_fabric
from counterpane.craft.rows.lexicon import PLAIN_WORDS
from counterpane.craft.rows.mistakes import Fault
from counterpane.craft.rows.nest import plain
from counterpane.craft.rows.phrases import take_phrase
from counterpane.craft.rows.reading import Reading
from counterpane.craft.rows.repeats import REPEAT, named_star, repeat_clause, repeat_from
from counterpane.craft.rows.stops import take_stop
from counterpane.craft.rows.tree import IntoOne, Node, OpenRepeat, Work
from counterpane.craft.rows.workings import WHICH

_FILLERS = frozenset({"then", "and", "also", "finally", "now"})
_BETWEEN = frozenset({",", "and", "then", "work"})

Clause: TypeAlias = Callable[[Reading], bool]


def _filler(reading: Reading) -> bool:
    """Move past "and" and "then"; what an "and" joins may be counted together."""
    if reading.cursor.word() == "and":
        reading.nest.frame.anded, reading.and_at = len(reading.nest.frame.items), reading.cursor.at
    reading.cursor.at += 1
    return True


def _first(reading: Reading) -> bool:
    """Move past "first" before an order: "first knit 2, then …"."""
    found = reading.cursor.word(1) in PLAIN_WORDS
    reading.cursor.at += found
    return found


def _begins(reading: Reading) -> bool:
    """Move past "begin with" at the beginning of a row, before its first stitch."""
    cursor = reading.cursor
    found = cursor.at == 0 and cursor.word(1) in ("with", "by") and cursor.word(2) not in ("the", "working")
    cursor.at += 2 * found
    return found


def take_note(reading: Reading) -> bool:
    """Move past a printed count, or a note in brackets."""
    aside = aside_at(reading.cursor)
    if aside is None:
        return False
    reading.cursor.at += aside.length
    if aside.count is not None:
        reading.stated, reading.stated_place = aside.count, aside.place
    return True


def _repeat(reading: Reading) -> bool:
    if not prose.take_begin_again(reading.cursor):
        repeat_clause(reading.cursor, reading.nest)
    return True


def _stop(reading: Reading) -> bool:
    place, word, nest = reading.cursor.place, reading.cursor.word(), reading.nest
    apart = reading.cursor.at > 0 and reading.cursor.word(-1) == ","
    stop = take_stop(reading.cursor)
    if stop is None:
        return False
    before = (len(nest.frames), *nest.frame.items[-1:])
    nest.stop_here(stop, apart)
    last = nest.frame.items[-1] if nest.frame.items else None
    same = isinstance(last, OpenRepeat) and (last.stop, last.marker) == (stop.rest, stop.marker)
    if before == (len(nest.frames), *nest.frame.items[-1:]) and not same:
        reading.faults.append(Fault("unknown-term", place, word))
    return True


def _counted(reading: Reading) -> bool:
    """Read a number of times before or behind what is worked so often."""
    cursor, nest = reading.cursor, reading.nest
    return commands.counted_alternately(cursor, nest) or commands.counted_back(cursor, nest)


def _order(reading: Reading) -> bool:
    return commands.take_order(reading.cursor, reading.nest)


def _remark(reading: Reading) -> bool:
    return prose.take_begin_again(reading.cursor) or prose.take_prose(reading.cursor)


def _put(reading: Reading, node: Node | None) -> bool:
    if node is not None:
        reading.nest.put(node)
    return node is not None


def _edge(reading: Reading) -> bool:
    frame = reading.nest.frame
    first = not frame.items
    found = _put(reading, edges.take_edge(reading.cursor, first))
    if found and first:
        frame.edge = 1
    return found


def _gathered_back(reading: Reading) -> bool:
    """Read "all into the next st" behind single stitches."""
    before = reading.cursor.at
    into = gathers.take_into(reading.cursor)
    if into is not None and reading.cursor.pausing and reading.nest.gather_back(into):
        return True
    reading.cursor.at = before
    return False


def _gathered_ahead(reading: Reading) -> bool:
    """Read "in the double over knit 1 and purl 1", whose stitches stand behind it."""
    cursor, before, place = reading.cursor, reading.cursor.at, reading.cursor.place
    into = gathers.take_into(cursor)
    parts: list[Work] = []
    end, joined = before, False
    while into and cursor and not joined and (into.loops == 1 or len(parts) < into.loops):
        joined = _joining(cursor)
        phrase = take_phrase(cursor, reading.lexicon) if cursor else None
        if phrase is None or not isinstance(phrase.node, Work) or not gathers.is_single(phrase.node):
            break
        parts.append(phrase.node)
        end = cursor.at
    cursor.at = end if into and len(parts) >= max(2, into.loops) else before
    if cursor.at == end and into and end > before:
        reading.nest.put(IntoOne(tuple(parts), into.loops, place))
    return cursor.at > before


def _joining(cursor: Cursor) -> bool:
    """Move past what joins stitches of a list; tell whether "and" does, which comes before the last."""
    start = cursor.at
    while cursor.take_any(_BETWEEN):
        pass
    return "and" in [token.norm for token in cursor.run[start : cursor.at]]


def _several(reading: Reading) -> bool:
    """Read "3 stitches in the first stitch, knit 1, purl 1, knit 1"."""
    cursor, before, place = reading.cursor, reading.cursor.at, reading.cursor.place
    found = gathers.take_gather(cursor)
    parts: list[Work] = []
    while found and cursor and sum(part.times for part in parts) < found[0]:
        while cursor.take_any(_BETWEEN):
            pass
        phrase = take_phrase(cursor, reading.lexicon) if cursor else None
        if phrase is None or not isinstance(phrase.node, Work) or phrase.node.stitch not in gathers.SINGLE:
            break
        parts.append(phrase.node)
    if found is None or sum(part.times for part in parts) != found[0]:
        cursor.at = before
        return False
    reading.nest.put(IntoOne(tuple(parts), found[1], place))
    return True


def _from_star(reading: Reading) -> bool:
    """Read "work from * to end" or "from * to end" as a repeat."""
    cursor = reading.cursor
    before, place = cursor.at, cursor.place
    cursor.take_word("work", "continue", "cont")
    named = named_star(cursor) if cursor.word() in ("from", "between") else None
    if named is None:
        cursor.at = before
        return False
    repeat_from(cursor, reading.nest, place, *named)
    return True


def _work_or_repeat(reading: Reading) -> bool:
    """Read "work from * to end", "work to last 3 sts", or move past "work" before a stitch."""
    if _from_star(reading):
        return True
    cursor = reading.cursor
    before = cursor.at
    named = reading.lexicon.names.longest(cursor.run, before)[0] > 0
    if named or take_across(cursor) or take_fabric(cursor):
        cursor.at = before
        return False
    if _work(reading):
        return True
    cursor.at = before + 1
    if prose.take_prose(cursor):
        cursor.at = before  # "Work as shown above" orders stitches that nobody can count.
        return False
    return True


def _work(reading: Reading) -> bool:
    """Read "work to last 3 sts" as work in pattern; a bare "work" before a stitch says nothing."""
    cursor, nest = reading.cursor, reading.nest
    before, place = cursor.at, cursor.place
    cursor.at += 1
    if stop := take_stop(cursor):
        take_fabric(cursor)
        nest.put(plain(Work(PATTERN, place=place), stop))
        return True
    cursor.take(WHICH)
    number = cursor.take_number()
    if number is not None and (cursor.take_stitches(), take_fabric(cursor)) != (False, False):
        nest.put(Work(PATTERN, number, place=place))
        return True
    cursor.at = before
    return False


NUMBERED: tuple[Clause, ...] = (take_note, _edge, _several, _counted)
KINDS: tuple[tuple[Iterable[str], Clause], ...] = (
    (_FILLERS, _filler),
    (("first",), _first),
    (("begin", "commence", "start"), _begins),
    (asides.LEADS, take_note),
    (evenly.OPENINGS, evenly.take_evenly),
    (REPEAT, _repeat),
    (edges.OPENINGS, _edge),
    (gathers.OPENINGS, lambda reading: _put(reading, gathers.take_halves(reading.cursor))),
    (("all", "both", "in", "into"), _gathered_back),
    (("in", "into"), _gathered_ahead),
    (("work", "make", "knit"), _several),
    (("work",), _work_or_repeat),
    (("from", "cont", "continue"), _from_star),
    (colours.LEADS, lambda reading: colours.take_yarn(reading.cursor)),
    (commands.ORDERS, _order),
    (stops.OPENINGS, _stop),
    (("once", "twice", "thrice", "for", "x"), _counted),
    (prose.OPENINGS, _remark),
    (cables.OPENINGS, lambda reading: cables.take_up_needle(reading.cursor)),
)
