"""Whether a texture looks the same from both sides, told from its stitches."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal, TypeAlias

from counterpane.craft.fabric.texture import Texture, texture_of
from counterpane.craft.rows.tree import Node
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.texture import MOVES, Cell, Move, canonical, moved
from counterpane.craft.trace import Side

Reversible: TypeAlias = Literal["yes", "both-good", "no"]
MOST_COMPARED = 1_024
"""Stitches of a cell beyond which unnamed stitches are not tried at every shift; house figure that bounds time."""

TURNED = tuple(move for move in MOVES if move.behind and not move.mirrored)
MIRRORED = tuple(move for move in MOVES if move.behind and move.mirrored)


def reversible(
    rows: Sequence[Sequence[Node]], vocabulary: Vocabulary, sides: Sequence[Side | None] | None = None
) -> Reversible | None:
    """Compare both sides of the endless texture of rows that repeat: edges are left out.

    None where the rows cannot be laid out, else what `sides_of_texture` says.
    """
    texture = texture_of(rows, vocabulary, sides)
    return None if texture is None else sides_of_texture(texture)


def sides_of_texture(texture: Texture) -> Reversible | None:
    """Compare both sides of a texture.

    "yes": turned over a side or top edge it is the same up to a shift. "both-good": it is the mirror image of that.
    "no": what is sure of its stitches already differs; whether the other side is good too is for eyes to say. None
    where stitches decide that have no name from the other side.
    """
    least = canonical((texture.cell,))
    if any(_comes_to(texture, move, least) for move in TURNED):
        return "yes"
    if any(_comes_to(texture, move, least) for move in MIRRORED):
        return "both-good"
    large = len(texture.cell) * len(texture.cell[0]) > MOST_COMPARED and None in _sights(texture)
    return None if large or any(_could_match(texture, move) for move in (*TURNED, *MIRRORED)) else "no"


def _sights(texture: Texture) -> set[str | None]:
    return {texture.marks[label].sight for row in texture.cell for label in row}


def _comes_to(texture: Texture, move: Move, least: Cell) -> bool:
    image = moved(texture.cell, move, texture.signs)
    return image is not None and canonical((image,)) == least


def _could_match(texture: Texture, move: Move) -> bool:
    """Say whether what is sure of the stitches agrees with the other side at any shift, whatever the others are."""
    here = [[texture.marks[label].sight for label in row] for row in texture.cell]
    rows = texture.cell[::-1] if move.up else texture.cell
    there = [[_behind(texture, label, move) for label in (row[::-1] if move.along else row)] for row in rows]
    height, width = len(here), len(here[0])
    return any(
        all(_agree(here[row], there[(row + up) % height], along) for row in range(height))
        for along in range(width)
        for up in range(height)
    )


def _behind(texture: Texture, label: str, move: Move) -> str | None:
    seen: str | None = texture.signs.behind[label]
    if move.mirrored and seen is not None:
        seen = texture.signs.mirrored.get(seen)
    return texture.marks[seen].sight if seen is not None else None


def _agree(one: Sequence[str | None], other: Sequence[str | None], along: int) -> bool:
    pairs = zip(one, (*other[along:], *other[:along]), strict=True)
    return all(here is None or there is None or here == there for here, there in pairs)
