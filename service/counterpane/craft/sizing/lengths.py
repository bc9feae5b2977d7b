"""Lengths: whole repeats of rows for a target, with the right and the wrong side carried through."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from heapq import nsmallest

from counterpane.craft.rows.tree import Side


@dataclass(frozen=True, slots=True)
class Stretch:
    """Whole repeats and the rows of a part repeat after them."""

    repeats: int
    closing: int
    rows: int


def side_of(row: int, first: Side = "RS") -> Side:
    """Return the side of a row counted from 1; rows worked in rounds stay rounds."""
    if first == "round" or row % 2 == 1:
        return first
    return "WS" if first == "RS" else "RS"


def stretch(
    period: int, target: Fraction, closings: Sequence[int] = (0,), parity: int | None = None, least: int = 1
) -> Stretch | None:
    """Return the repeats of `period` rows nearest a target of rows, the longer of a tie; None where none is possible.

    `closings` are the rows after which a last, partial repeat may stop; `parity` is what the sum of rows must leave
    when halved (0 even, 1 odd, None either). A part repeat needs `least` whole ones before it.
    """
    found = [one for closing in closings for one in _near(period, target, closing, parity, least)]
    return min(found, key=lambda one: (abs(one.rows - target), -one.rows), default=None)


def _near(period: int, target: Fraction, closing: int, parity: int | None, least: int) -> list[Stretch]:
    step = 1 if parity is None or period % 2 == 0 else 2
    first = least
    if parity is not None and (period * first + closing - parity) % 2:
        first += 1
        if period % 2 == 0:
            return []
    middle = max(0, (target - closing - period * first) // (period * step))
    near = (first + step * index for index in range(max(0, middle - 1), middle + 3))
    rows = [Stretch(repeats, closing, period * repeats + closing) for repeats in near]
    return nsmallest(1, rows, key=lambda one: (abs(one.rows - target), -one.rows))


def repeats_for(
    target: Fraction, bottom: int, period: int, top: int, closing: int = 0, *, top_begins: Side = "RS"
) -> tuple[int, int] | None:
    """Return the repeats and the whole number of rows of a piece whose first row is a RS row.

    None where no number of repeats lets the top border begin on the side it must.
    """
    parity = (bottom + (0 if top_begins == "RS" else 1)) % 2
    found = stretch(period, target - bottom - top, (closing,), parity)
    return (found.repeats, bottom + found.rows + top) if found else None


def ridges(rows: int) -> tuple[int, int]:
    """Return the garter ridges seen on the right and on the wrong side, where row 1 is a RS row."""
    return rows // 2, (rows + 1) // 2


def first_sides(repeats: int, period: int) -> tuple[Side, ...]:
    """Return the side of row 1 of each of the repeats; they alternate where the period is odd."""
    return tuple(side_of(1 + index * period) for index in range(repeats))
