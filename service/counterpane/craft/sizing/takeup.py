"""Take-up: changing the count evenly in one row, so that parts of different gauge lie flat together."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise
from math import ceil

from counterpane.craft.rows.tree import Node, Work

CABLE_TAKE_UP = Fraction(1, 4), Fraction(1, 3)
"""Share of the crossed stitches that cables draw in; from memory."""


def places(changes: int, over: int) -> tuple[int, ...]:
    """Return where `changes` changes fall among `over` stitches, evenly, with half gaps at both ends."""
    return tuple((2 * index + 1) * over // (2 * changes) for index in range(changes))


def gaps(changes: int, over: int) -> tuple[int, ...]:
    """Return the plain stitches before, between and after the changes; inner gaps differ by at most one."""
    stops = (0, *places(changes, over), over)
    return tuple(after - before for before, after in pairwise(stops))


def spacing(changes: int, over: int) -> tuple[int, int, int]:
    """Return the first gap, and the smallest and the largest between two changes, without listing them."""
    return over // (2 * changes), over // changes, -(-over // changes)


def gaps_of_increases(stitches: int, changes: int) -> tuple[int, ...]:
    """Return the gaps of this many increases made between stitches; ValueError where they do not fit."""
    if not 0 < changes < stitches:
        raise ValueError("there must be at least one stitch between two increases")
    return gaps(changes, stitches)


def gaps_of_decreases(stitches: int, changes: int) -> tuple[int, ...]:
    """Return the plain stitches around this many decreases of two into one; ValueError where they do not fit."""
    if not 0 < 2 * changes <= stitches:
        raise ValueError("more decreases than pairs of stitches")
    return gaps(changes, stitches - 2 * changes)


def row_of_changes(plain: tuple[int, ...], change: str, key: str = "k") -> tuple[Node, ...]:
    """Return the row with the gaps worked plain, in knit or in the stitch of `key`, and the change between them."""
    nodes: list[Node] = []
    for index, gap in enumerate(plain):
        nodes += [Work(change)] if index else []
        nodes += [Work(key, gap)] if gap else []
    return tuple(nodes)


def cable_extra(crossed: int) -> tuple[int, int]:
    """Return the range of stitches to add for this many crossed stitches; a share from memory, rounded up."""
    low, high = CABLE_TAKE_UP
    return ceil(crossed * low), ceil(crossed * high)
