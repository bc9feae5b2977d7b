"""Which rows belong to the first piece of a text, how far arithmetic over all counts can go, and a count to begin with.

A repeat line that changes the count makes what stands behind it depend on how often it is worked: up to there all
counts are derived at once, and from there on the text is only followed from one count.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from counterpane.craft.checking.follow import Walk
from counterpane.craft.counts import Chain, Maps, count
from counterpane.craft.rows.instructions import AgainStep, EndStep, Instructions, StartStep, Step
from counterpane.craft.rows.tree import Row

# House figures: how many counts are tried one by one, and how often the distance is doubled after that.
TRIED_IN_TURN = 12
TRIED_DOUBLING = 16


def first_piece(steps: Sequence[Step], rows: Sequence[Row]) -> tuple[Row, ...]:
    """Return the rows up to the next cast-on, or to the end that all stitches come to."""
    listed, ended = 0, False
    for step in steps:
        if isinstance(step, StartStep) or (ended and isinstance(step, Row)):
            return tuple(rows[:listed])
        ended = ended or isinstance(step, EndStep)
        listed += isinstance(step, Row)
    return tuple(rows)


def piece_begin(steps: Sequence[Step], index: int) -> int:
    """Return the index of the first row of the piece that a row belongs to."""
    begin = listed = 0
    for step in steps:
        begin = listed if isinstance(step, StartStep) and listed <= index else begin
        listed += isinstance(step, Row)
    return begin


def run_end(steps: Sequence[Step], index: int) -> int:
    """Return the index of the last row before the next repeat line or piece."""
    listed = -1
    for step in steps:
        if isinstance(step, AgainStep | StartStep) and listed >= index:
            return listed
        listed += isinstance(step, Row)
    return listed


def later_pieces(steps: Sequence[Step], rows: Sequence[Row]) -> Iterator[tuple[StartStep, tuple[Row, ...]]]:
    """Yield each cast-on or pick-up after rows, with the rows from it to the next one or to the end of the stitches."""
    listed, start, begun = 0, None, 0
    for step in (*steps, None):
        if step is None or isinstance(step, StartStep | EndStep):
            if start is not None:
                yield start, tuple(rows[begun:listed])
            start, begun = (step if isinstance(step, StartStep) else None), listed
        listed += isinstance(step, Row)


def cast_on_later(instructions: Instructions) -> bool:
    """Tell whether the first rows are given without a cast-on and a later piece has one: a multiple is that piece's."""
    return instructions.cast_on is None and any(isinstance(step, StartStep) for step in instructions.steps)


def rows_before_change(steps: Sequence[Step], rows: Sequence[Row], maps: Maps) -> int:
    """Return how many rows are listed before rows follow a repeat line that changes the count."""
    listed, changed = 0, False
    for step in steps:
        if listed == len(rows) or (changed and isinstance(step, Row)):
            return listed
        listed += isinstance(step, Row)
        changed = changed or (isinstance(step, AgainStep) and _changes_count(step, rows, maps))
    return listed


def _changes_count(step: AgainStep, rows: Sequence[Row], maps: Maps) -> bool:
    """Tell whether the rows of a repeat line leave another count than they begin with."""
    again = [rows[index] for index in step.rows if index < len(rows)]
    chain = count([row.parts for row in again], maps.vocabulary, [row.side for row in again], maps)
    return chain.drift != 0 or step.again.change != 0


def workable(start: int, chain: Chain, followed: Callable[[int], Walk]) -> int:
    """Return the first of some counts from `start` on at which every repeat line can be worked as it says.

    `start` itself where none of them does.
    """
    step = next((own.of for own in chain.starts if own.of and own.admits(start)), 0)
    tried: tuple[int, ...] = (*range(TRIED_IN_TURN), *(1 << n for n in range(4, TRIED_DOUBLING))) if step else (0,)
    found = next((n for n in tried if _goes_through(followed(start + step * n))), None)
    if found is None or found < TRIED_IN_TURN:
        return start + step * (found or 0)
    low = found // 2
    while found - low > 1:
        middle = (low + found) // 2
        low, found = (low, middle) if _goes_through(followed(start + step * middle)) else (middle, found)
    return start + step * found


def _goes_through(walk: Walk) -> bool:
    return not walk.jams and not any(repeated.reached is False for repeated in walk.repeated)
