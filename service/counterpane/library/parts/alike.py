"""Which kept components have a texture that is like that of another."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any

import orjson

from counterpane.craft.texture import (
    CLOSE,
    MOVES,
    Cell,
    Likeness,
    Overlay,
    arrangements,
    canonical,
    may_be_laid,
    moved,
    size_of,
)
from counterpane.library.parts import components
from counterpane.library.parts.likely import likely
from counterpane.library.parts.textures import LOOKS, cell_of, keys_of
from counterpane.library.ports import KeptTexture, TextureKey
from counterpane.library.services import Services

LISTED = 50
"""Items of a list where nobody asks for another number."""

MOST_WORK = 60_000_000
"""Stitches laid over stitches for one answer, after which the rest is left out; house figure that bounds time."""

EACH = 20_000
"""What comparing two textures costs however small they are, in stitches laid over stitches; house figure."""


class _Asked:
    """A texture that others are compared with, laid out once for all of a size."""

    def __init__(self, key: TextureKey, least: Fraction) -> None:
        self.key = key
        self.cell = cell_of(key.looks)
        self.could = likely(least, key.looks)
        self._images = arrangements(self.cell, LOOKS)
        self._overlays: dict[tuple[int, int], Overlay] = {}

    def over(self, size: tuple[int, int]) -> Overlay:
        """Return the texture as it is laid over those of a size."""
        if size not in self._overlays:
            self._overlays[size] = Overlay(self._images, size)
        return self._overlays[size]


@dataclass(slots=True)
class _Held:
    """What was found so far: the best of each slug, how many textures were and were not compared, and each pair's."""

    enough: Callable[[Likeness], bool]
    best: dict[str, tuple[KeptTexture, bool, Likeness]] = field(default_factory=dict)
    compared: int = 0
    left_out: int = 0
    work: int = 0
    laid_over: dict[tuple[str, str], Likeness | None] = field(default_factory=dict)


def alike(services: Services, slug: str, percent: int | None = None, limit: int = LISTED) -> dict[str, Any]:
    """Return the components whose texture is like that of another, the likest first; raise NotFound.

    Of a hundred stitches `percent` agree at least; where it is not asked for, so many that they are close.
    """
    own = keys_of(components.find(services, slug), services.vocabulary)
    least = CLOSE if percent is None else Fraction(percent, 100)
    asked = [_Asked(key, least) for key in {each.key: each for each in own}.values()]
    held = _Held((lambda one: one.is_close) if percent is None else (lambda one: one.share >= least))
    for kept in services.store.textures() if own else ():
        if kept.slug == slug:
            continue
        near = [each for each in asked if each.could(kept.texture.looks)]
        if near:
            _hold(near, any(each.key.key == kept.texture.key for each in asked), kept, held)
        else:
            held.compared += 1
    likest = sorted(held.best.values(), key=lambda one: (-one[2].share, not one[1], one[0].slug))[:limit]
    items = [_item(services, *each) for each in likest]
    return {"component": slug, "items": items, "compared": held.compared, "not_compared": held.left_out}


def _hold(near: Sequence[_Asked], same: bool, kept: KeptTexture, held: _Held) -> None:
    """Compare one kept texture with each of the component's own that it could be close to."""
    found = [_found(each, kept.texture, held) for each in near]
    held.left_out += None in found
    held.compared += None not in found
    for one in found:
        if one is None or not held.enough(one):
            continue
        before = held.best.get(kept.slug)
        if before is None or (one.share, same) > (before[2].share, before[1]):
            held.best[kept.slug] = kept, same, one


def _found(asked: _Asked, other: TextureKey, held: _Held) -> Likeness | None:
    """Return how alike two textures are; None where that is not worked out."""
    there = cell_of(other.looks)
    if asked.key.key == other.key:
        return _same(asked.cell, there)
    pair = asked.key.looks, other.looks
    if pair not in held.laid_over:
        if held.work > MOST_WORK:
            return None
        size = size_of(there)
        laid = asked.over(size) if may_be_laid(asked.cell, size) else None
        held.laid_over[pair] = laid.best(there) if laid else None
        held.work += EACH + (laid.work if laid else 0)
    return held.laid_over[pair]


def _same(here: Cell, there: Cell) -> Likeness | None:
    """Return by which move one texture is the other, however large they are."""
    least = canonical((here,))
    moves = (move for move in MOVES if (image := moved(there, move, LOOKS)) and canonical((image,)) == least)
    return next((Likeness(_area(here), _area(here), move) for move in moves), None)


def _area(cell: Cell) -> int:
    return len(cell) * len(cell[0])


def _item(services: Services, kept: KeptTexture, same: bool, found: Likeness) -> dict[str, Any]:
    return {
        "slug": kept.slug,
        "kind": kept.kind,
        "name": orjson.loads(components.latest(services, kept.slug).body)["name"],
        "version": kept.texture.version,
        "same": same,
        "percent": int(found.share * 100),
        "matching": found.matching,
        "of": found.of,
        "how": found.move.name,
        "said": _said(same, found),
        "href": f"/v1/components/{kept.slug}",
    }


def _said(same: bool, found: Likeness) -> str:
    how = "" if found.move == MOVES[0] else f", {found.move.name}"
    if same:
        return f"The same texture{how}."
    if found.share == 1:
        return f"It looks the same{how}, in other stitches."
    return f"Of {found.of} stitches {found.matching} agree{how}."
