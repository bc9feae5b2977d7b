"""Where balls run out: the row in which the next one is joined, at the earliest and at the latest."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction

MOST_PLACED = 50
"""Joins that are placed; house figure that bounds the answer."""


@dataclass(frozen=True, slots=True)
class Join:
    """The ball that is joined on, counted from 2, and the rows of the blanket in which the one before runs out.

    It is joined at the side, at the beginning of the first of these rows, or of the last that the ball still works.
    """

    ball: int
    first_row: int
    last_row: int


def joins_at(
    joins: int, a_ball: tuple[Fraction, Fraction], begun: Fraction, rows: int, taken: Callable[[int], Fraction]
) -> tuple[Join, ...]:
    """Place the joins of a yarn in a blanket of so many rows.

    `a_ball` are the loops that a ball works beside its ends, by the high and by the low figures of a loop; `begun`
    those of the cast-on, and `taken` those up to the end of a row, rising with the row.
    """
    placed = []
    for ball in range(1, min(joins, MOST_PLACED) + 1):
        ends = (_row_of(ball * each - begun, rows, taken) for each in a_ball)
        placed.append(Join(ball + 1, *ends))
    return tuple(placed)


def _row_of(amount: Fraction, rows: int, taken: Callable[[int], Fraction]) -> int:
    """Return the row in which an amount runs out, the last row where it does not."""
    low, high = 0, rows
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (middle, high) if taken(middle) <= amount else (low, middle)
    return high
