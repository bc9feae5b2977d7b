"""A texture as a map on a torus: its smallest cell, its symmetries, its canonical form, and how alike two are.

A cell is one repeat in both directions, as the right side shows it: rows from the bottom up, each from its right edge
on, one label a stitch. Nothing here knows a vocabulary; what each label turns into comes beside the cell as its signs.
"""

from counterpane.craft.texture.canonical import canonical
from counterpane.craft.texture.likeness import (
    CLOSE,
    Likeness,
    Overlay,
    arrangements,
    likeness,
    may_be_laid,
    reach,
    size_of,
)
from counterpane.craft.texture.moves import BY_HAND, MOVES, PLAIN, Move, Signs, images, moved, symmetries
from counterpane.craft.texture.torus import Cell, Lattice, lattice, straight

__all__ = [
    "BY_HAND",
    "CLOSE",
    "MOVES",
    "PLAIN",
    "Cell",
    "Lattice",
    "Likeness",
    "Move",
    "Overlay",
    "Signs",
    "arrangements",
    "canonical",
    "images",
    "lattice",
    "likeness",
    "may_be_laid",
    "moved",
    "reach",
    "size_of",
    "straight",
    "symmetries",
]
