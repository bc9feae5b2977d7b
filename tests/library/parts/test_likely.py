"""Ruling textures out by counting never rules out one that is alike."""

from __future__ import annotations

import random
from fractions import Fraction

import pytest

from counterpane.craft.texture import MOVES, Cell, likeness, moved
from counterpane.library.parts.likely import likely
from counterpane.library.parts.textures import LOOKS

SIZES = (1, 2, 3, 4, 6)


def drawn(chance: random.Random) -> Cell:
    """Return a random cell of looks."""
    rows, stitches = chance.choice(SIZES), chance.choice(SIZES)
    return tuple(tuple(chance.choice("kkppo") for _ in range(stitches)) for _ in range(rows))


def looks(cell: Cell) -> str:
    """Return a cell as a store keeps it."""
    return "/".join("".join(row) for row in cell)


def changed(cell: Cell, chance: random.Random) -> Cell:
    """Return a cell moved and shifted, with a stitch or none knitted in another way."""
    found = moved(cell, chance.choice(MOVES), LOOKS)
    assert found is not None
    up, along = chance.randrange(len(found)), chance.randrange(len(found[0]))
    rows = [[*row[along:], *row[:along]] for row in (*found[up:], *found[:up])]
    if chance.random() < 0.7:
        chance.choice(rows)[0] = chance.choice("kpo")
    return tuple(map(tuple, rows))


@pytest.mark.parametrize("percent", [60, 80, 90, 100])
def test_what_is_ruled_out_is_never_alike(percent: int) -> None:
    """Of random textures and of changed ones, at each share that is asked for; some of both sorts are met."""
    chance, least, met = random.Random(percent), Fraction(percent, 100), set()
    for _ in range(400):
        one = drawn(chance)
        other = changed(one, chance) if chance.random() < 0.6 else drawn(chance)
        found = likeness(one, other, LOOKS)
        could = likely(least, looks(one))(looks(other))
        assert found is not None and (could or found.share < least), (one, other)
        met.add((could, found.share >= least))
    assert {(True, True), (False, False)} <= met
