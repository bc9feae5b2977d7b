"""The edges beside each block at a chosen cast-on: selvedges always, side borders beside the body."""

from __future__ import annotations

from dataclasses import dataclass

from counterpane.craft.constructions.settling import Block, Settled
from counterpane.craft.constructions.strips import NO_STRIP, Edging, Strip, side_border
from counterpane.craft.constructions.textures import Texture, alike
from counterpane.craft.stitches import Vocabulary


@dataclass(frozen=True, slots=True)
class Edges:
    """The selvedge and the side borders that run beside a block, which is worked over `inner` stitches.

    `whole` is set where the side borders are of the block's own texture: its rows over all stitches between the
    selvedges, so that the texture runs on unbroken.
    """

    selvedge: Strip
    sides: Strip
    inner: int
    whole: Texture | None = None


def edges_beside(settled: Settled, cast_on: int) -> tuple[Edges, ...]:
    """Return the edges of each block from the cast-on up; Stuck where a side border cannot take its width."""
    return tuple(_edges(settled, block, cast_on - settled.edge) for block in settled.blocks)


def _edges(settled: Settled, block: Block, between: int) -> Edges:
    if settled.edging is None or not settled.runs_beside(block):
        return Edges(settled.selvedge, NO_STRIP, between)
    spare = 2 * settled.sides if block.stitches is None else between - block.stitches
    widths = spare // 2, spare - spare // 2
    sides = side_border(settled.edging, widths, between, settled.vocabulary)
    whole = _whole(settled.edging, block, between, settled.vocabulary)
    return Edges(settled.selvedge, sides, between - spare, whole)


def _whole(edging: Edging, block: Block, between: int, vocabulary: Vocabulary) -> Texture | None:
    if edging.left is not None or not alike(edging.component, block.part.component, vocabulary):
        return None
    return next((texture for texture in block.textures if texture.admits(between)), None)
