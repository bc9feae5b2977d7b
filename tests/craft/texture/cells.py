"""Cells of knit and purl faces for the tests of textures."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product

from hypothesis import strategies as st

from counterpane.craft.texture import Cell

KNIT_AND_PURL = st.tuples(st.integers(1, 5), st.integers(1, 5)).flatmap(
    lambda size: st.tuples(*[st.tuples(*[st.sampled_from("kp")] * size[1])] * size[0])
)


def faces(*rows: str) -> Cell:
    """Return a cell of rows from the bottom up, each a word of k and p from its right edge on."""
    return tuple(tuple(row) for row in rows)


def repeated(cell: Cell, rows: int, stitches: int) -> Cell:
    """Return the same texture in a cell so many rows high and stitches wide."""
    return tuple((cell[up % len(cell)] * stitches)[:stitches] for up in range(rows))


def shifted(cell: Cell, up: int, along: int) -> Cell:
    """Return the cell begun so many rows up and stitches along."""
    return tuple(row[along:] + row[:along] for row in (*cell[up:], *cell[:up]))


def every(rows: int, stitches: int) -> Iterator[Cell]:
    """Give every cell of knit and purl faces of a size."""
    for labels in product("kp", repeat=rows * stitches):
        yield tuple(labels[up * stitches : (up + 1) * stitches] for up in range(rows))
