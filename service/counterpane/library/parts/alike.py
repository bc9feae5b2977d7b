"""Which kept components have a texture that is like that of another."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any

import orjson

from counterpane.craft.texture import CLOSE, MOVES, Cell, Likeness, canonical, likeness, moved
from counterpane.library.parts import components
from counterpane.library.parts.likely import likely
from counterpane.library.parts.textures import LOOKS, keys_of, looks_of
from counterpane.library.ports import KeptTexture, TextureKey
from counterpane.library.services import Services

LISTED = 50
"""Items of a list where nobody asks for another number."""

MOST_WORK = 40_000_000
"""Stitches laid over stitches for one answer, after which the rest is left out; house figure that bounds time."""

EACH = 20_000
"""What comparing two textures costs however small they are, in stitches laid over stitches; house figure."""


@dataclass(slots=True)
class _Held:
    """What was found so far: the best of each slug, how many textures were and were not compared, and each pair's."""

    best: dict[str, tuple[KeptTexture, bool, Likeness]]
    compared: int = 0
    left_out: int = 0
    work: int = 0
    laid_over: dict[tuple[str, str], Likeness | None] = field(default_factory=dict)


def alike(services: Services, slug: str, percent: int | None = None, limit: int = LISTED) -> dict[str, Any]:
    """Return the components whose texture is like that of another, the likest first; raise NotFound.

    Of a hundred stitches `percent` agree at least.
    """
    own = keys_of(components.find(services, slug), services.vocabulary)
    least = CLOSE if percent is None else Fraction(percent, 100)
    asked = [(key, likely(least, key.looks)) for key in {each.key: each for each in own}.values()]
    held = _Held({})
    for kept in services.store.textures() if own else ():
        if kept.slug == slug:
            continue
        near = [key for key, could in asked if could(kept.texture.looks)]
        if near:
            _hold(near, any(key.key == kept.texture.key for key, _ in asked), kept, held, least)
        else:
            held.compared += 1
    likest = sorted(held.best.values(), key=lambda one: (-one[2].share, not one[1], one[0].slug))[:limit]
    items = [_item(services, *each) for each in likest]
    return {"component": slug, "items": items, "compared": held.compared, "not_compared": held.left_out}


def _hold(near: Sequence[TextureKey], same: bool, kept: KeptTexture, held: _Held, least: Fraction) -> None:
    """Compare one kept texture with each of the component's own that it could be close to."""
    found = [_found(key, kept.texture, held) for key in near]
    held.left_out += None in found
    held.compared += None not in found
    for one in found:
        if one is None or one.share < least:
            continue
        before = held.best.get(kept.slug)
        if before is None or (one.share, same) > (before[2].share, before[1]):
            held.best[kept.slug] = kept, same, one


def _found(key: TextureKey, other: TextureKey, held: _Held) -> Likeness | None:
    """Return how alike two textures are; None where that is not worked out."""
    here, there = looks_of(key), looks_of(other)
    if key.key == other.key:
        return _same(here, there)
    pair = key.looks, other.looks
    if pair not in held.laid_over:
        if held.work > MOST_WORK:
            return None
        one = held.laid_over[pair] = likeness(here, there, LOOKS)
        held.work += EACH + (one.of * min(_area(here), _area(there)) if one else 0)
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
