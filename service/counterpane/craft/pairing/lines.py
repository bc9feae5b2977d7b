"""Which way the lines of a texture run, told from its looks: upright as in rib, level as in ridges, or slanting."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from counterpane.craft.fabric import Texture
from counterpane.craft.texture import Cell, lattice, straight

Way = Literal["upright", "level", "slanting to the left", "slanting to the right"]

STEEPEST = 2
"""Rows in which a texture must move along for its lines to be seen as slanting; house figure."""


@dataclass(frozen=True, slots=True)
class Lines:
    """The way of the lines, upwards, and the stitches or rows after which they come again."""

    way: Way
    repeat: int


def lines_of(texture: Texture) -> Lines | None:
    """Return the lines of a texture; None for one that is plain, checked, or has no one direction."""
    cell = straight(tuple(tuple(texture.looks[label] for label in row) for row in texture.cell))
    rows, stitches = len(cell), len(cell[0])
    if rows == 1:
        return Lines("upright", stitches) if stitches > 1 else None
    return Lines("level", rows) if stitches == 1 else _slant(cell)


def _slant(cell: Cell) -> Lines | None:
    found = lattice(cell)
    if found.rows > STEEPEST or found.shift == 0 or 2 * found.shift == found.stitches:
        return None
    left = 2 * found.shift < found.stitches
    return Lines("slanting to the left" if left else "slanting to the right", found.stitches)
