"""Where a repeat stops, and how often it is worked: "to last 3 sts", "4 times more", "to 2 sts before marker"."""

from __future__ import annotations

from dataclasses import dataclass

from counterpane.craft.rows.cursor import Cursor

_ENDS = (
    "to the end of the row",
    "to the end of row",
    "to end of the row",
    "to end of row",
    "to end of rnd",
    "to end of round",
    "to the end of the round",
    "to the end of the rnd",
    "to end of the round",
    "to the end of round",
    "to the end",
    "to end",
    "across the row",
    "across row",
    "across all sts",
    "across",
    "all across",
    "all around",
    "around",
    "all stitches",
    "all sts",
    "every stitch",
    "every st",
    "each st",
    "each stitch",
    "the row",
    "the round",
    "back",
    "all round",
)
_REST = ("to the last", "to last", "until the last", "until last", "till last", "till the last")
_WITHIN = ("till within", "until within", "to within")
_LEFT = frozenset({"remain", "rem", "remains", "left", "remaining"})


@dataclass(frozen=True, slots=True)
class Stop:
    """Stitches left for the rest, to the next marker or to the end of the row; or a number of times."""

    rest: int | None = None
    marker: bool = False
    times: int | None = None
    doubtful: bool = False


def take_stop(cursor: Cursor) -> Stop | None:
    """Move past words that say where a repeat stops; None (and no move) where there are none."""
    before = cursor.at
    found = _end(cursor) or _last(cursor) or _before_marker(cursor) or _until(cursor)
    if found is None:
        cursor.at = before
    return found


def _end(cursor: Cursor) -> Stop | None:
    return Stop(rest=0) if cursor.take(*_ENDS) else None


def _last(cursor: Cursor) -> Stop | None:
    before = cursor.at
    within = cursor.take(*_WITHIN)
    if not within and not cursor.take(*_REST):
        return None
    number = cursor.take_number()
    stitches = cursor.take_stitches()
    if number is None and not stitches:
        cursor.at = before
        return None
    if cursor.take("before marker", "before the marker", "before next marker", "before m"):
        return Stop(rest=number or 1, marker=True)
    if within:
        cursor.take("of the end", "of end", "from the end")
    cursor.take("of row", "of the row", "of rnd", "of round")
    return Stop(rest=1 if number is None else number)


def _before_marker(cursor: Cursor) -> Stop | None:
    if cursor.take("to next marker", "to the next marker", "to marker", "to the marker", "to m", "to next m"):
        return Stop(rest=0, marker=True)
    number = cursor.number(1)
    if cursor.word() != "to" or number is None:
        return None
    cursor.at += 2
    cursor.take_stitches()
    if cursor.take("before next marker", "before the next marker", "before marker", "before the marker", "before m"):
        return Stop(rest=number, marker=True)
    if cursor.take("before end", "before the end", "from end", "from the end", "before end of row"):
        return Stop(rest=number)
    return None


def _until(cursor: Cursor) -> Stop | None:
    if not cursor.take("until", "till"):
        return None
    cursor.take("only", "but", "there are only", "there are")
    number = cursor.take_number()
    if number is None:
        return None
    cursor.take_stitches()
    return Stop(rest=number) if cursor.take_any(_LEFT) else None


def take_count(cursor: Cursor) -> Stop | None:
    """Move past "4 times more", "once more", "3 times in all", "twice"; None where no count of repeats stands."""
    before = cursor.at
    if cursor.take("a further", "another"):
        times, more = cursor.take_times(), True
    else:
        times, more = _more_before(cursor)
    if times is None:
        cursor.at = before
        return None
    if cursor.take("in all", "in total", "total", "altogether"):
        return Stop(times=times)
    more = cursor.take("more") or more
    return Stop(times=times + 1, doubtful=not more)


def _more_before(cursor: Cursor) -> tuple[int | None, bool]:
    """Read "4 more times" and "1 more time" as well as the plain forms."""
    if cursor.number() is not None and cursor.word(1) == "more" and cursor.word(2) in ("times", "time"):
        cursor.at += 3
        return cursor.number(-3), True
    return cursor.take_times(), False
