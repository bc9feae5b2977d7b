"""Trace rows from a count: the stitches before and after each, and all that was worked on the way."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from counterpane.craft.rows.tree import NOWHERE, Node
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.trace.halts import Halt, Halted
from counterpane.craft.trace.knitter import Knitter
from counterpane.craft.trace.loops import CAST_ON, MOST_LOOPS, Loop, Needles, Side, Worked


@dataclass(frozen=True, slots=True)
class Step:
    """One row: stitches on the needles before and after.

    `segments` are those between markers after it, in the order in which the next row meets them; none without markers
    or after a turn.
    """

    before: int | None
    after: int | None
    misfit: Halt | None = None
    segments: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class TracedRow:
    """The stitches of a row in working order, the side it began on, and the loops on the needles after it.

    `loops` stand in the order in which the next row meets them.
    """

    side: Side
    worked: tuple[Worked, ...]
    loops: tuple[Loop, ...]


@dataclass(frozen=True, slots=True)
class Traced:
    """The steps of all rows, and the rows that were worked to their end."""

    steps: tuple[Step, ...]
    rows: tuple[TracedRow, ...]


def trace(
    rows: Sequence[Sequence[Node]], before: int, vocabulary: Vocabulary, sides: Sequence[Side | None] | None = None
) -> Traced:
    """Work the rows loop by loop from `before` stitches; row 1 is a RS row unless `sides` say otherwise.

    The row where the working stops has its misfit and no count after; the rows after it have none at all.
    More than `MOST_LOOPS` loops are not worked: the step says "unproved".
    """
    if before > MOST_LOOPS:
        place = rows[0][0].place if rows and rows[0] else NOWHERE
        return Traced(_stopped((), before, Halt("unproved", 0, place), len(rows)), ())
    needles = Needles([Loop(-number, -1, CAST_ON) for number in range(before, 0, -1)])
    return _traced(rows, Knitter(vocabulary, needles), sides or [None] * len(rows))


def _traced(rows: Sequence[Sequence[Node]], knitter: Knitter, sides: Sequence[Side | None]) -> Traced:
    steps: list[Step] = []
    done: list[TracedRow] = []
    for index, (parts, side) in enumerate(zip(rows, sides, strict=True)):
        knitter.row, knitter.side, knitter.worked = index, side or knitter.side, []
        began, before = knitter.side, knitter.needles.count()
        try:
            knitter.work_row(parts)
        except Halted as halted:
            halt = Halt(halted.slug, index, halted.place)
            return Traced(_stopped(steps, before, halt, len(rows)), tuple(done))
        needles = knitter.needles
        steps.append(Step(before, needles.count(), segments=needles.segments()))
        loops = tuple(loop for loop in (*reversed(needles.left), *needles.right) if loop is not None)
        done.append(TracedRow(began, tuple(knitter.worked), loops))
    return Traced(tuple(steps), tuple(done))


def _stopped(steps: Sequence[Step], before: int, halt: Halt, rows: int) -> tuple[Step, ...]:
    rest = (Step(None, None),) * (rows - len(steps) - 1)
    return (*steps, Step(before, None, halt), *rest)[: max(rows, 0)]
