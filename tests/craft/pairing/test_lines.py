"""The way of the lines of a texture."""

from __future__ import annotations

from itertools import pairwise

import pytest

from counterpane.craft.fabric import texture_of
from counterpane.craft.pairing import Lines, lines_of
from counterpane.craft.stitches import Vocabulary

from ..handmade import rows_of

RIGHT = (
    "*k2, p2; rep from * to end / *p1, k2, p1; rep from * to end"
    " / *p2, k2; rep from * to end / *k1, p2, k1; rep from * to end"
)

LEFT = (
    "*k2, p2; rep from * to end / *k1, p2, k1; rep from * to end"
    " / *p2, k2; rep from * to end / *p1, k2, p1; rep from * to end"
)


@pytest.mark.parametrize(
    ("text", "lines"),
    [
        ("knit / purl", None),
        ("knit", Lines("level", 2)),
        ("*k2, p2; rep from * to end", Lines("upright", 4)),
        ("*k1, p1; rep from * to end / *p1, k1; rep from * to end", None),
        ("*k1, p1; rep from * to end / *k1, p1; rep from * to end", Lines("upright", 2)),
        ("knit / purl / knit / knit / knit / purl", Lines("level", 6)),
        ("*k3, p1; rep from * to end / purl", None),
        (RIGHT, Lines("slanting to the right", 4)),
        (LEFT, Lines("slanting to the left", 4)),
    ],
)
def test_lines_are_upright_level_or_slanting(text: str, lines: Lines | None, vocabulary: Vocabulary) -> None:
    """Ribs, ridges and diagonals have lines; plain, checked and dotted textures have no one way."""
    texture = texture_of(rows_of(text, vocabulary), vocabulary)
    assert texture is not None
    assert lines_of(texture) == lines


def test_a_diagonal_slants_the_way_its_purls_move(vocabulary: Vocabulary) -> None:
    """A row higher, the purls stand one column nearer the right edge, from which columns are counted."""
    texture = texture_of(rows_of(RIGHT, vocabulary), vocabulary)
    assert texture is not None
    purls = [{at for at, label in enumerate(row) if label == "p"} for row in texture.cell]
    assert all({(at - 1) % 4 for at in below} == above for below, above in pairwise(purls))
