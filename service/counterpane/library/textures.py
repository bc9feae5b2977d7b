"""The endless textures of a component, as the library tells them."""

from __future__ import annotations

from collections import Counter
from typing import Any

from counterpane.craft.component import Component, canonical_textures, textures
from counterpane.craft.fabric import Texture, showing, sides_of_texture
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.texture import Cell, lattice, symmetries
from counterpane.library.objects import canonical, digest

MOST_SHOWN = 1_024
"""Stitches of a cell beyond which it is not written out; house figure."""


def textures_json(component: Component, vocabulary: Vocabulary) -> list[dict[str, Any] | None]:
    """Return the texture of each version of a component; None where its rows cannot be laid out."""
    pairs = zip(textures(component, vocabulary), canonical_textures(component, vocabulary), strict=True)
    return [_texture(texture, least) if texture and least else None for texture, least in pairs]


def key_of(cell: Cell) -> str:
    """Return the SHA-256 that names a canonical cell."""
    return digest(canonical({"cell": cell}))


def _texture(texture: Texture, least: Cell) -> dict[str, Any]:
    smallest = lattice(texture.cell)
    rows, stitches = smallest.straight
    return {
        "rows": rows,
        "stitches": stitches,
        "smallest": {"rows": smallest.rows, "shift": smallest.shift, "stitches": smallest.stitches},
        "cell": texture.cell if rows * stitches <= MOST_SHOWN else None,
        "symmetries": [move.name for move in symmetries(texture.cell, texture.signs)],
        "reversible": sides_of_texture(texture),
        "canonical": key_of(least),
    } | _shown(texture)


def _shown(texture: Texture) -> dict[str, Any]:
    seen = showing(texture)
    openings = sorted(Counter(seen.openings).items())
    return {
        "shows": dict(sorted(seen.looks.items())),
        "ridges": {"right": seen.ridges[0], "wrong": seen.ridges[1]},
        "openings": [{"yarn_overs": yarn_overs, "count": count} for yarn_overs, count in openings],
        "strand": seen.strand,
        "rows_slipped": seen.rows_slipped,
        "twisted": seen.twisted,
        "crossed": seen.crossed,
    }
