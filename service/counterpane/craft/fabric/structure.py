"""Openings, strands, slipped stitches and decreases, followed loop by loop."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby
from typing import Literal

from counterpane.craft.fabric.faces import SLIP, passes_of
from counterpane.craft.rows.tree import Place
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.trace import Loop, Traced, Worked

WRAPPED_TWICE = "yo wrapped twice"
Lean = Literal["left", "right", "centre"]


@dataclass(frozen=True, slots=True)
class Opening:
    """Yarn-overs side by side in a row: one opening of so many."""

    row: int
    yarn_overs: int
    place: Place


@dataclass(frozen=True, slots=True)
class Decrease:
    """Loops that became fewer in one stitch, and where the top one leans; None where that is not known."""

    row: int
    stitch: str
    lean: Lean | None
    place: Place


def _worked(traced: Traced) -> Iterator[Worked]:
    return (worked for row in traced.rows for worked in row.worked)


def openings(traced: Traced, vocabulary: Vocabulary) -> tuple[Opening, ...]:
    """Return the openings that yarn-overs leave, in working order."""
    found = []
    for run in _runs(traced, lambda worked: _is_yarn_over(worked.stitch, vocabulary)):
        wraps = sum(2 if worked.stitch == WRAPPED_TWICE else 1 for worked in run)
        found.append(Opening(run[0].row, wraps, run[0].place))
    return tuple(found)


def _is_yarn_over(stitch: str, vocabulary: Vocabulary) -> bool:
    return stitch in vocabulary.stitches and vocabulary[stitch].opens


def _runs(traced: Traced, wanted: Callable[[Worked], bool]) -> Iterator[list[Worked]]:
    """Yield the runs of neighbouring stitches of a kind; what only moves the yarn does not end one."""
    for row in traced.rows:
        for stitches in passes_of(row):
            moved = (worked for worked in stitches if worked.takes or worked.leaves)
            yield from (list(run) for is_wanted, run in groupby(moved, key=wanted) if is_wanted)


def longest_strand(traced: Traced) -> int:
    """Return the most stitches that the yarn passes in one go, slipped next to one another.

    At the edge of a row the yarn starts or ends at the edge stitch itself, so one stitch less is passed. A stitch that
    is slipped only to be passed over leaves no strand.
    """
    passed_over = {loop.number for worked in _worked(traced) if not worked.leaves for loop in worked.takes}
    lengths = [0]
    for row in traced.rows:
        for stitches in passes_of(row):
            moved = [worked for worked in stitches if worked.takes or worked.leaves]
            lengths += _strands(moved, passed_over)
    return max(lengths)


def _strands(stitches: Sequence[Worked], passed_over: set[int]) -> Iterator[int]:
    at = 0
    for is_strand, run in groupby(stitches, key=lambda worked: _carries_strand(worked, passed_over)):
        length = len(list(run))
        if is_strand:
            yield length - (1 if at == 0 or at + length == len(stitches) else 0)
        at += length


def _carries_strand(worked: Worked, passed_over: set[int]) -> bool:
    return worked.stitch == SLIP and worked.takes[0].number not in passed_over


def most_rows_slipped(traced: Traced) -> int:
    """Return the most rows over which one loop is slipped without being worked."""
    slipped = Counter(worked.takes[0].number for worked in _worked(traced) if worked.stitch == SLIP)
    return max(slipped.values(), default=0)


def decreases(traced: Traced, vocabulary: Vocabulary) -> tuple[Decrease, ...]:
    """Return the stitches that leave fewer loops than they take, with their lean as the right side shows it.

    A slipped stitch passed over leans to the left of the side it is worked on (common practice, no source).
    """
    fewer = (worked for worked in _worked(traced) if not worked.into and len(worked.takes) > len(worked.leaves))
    return tuple(_decrease(worked, vocabulary) for worked in fewer)


def _decrease(worked: Worked, vocabulary: Vocabulary) -> Decrease:
    stitch = vocabulary.stitches.get(worked.stitch)
    lean: Lean | None = stitch.lean if stitch else None
    if stitch and stitch.makes < 0:
        lean = "right" if worked.side == "WS" else "left"
    return Decrease(worked.row, worked.stitch, lean, worked.place)


def on_double_yarn_over(loops: Sequence[Loop], vocabulary: Vocabulary) -> bool:
    """Say whether two loops are the two of one double yarn-over."""
    numbers = sorted(loop.number for loop in loops)
    if len(loops) != 2 or loops[0].row != loops[1].row or numbers[1] - numbers[0] != 1:
        return False
    return all(_is_yarn_over(loop.stitch, vocabulary) for loop in loops)


def misplaced_pairs(traced: Traced, vocabulary: Vocabulary) -> tuple[Place, ...]:
    """Return the places where stitches meant for a double yarn-over lie over other loops, though the counts agree."""
    pairs = (worked for worked in _worked(traced) if worked.into == 2 and worked.takes)
    return tuple(dict.fromkeys(pair.place for pair in pairs if not on_double_yarn_over(pair.takes, vocabulary)))
