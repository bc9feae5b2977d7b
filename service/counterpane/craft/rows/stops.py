"""Where a repeat stops, and how often it is worked: "to last 3 sts", "4 times more", "to 2 sts before marker"."""

from __future__ import annotations

from counterpane.craft.records import record
from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.phrasebook import phrases, ways

_ROW = "row|rnd|round|needle"
_ENDS = phrases(
    *ways("to|until|till", "the end|end", "|of the row|of row|of the rnd|of rnd|of the round|of round|of needle"),
    *ways("across|along|around|all across|all around|all round", "|the row|row|the rnd|the round|all sts|all stitches"),
    *ways("|in|into|through", "all|all the|every|each", "st|sts|stitch|stitches", "|to end|across|around"),
    *ways("the|this|the entire|the whole|entire|whole", _ROW),
    *ways("all rem|all remaining|rem|remaining|the rem|the remaining", "st|sts|stitches"),
    *ways("the|all the", "rest|remainder", "|of the row|of row|of the sts|of the stitches|of the round|of the needle"),
    *("back", "throughout", "rest", "remainder", "the others"),
    *ways("rest|remainder", "of", "|the", "row|rnd|round|needle|sts|stitches"),
    *ways("to", "the end", "of the", "needle|pin"),
    *ways("|all", "the way", "across|along|round|around|to the end"),
)  # fmt: skip
_ALONG = phrases("across", "along", "back", "across the row", "across row", "along the row")
_LAST = phrases(*ways("to|until|till|to within|up to", "last|the last|the final"))
_ALL_BUT = phrases(*ways("|to", "all", "but|except|save", "|the", "|last|final|end"))
_WITHIN = phrases("till within", "until within", "to within")
_NEAR_END = phrases(*ways("|to|from|before|of", "the end|end|row end", "|of the row|of row|of rnd|of round"))
_MARKER = "marker|the marker|next marker|the next marker|m|next m|the next m|first marker|second marker"
_TO_MARKER = phrases(*ways("to|until|till", _MARKER))
_BEFORE_MARKER = phrases(*ways("before|from|of", _MARKER))
_OF_ROW = phrases(*ways("of|on|in", "the row|row|rnd|the rnd|round|the round|needle|the needle"))
_ONLY = phrases("only", "but", "there are only", "there are", "you have", "there remain", "the last")
_LEFT = phrases(
    *ways(
        "remain|rem|remains|left|remaining|are left|is left|are on",
        "|on needle|on needles|on the needle|on your needle|on left needle",
    ),
    *ways("remain|rem|left|remaining", "on", "|the", "left|left hand|left-hand|lh", "needle"),
    "before end",
)  # fmt: skip
OPENINGS = frozenset().union(
    *(book.openings for book in (_ENDS, _ALONG, _LAST, _ALL_BUT, _WITHIN, _TO_MARKER)), ("to", "until", "till")
)
_MORE_BEFORE = phrases("a further", "another", "for another", "for a further")
_IN_ALL_BEFORE = phrases("a total of", "for a total of", "in all", "for")
_IN_ALL = phrases("in all", "in total", "total", "altogether", "all told")


@record
class Stop:
    """Stitches left for the rest, to the next marker or to the end of the row; or a number of times."""

    rest: int | None = None
    marker: bool = False
    times: int | None = None
    doubtful: bool = False


def take_stop(cursor: Cursor) -> Stop | None:
    """Move past words that say where a repeat stops; None (and no move) where there are none."""
    if cursor.word() not in OPENINGS:
        return None
    before = cursor.at
    along = cursor.take(_ALONG)
    found = _all_but(cursor) or _last(cursor) or _near(cursor) or _until(cursor)
    if found is None and along:
        cursor.at = before
    found = found or (Stop(rest=0) if cursor.take(_ENDS) else None)
    if found is None:
        cursor.at = before
    elif not found.rest and cursor.word() == "plain" and cursor.pausing_after():
        cursor.at += 1
    return found


def _last(cursor: Cursor) -> Stop | None:
    """Read "to last 3 sts", "to last st", "to last 3 sts before marker"."""
    before = cursor.at
    if not cursor.take(_LAST):
        return None
    number = cursor.take_number()
    stitches = cursor.take_stitches()
    if number is None and not stitches:
        cursor.at = before
        return None
    if cursor.take(_BEFORE_MARKER):
        return Stop(rest=1 if number is None else number, marker=True)
    cursor.take(_OF_ROW)
    cursor.take(_LEFT)
    return Stop(rest=1 if number is None else number)


def _all_but(cursor: Cursor) -> Stop | None:
    """Read "all but the last 3 sts", "all but one"."""
    before = cursor.at
    if cursor.take(_ALL_BUT):
        which, number = cursor.word(-1), cursor.take_number()
        stitches = cursor.take_stitches()
        if cursor.pausing and (number is not None or (stitches and which == "last")):
            return Stop(rest=1 if number is None else number)
    cursor.at = before
    return None


def _near(cursor: Cursor) -> Stop | None:
    """Read "to marker", "to 2 sts before marker", "to within 3 sts of end", "to 3 sts before end"."""
    before = cursor.at
    if cursor.take(_TO_MARKER):
        return Stop(rest=0, marker=True)
    if not (cursor.take(_WITHIN) or cursor.take_word("to", "until", "till")):
        return None
    number = cursor.take_number()
    if number is not None:
        cursor.take_stitches()
        if cursor.take(_BEFORE_MARKER):
            return Stop(rest=number, marker=True)
        if cursor.take(_NEAR_END):
            return Stop(rest=number)
    cursor.at = before
    return None


def _until(cursor: Cursor) -> Stop | None:
    """Read "until 3 sts remain", "until but 1 stitch remains"."""
    before = cursor.at
    if not cursor.take_word("until", "till"):
        return None
    cursor.take(_ONLY)
    number = cursor.take_number()
    if number is not None:
        cursor.take_stitches()
        if cursor.take(_LEFT):
            return Stop(rest=number)
    cursor.at = before
    return None


def take_count(cursor: Cursor) -> Stop | None:
    """Move past "4 times more", "once more", "3 times in all", "twice"; None where no count of repeats stands.

    A plain number of times is read as so many further ones, and is doubtful.
    """
    before = cursor.at
    more = cursor.take(_MORE_BEFORE) is not None
    in_all = not more and cursor.take(_IN_ALL_BEFORE) is not None
    times, more_within = _times(cursor)
    if times is None:
        cursor.at = before
        return None
    if cursor.take(_IN_ALL) or in_all:
        return Stop(times=times)
    more = cursor.take_word("more", "again") or more_within or more
    return Stop(times=times + 1, doubtful=not more)


def _times(cursor: Cursor) -> tuple[int | None, bool]:
    """Read "4 more times" and "1 more time" as well as the plain forms."""
    if cursor.number() is not None and cursor.word(1) == "more" and cursor.word(2) in ("times", "time"):
        cursor.at += 3
        return cursor.number(-3), True
    return cursor.take_times(), False
