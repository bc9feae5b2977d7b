"""How much is wrong with a text: what cannot be read, and what does not add up."""

from __future__ import annotations

from dataclasses import dataclass

from counterpane.craft.checking.examine import Examined, trouble
from counterpane.craft.counts import judge
from counterpane.craft.rows.instructions import AgainStep
from counterpane.craft.rows.tree import Row


def reading_troubles(examined: Examined) -> int:
    """Return the number of faults for which a row cannot be counted."""
    return sum(fault.fatal for fault in examined.instructions.faults)


def counting_troubles(examined: Examined) -> int:
    """Return the number of places where the counts of a text contradict each other."""
    walk = examined.walk
    drifting = sum(not repeated.fits_again or repeated.reached is False for repeated in walk.repeated)
    return (
        len(examined.jams)
        + (examined.odd is not None)
        + drifting
        + len(walk.wrong_counts)
        + len(examined.malformed)
        + multiple_is_wrong(examined)
        + cast_on_is_outside(examined)
    )


@dataclass(frozen=True, slots=True)
class Shown:
    """Where a trouble shows: the index of the listed row, and the repeat line in which it is worked, None for none."""

    row: int
    again: AgainStep | None = None


def shown(examined: Examined) -> list[Shown]:
    """Return where troubles show: one for each piece in which a knitter is stuck, else the first number not true."""
    walk = examined.walk
    stuck = examined.jams
    if stuck:
        return [Shown(index_of(examined, jam.row), jam.again) for jam in stuck]
    if walk.wrong_counts:
        wrong = walk.wrong_counts[0]
        return [Shown(index_of(examined, wrong.row), wrong.again)]
    drifting = next((r for r in walk.repeated if not r.fits_again or r.reached is False), None)
    if drifting is not None:
        return [Shown(drifting.step.rows[-1], drifting.step)]
    return [] if examined.odd is None else [Shown(examined.odd)]


def index_of(examined: Examined, row: Row) -> int:
    """Return the index of a listed row."""
    return next((at for at, other in enumerate(examined.rows) if other is row), examined.rows.index(row))


def only_drifts(examined: Examined) -> bool:
    """Tell whether all that is wrong with the counts is that rows to be repeated do not return to their start."""
    drifting = any(not repeated.fits_again for repeated in examined.walk.repeated)
    return drifting and trouble(examined) is None and not examined.walk.wrong_counts


def multiple_is_wrong(examined: Examined) -> bool:
    """Tell whether some count that the stated multiple promises does not work."""
    stated, starts = examined.instructions.multiple, examined.chain.starts
    if stated is None or not examined.complete or not starts:
        return False
    return all(judge(stated.of, stated.plus, true) == "wrong" for true in starts)


def cast_on_is_outside(examined: Examined) -> bool:
    """Tell whether the stated cast-on is not in the stated multiple."""
    stated, promised = examined.instructions.cast_on, examined.instructions.multiple
    if stated is None or promised is None or promised.of < 1:
        return False
    return (stated.count - promised.plus) % promised.of != 0
