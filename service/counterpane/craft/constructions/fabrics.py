"""What kind of fabric a part is, as far as it matters beside another: garter, moss, or inclined to roll."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from functools import lru_cache
from itertools import pairwise

from counterpane.craft.component import Component
from counterpane.craft.constructions.joining import CannotJoin, Nodes
from counterpane.craft.constructions.obstacles import Stuck
from counterpane.craft.constructions.textures import (
    MOST_LOOKED_AT,
    Texture,
    seen_from_rs,
    small_count,
    textures_of,
)
from counterpane.craft.rows.tree import Node, OpenRepeat, Work
from counterpane.craft.stitches import Vocabulary

KEPT = 512
"""Components whose fabric is kept at hand; house figure."""

GARTER_ROWS = Fraction(42, 30)
"""Rows of garter stitch to the length of 30 rows of stocking stitch; common practice, no source."""

MOSS_ROWS = Fraction(34, 30)
"""Rows of seed stitch (UK moss) to the length of 30 rows of stocking stitch; common practice, no source."""


@lru_cache(maxsize=KEPT)
def is_garter(component: Component, vocabulary: Vocabulary) -> bool:
    """Say whether all rows are knit, or all are purled."""
    keys = {_only_stitch(row) for texture in _textures(component, vocabulary) for row in texture.rows}
    return keys in ({"k"}, {"p"})


def _only_stitch(row: Nodes) -> str | None:
    keys = {node.stitch if isinstance(node, Work) and not node.manner else None for node in _flat(row)}
    return keys.pop() if len(keys) == 1 else None


def _flat(row: Sequence[Node]) -> Sequence[Node]:
    return [inner for node in row for inner in (node.parts if isinstance(node, OpenRepeat) else (node,))]


@lru_cache(maxsize=KEPT)
def is_moss(component: Component, vocabulary: Vocabulary) -> bool:
    """Say whether knit and purl change places from stitch to stitch and from row to row, as in seed (UK moss)."""
    return any(_checkered(_seen(texture, vocabulary)) for texture in _textures(component, vocabulary))


def _checkered(rows: Sequence[str]) -> bool:
    def alternate(faces: str) -> bool:
        return all(one != other for one, other in pairwise(faces))

    wide = bool(rows) and len(rows[0]) > 1
    return wide and all(map(alternate, rows)) and alternate("".join(row[0] for row in rows))


@lru_cache(maxsize=KEPT)
def surplus(component: Component, vocabulary: Vocabulary) -> Fraction:
    """Return the surplus of one face over the other as a share of all; 0 for rows of more than knit and purl."""
    found = [_surplus("".join(_seen(texture, vocabulary))) for texture in _textures(component, vocabulary)]
    return min(found, default=Fraction(0))


def _surplus(faces: str) -> Fraction:
    return Fraction(abs(faces.count("k") - faces.count("p")), len(faces)) if faces else Fraction(0)


def rows_against_smooth(component: Component, vocabulary: Vocabulary) -> Fraction | None:
    """Return the rows of a part to one row of a smooth body of the same height, None where no figure is at hand."""
    if is_garter(component, vocabulary):
        return GARTER_ROWS
    return MOSS_ROWS if is_moss(component, vocabulary) else None


def _textures(component: Component, vocabulary: Vocabulary) -> tuple[Texture, ...]:
    try:
        return textures_of(component, vocabulary, "")
    except Stuck:
        return ()


def _seen(texture: Texture, vocabulary: Vocabulary) -> tuple[str, ...]:
    stitches = small_count(texture)
    if stitches * texture.period > MOST_LOOKED_AT:
        return ()
    try:
        return seen_from_rs(texture, stitches, vocabulary)
    except CannotJoin:
        return ()
