"""How alike two textures are: the share of stitches that agree, laid over each other as well as they can be.

Laid over each other they come again after a common cell. Shifts that differ by rows or stitches into which both cells
divide are the same: over the common cell a stitch then meets the same ones, in another order.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import gcd, lcm
from typing import TypeAlias

from counterpane.craft.texture.canonical import canonical
from counterpane.craft.texture.moves import MOVES, Move, Signs, moved
from counterpane.craft.texture.torus import Cell

LARGEST_SIDE = 64
"""Rows or stitches of a common cell beyond which two textures are not compared; house figure that bounds time."""

CLOSE = Fraction(9, 10)
"""Share of stitches that agree from which two textures are called close; house figure."""

LEAST_TOLD = 36
"""Stitches of a common cell under which only textures that agree in all are called close; house figure.

Of two textures of knit and purl at random, laid over each other at every shift, fewer agree to nine tenths by chance.
"""

Size: TypeAlias = tuple[int, int]
Arrangements: TypeAlias = Sequence[tuple[Move, Cell]]


@dataclass(frozen=True, slots=True)
class Likeness:
    """How many stitches of a common cell agree, out of how many, and by which move of one of the textures."""

    matching: int
    of: int
    move: Move

    @property
    def share(self) -> Fraction:
        """The share of stitches that agree."""
        return Fraction(self.matching, self.of)

    @property
    def is_close(self) -> bool:
        """Whether so many agree of so many that it is hardly by chance."""
        return self.matching == self.of or (self.of >= LEAST_TOLD and self.share >= CLOSE)


def likeness(one: Cell, other: Cell, signs: Signs) -> Likeness | None:
    """Lay one texture over the other at every shift and by every move, and return the best; plain moves first.

    Both are smallest upright cells. None where their common cell is too large.
    """
    size = size_of(other)
    return Overlay(arrangements(one, signs), size).best(other) if may_be_laid(one, size) else None


def size_of(cell: Cell) -> Size:
    """Return the rows and stitches of a cell."""
    return len(cell), len(cell[0])


def may_be_laid(cell: Cell, size: Size) -> bool:
    """Tell whether the common cell with textures of a size is not too large."""
    return all(lcm(*pair) <= LARGEST_SIDE for pair in zip(size_of(cell), size, strict=True))


def arrangements(cell: Cell, signs: Signs) -> Arrangements:
    """Return the images of a texture by the moves, those left out that are a shift of an earlier one."""
    found: dict[Cell, tuple[Move, Cell]] = {}
    for move in MOVES:
        image = moved(cell, move, signs)
        if image is not None:
            found.setdefault(canonical((image,)), (move, image))
    return tuple(found.values())


def reach(cell: Cell, size: Size) -> Fraction:
    """Return a share of agreeing stitches that a texture and any of a size cannot exceed, by any move.

    Each stitch meets all those of the other texture that stand whole multiples away of what both sizes divide into. Of
    its own stitches that stand so, it can agree with those of one label only.
    """
    rows, stitches = _shifts(size_of(cell), size)
    met: dict[Size, Counter[str]] = {}
    for up, row in enumerate(cell):
        for along, label in enumerate(row):
            met.setdefault((up % rows, along % stitches), Counter())[label] += 1
    return Fraction(sum(max(labels.values()) for labels in met.values()), len(cell) * len(cell[0]))


class Overlay:
    """A texture by every move and at every shift, to be laid over any texture of one size."""

    def __init__(self, images: Arrangements, size: Size) -> None:
        own = size_of(images[0][1])
        self.rows, self.stitches = lcm(own[0], size[0]), lcm(own[1], size[1])
        self.of = self.rows * self.stitches
        self.shifts = _shifts(own, size)
        self._images = [(move, self._shifted(image)) for move, image in images]

    @property
    def work(self) -> int:
        """Stitches that are laid over stitches for one texture, by one move."""
        return self.of * self.shifts[0] * self.shifts[1]

    def best(self, other: Cell) -> Likeness:
        """Return how alike the other texture is as it is laid best, by the plainest move of those that are as good."""
        fixed = self._planes(other)
        best = Likeness(0, self.of, MOVES[0])
        for move, shifted in self._images:
            matching = _most(fixed, shifted, self.of, best.matching)
            best = Likeness(matching, self.of, move) if matching > best.matching else best
        return best

    def _shifted(self, cell: Cell) -> dict[str, list[int]]:
        """Return the planes of each label at every shift."""
        full = (1 << self.of) - 1
        out: dict[str, list[int]] = {}
        for along in range(self.shifts[1]):
            for label, plane in self._planes(tuple(row[along:] + row[:along] for row in cell)).items():
                turns = (up * self.stitches for up in range(self.shifts[0]))
                out.setdefault(label, []).extend(plane << turn & full | plane >> self.of - turn for turn in turns)
        return out

    def _planes(self, cell: Cell) -> dict[str, int]:
        """Return for each label a whole number with a bit for each stitch of the common cell that bears it."""
        return {label: self._stacked(cell, label) for label in {label for row in cell for label in row}}

    def _stacked(self, cell: Cell, label: str) -> int:
        again = self.stitches // len(cell[0])
        rows = ["".join(["1" if each == label else "0" for each in row]) * again for row in cell]
        return int("".join(rows) * (self.rows // len(cell)), 2)


def _shifts(one: Size, other: Size) -> Size:
    """Return how many rows and stitches the shifts are by that differ."""
    return gcd(one[0], other[0]), gcd(one[1], other[1])


def _most(fixed: Mapping[str, int], shifted: Mapping[str, Sequence[int]], of: int, beaten: int) -> int:
    """Return the most stitches that agree at a shift; 0 where no shift can be better than what is to be beaten."""
    pairs = [(here, shifted[label]) for label, here in fixed.items() if label in shifted]
    bears = [(here.bit_count(), planes[0].bit_count()) for here, planes in pairs]
    if sum(map(min, bears)) <= beaten:
        return 0
    if len(pairs) == len(fixed) == len(shifted) == 2:
        # Where both have the same two labels, as many more of the one agree as of the other.
        here, planes = pairs[0]
        return of - sum(bears[0]) + 2 * max([(here & plane).bit_count() for plane in planes])
    agreeing = [[(here & plane).bit_count() for plane in planes] for here, planes in pairs]
    return max(map(sum, zip(*agreeing, strict=True)))
