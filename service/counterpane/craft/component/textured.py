"""The endless textures of a component, one for each set of its rows."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache

from counterpane.craft.component.derived import DerivedVersion, derive, sides_of
from counterpane.craft.component.values import Component
from counterpane.craft.fabric.texture import Texture, may_hold, texture_of
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.texture import Cell, canonical, images

KEPT = 512
"""Components whose textures are kept at hand; house figure."""


@lru_cache(maxsize=KEPT)
def textures(component: Component, vocabulary: Vocabulary) -> tuple[Texture | None, ...]:
    """Return the texture of each version, its edges left out; None where the rows cannot be laid out.

    A selvedge is an edge and nothing else: it has no texture of its own.
    """
    versions = derive(component, vocabulary).versions
    has_one = component.kind != "selvedge"
    return tuple(_texture(version, vocabulary) if has_one and version.starts else None for version in versions)


def may_share(component: Component, cells: Iterable[Cell], vocabulary: Vocabulary) -> bool:
    """Say whether a component may have one of these canonical cells, as its counts tell; no stitch is worked."""
    versions = [version for version in derive(component, vocabulary).versions if version.starts]
    return any(
        may_hold(cell, len(version.rows), version.chain, sides_of(version.rows))
        for version in versions
        for cell in cells
    )


def _texture(version: DerivedVersion, vocabulary: Vocabulary) -> Texture | None:
    rows = [row.parts for row in version.rows]
    return texture_of(rows, vocabulary, sides_of(version.rows), version.chain)


@lru_cache(maxsize=KEPT)
def canonical_textures(component: Component, vocabulary: Vocabulary) -> tuple[Cell | None, ...]:
    """Return the one cell that stands for the texture of each version, however it is shifted, turned or mirrored."""
    found = textures(component, vocabulary)
    return tuple(canonical(images(texture.cell, texture.signs)) if texture else None for texture in found)
