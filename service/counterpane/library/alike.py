"""Which kept components have a texture that is like that of another."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

import orjson

from counterpane.craft.texture import CLOSE, MOVES, Cell, Likeness, canonical, likeness, moved
from counterpane.library import components
from counterpane.library.ports import KeptTexture, TextureKey
from counterpane.library.services import Services
from counterpane.library.textures import LETTERS, LOOKS, keys_of, looks_of

LISTED = 50
"""Items of a list where nobody asks for another number."""

MOST_WORK = 40_000_000
"""Stitches laid over stitches for one answer, after which the rest is left out; house figure that bounds time."""

EACH = 20_000
"""What comparing two textures costs however small they are, in stitches laid over stitches; house figure."""


@dataclass(slots=True)
class _Held:
    """What was found so far: the best of each slug, and how many textures were and were not compared."""

    best: dict[str, tuple[KeptTexture, bool, Likeness]]
    compared: int = 0
    left_out: int = 0
    work: int = 0


def alike(services: Services, slug: str, percent: int | None = None, limit: int = LISTED) -> dict[str, Any]:
    """Return the components whose texture is like that of another, the likest first; raise NotFound.

    Of a hundred stitches `percent` agree at least.
    """
    own = keys_of(components.find(services, slug), services.vocabulary)
    least = CLOSE if percent is None else Fraction(percent, 100)
    held = _Held({})
    for kept in services.store.textures() if own else ():
        if kept.slug != slug:
            _hold(own, kept, least, held)
    likest = sorted(held.best.values(), key=lambda one: (-one[2].share, not one[1], one[0].slug))[:limit]
    items = [_item(services, *each) for each in likest]
    return {"component": slug, "items": items, "compared": held.compared, "not_compared": held.left_out}


def _hold(own: Sequence[TextureKey], kept: KeptTexture, least: Fraction, held: _Held) -> None:
    """Compare one kept texture with each of the component's own."""
    found = list(_found(own, kept.texture, least, held))
    held.left_out += None in found
    held.compared += None not in found
    for one in found:
        if one is None or one.share < least:
            continue
        same = any(each.key == kept.texture.key for each in own)
        before = held.best.get(kept.slug)
        if before is None or (one.share, same) > (before[2].share, before[1]):
            held.best[kept.slug] = kept, same, one


def _found(own: Sequence[TextureKey], other: TextureKey, least: Fraction, held: _Held) -> Iterator[Likeness | None]:
    """Give how alike the texture is to each own one that it could be close to; None where that is not worked out."""
    for key in {each.looks: each for each in own}.values():
        if not _could_reach(key.looks, other.looks, least):
            continue
        here, there = looks_of(key), looks_of(other)
        if key.key == other.key:
            yield _same(here, there)
            continue
        if held.work > MOST_WORK:
            yield None
            continue
        one = likeness(here, there, LOOKS)
        held.work += EACH + (one.of * min(_area(here), _area(there)) if one else 0)
        yield one


def _same(here: Cell, there: Cell) -> Likeness | None:
    """Return by which move one texture is the other, however large they are."""
    least = canonical((here,))
    moves = (move for move in MOVES if (image := moved(there, move, LOOKS)) and canonical((image,)) == least)
    return next((Likeness(_area(here), _area(here), move) for move in moves), None)


def _could_reach(here: str, there: str, least: Fraction) -> bool:
    """Say whether enough of two textures could agree, were each look laid over its like, as it is or turned over."""
    mine, theirs = ({look: looks.count(look) for look in LETTERS.values()} for looks in (here, there))
    size, other = sum(mine.values()), sum(theirs.values())
    enough = least * size * other
    return any(
        sum(min(count * other, theirs[seen[look]] * size) for look, count in mine.items()) >= enough
        for seen in (LOOKS.mirrored, LOOKS.behind)
    )


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
