"""Cells on a torus, and the lattice of shifts that leave one as it is."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import gcd
from typing import TypeAlias

Labels: TypeAlias = tuple[str, ...]
Cell: TypeAlias = tuple[Labels, ...]


@dataclass(frozen=True, slots=True)
class Lattice:
    """The shifts that fix a texture, in Hermite form: `stitches` along a row, or `rows` up and `shift` along.

    `stitches` is the least period of every row, `rows` the fewest rows after which the texture comes again, shifted by
    0 <= `shift` < `stitches`. The smallest cell has rows times stitches of each.
    """

    rows: int
    shift: int
    stitches: int

    @property
    def area(self) -> int:
        """Stitches of the smallest cell, which may be skew."""
        return self.rows * self.stitches

    @property
    def straight(self) -> tuple[int, int]:
        """Rows and stitches of the smallest cell with upright sides."""
        return self.rows * self.stitches // gcd(self.shift, self.stitches), self.stitches


def lattice(cell: Cell) -> Lattice:
    """Return the lattice of a cell of at least one row and one stitch, all rows equally long."""
    width = len(cell[0])
    along = next(by for by in _divisors(width) if all(row == _along(row, by) for row in cell))
    narrow = [row[:along] for row in cell]
    return next(_risings(narrow, along))


def _risings(rows: Sequence[Labels], width: int) -> Iterator[Lattice]:
    """Give the lattices of rows of this least period, the lowest rise first; a whole round is always one."""
    rises = ((up, (*rows[up:], *rows[:up])) for up in _divisors(len(rows)))
    return (
        Lattice(up, shift, width)
        for up, higher in rises
        for shift in range(width)
        if all(_along(above, shift) == row for row, above in zip(rows, higher, strict=True))
    )


def _along(row: Labels, by: int) -> Labels:
    return row[by:] + row[:by]


def _divisors(number: int) -> Iterator[int]:
    return (each for each in range(1, number + 1) if number % each == 0)


def straight(cell: Cell) -> Cell:
    """Return the smallest cell with upright sides; cells of one texture in any stated size give equally large ones."""
    rows, stitches = lattice(cell).straight
    return tuple(row[:stitches] for row in cell[:rows])
