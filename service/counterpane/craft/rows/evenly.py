"""Stitches more or fewer, spread over a row: "knit, increasing 6 sts evenly"; where each of them falls is not told."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from counterpane.craft.rows.cursor import STITCH_WORDS
from counterpane.craft.rows.fabrics import PATTERN
from counterpane.craft.rows.nest import plain
from counterpane.craft.rows.phrasebook import phrases, ways
from counterpane.craft.rows.reading import Reading
from counterpane.craft.rows.stops import Stop, take_stop
from counterpane.craft.rows.tree import OpenRepeat, Work

OPENINGS: Mapping[str, str] = {
    **dict.fromkeys(("inc", "increase", "increasing"), "m1"),
    **dict.fromkeys(("dec", "decrease", "decreasing"), "k2tog"),
}
"""What changes the count, by the words that tell of it; the stitch is the usual one, common practice, no source."""
_EVENLY = phrases(*ways("evenly", "|spaced|spread|distributed"))
_ACROSS = phrases(
    *ways("across|along|over|around", "|row|rnd|round|the row|the rnd|the round|this row|this rnd|this round")
)
_TAKEN = {"m1": 0, "k2tog": 2}


def take_evenly(reading: Reading) -> bool:
    """Read how many stitches more or fewer there are; the stitch before it is worked across between them."""
    cursor, before = reading.cursor, reading.cursor.at
    stitch, place = OPENINGS[cursor.word()], cursor.place
    cursor.at += 1
    early = cursor.take(_EVENLY)
    number = cursor.take_number()
    cursor.take_any(STITCH_WORDS)
    if not number or not (early or cursor.take(_EVENLY)) or not _can_spread(reading):
        cursor.at = before
        return False
    across = cursor.take(_ACROSS)
    stop = take_stop(cursor)
    if across and stop is not None and stop.rest == 0:
        stop = take_stop(cursor) or stop
    _spread(reading, Work(stitch, number, evenly=True, place=place), stop)
    return True


def _can_spread(reading: Reading) -> bool:
    """Tell whether what stands before is a stitch worked across, or nothing."""
    last = reading.nest.frame.items[-1] if reading.nest.frame.items else None
    if isinstance(last, OpenRepeat):
        return last.plain and not last.marker and last.stop is not None
    return not any(isinstance(item, OpenRepeat) for item in reading.nest.frame.items)


def _spread(reading: Reading, change: Work, stop: Stop | None) -> None:
    """Work the stitch before across, as far as it goes or as the words behind say, with the change behind it."""
    frame = reading.nest.frame
    last = frame.items[-1] if frame.items else None
    rest = (stop.rest if stop else None) or 0
    if isinstance(last, OpenRepeat):
        frame.items.pop()
        across = replace(last, stop=rest or last.stop)
    elif frame.bare and isinstance(last, Work):
        frame.items.pop()
        across = plain(last, Stop(rest=rest))
    else:
        across = plain(Work(PATTERN, place=change.place), Stop(rest=rest))
    stop_at = (across.stop or 0) + _TAKEN[change.stitch] * change.times
    reading.nest.put(replace(across, stop=stop_at))
    reading.nest.put(change)
