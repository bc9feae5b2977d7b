"""How alike two textures are: the share of stitches that agree, laid over each other as well as they can be."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import lcm

from counterpane.craft.texture.canonical import canonical
from counterpane.craft.texture.moves import MOVES, Move, Signs, moved
from counterpane.craft.texture.torus import Cell

LARGEST_SIDE = 64
"""Rows or stitches of a common cell beyond which two textures are not compared; house figure that bounds time."""

CLOSE = Fraction(9, 10)
"""Share of stitches that agree from which two textures are called close; house figure."""


@dataclass(frozen=True, slots=True)
class Likeness:
    """How many stitches of a common cell agree, out of how many, and by which move of the second texture."""

    matching: int
    of: int
    move: Move

    @property
    def share(self) -> Fraction:
        """The share of stitches that agree."""
        return Fraction(self.matching, self.of)


def likeness(one: Cell, other: Cell, signs: Signs) -> Likeness | None:
    """Lay the second texture over the first at every shift and by every move, and return the best; plain moves first.

    Both are smallest upright cells. None where their common cell is too large.
    """
    rows, stitches = lcm(len(one), len(other)), lcm(len(one[0]), len(other[0]))
    if max(rows, stitches) > LARGEST_SIDE:
        return None
    if _area(other) > _area(one):
        one, other = other, one  # Every move is its own way back, so it is the smaller one that is shifted about.
    fixed = _planes(one, rows, stitches)
    best = Likeness(0, rows * stitches, MOVES[0])
    for move, image in _different(other, signs):
        if at_most(one, image) > best.share:
            matching = max(_matches(fixed, image, rows, stitches, best.of))
            best = Likeness(matching, best.of, move) if matching > best.matching else best
    return best


def at_most(one: Cell, other: Cell) -> Fraction:
    """Return a share of agreeing stitches that no shift can exceed: what both have of each label."""
    here, there = (_shares(cell) for cell in (one, other))
    return sum((min(share, there.get(label, Fraction(0))) for label, share in here.items()), Fraction(0))


def _shares(cell: Cell) -> dict[str, Fraction]:
    counted = Counter(label for row in cell for label in row)
    return {label: Fraction(count, _area(cell)) for label, count in counted.items()}


def _area(cell: Cell) -> int:
    return len(cell) * len(cell[0])


def _different(cell: Cell, signs: Signs) -> Iterator[tuple[Move, Cell]]:
    """Give the images by the moves, those left out that are a shift of an earlier one."""
    seen: set[Cell] = set()
    for move in MOVES:
        image = moved(cell, move, signs)
        if image is not None and (form := canonical((image,))) not in seen:
            seen.add(form)
            yield move, image


def _planes(cell: Cell, rows: int, stitches: int) -> dict[str, int]:
    """Return for each label a whole number with a bit for each stitch of the common cell that bears it."""
    labels = {label for row in cell for label in row}
    return {label: _stacked([_bits(row, label, stitches) for row in cell], rows, stitches) for label in labels}


def _bits(row: Sequence[str], label: str, stitches: int) -> int:
    once = "".join("1" if each == label else "0" for each in row)
    return int(once * (stitches // len(row)), 2)


def _stacked(bits: Sequence[int], rows: int, stitches: int) -> int:
    whole = 0
    for row in range(rows):
        whole = whole << stitches | bits[row % len(bits)]
    return whole


def _matches(fixed: dict[str, int], cell: Cell, rows: int, stitches: int, size: int) -> Iterator[int]:
    """Give the stitches that agree at each shift of the cell; beyond its own size the shifts come again."""
    full = (1 << size) - 1
    for along in range(len(cell[0])):
        shifted = [row[along:] + row[:along] for row in cell]
        planes = _planes(tuple(shifted), rows, stitches)
        pairs = [(fixed[label], plane) for label, plane in planes.items() if label in fixed]
        for up in range(len(cell)):
            turn = up * stitches
            yield sum((here & (plane << turn & full | plane >> size - turn)).bit_count() for here, plane in pairs)
