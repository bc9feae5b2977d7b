"""The endless textures of a component, as the library tells them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from typing import Any

import orjson

from counterpane.craft.component import Component, canonical_textures, may_share, textures
from counterpane.craft.fabric import Look, Texture, showing, sides_of_texture
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.texture import Cell, Signs, lattice, symmetries
from counterpane.library.keeping.objects import canonical, digest
from counterpane.library.ports import TextureKey, Wanted
from counterpane.library.services import Services

LETTERS: dict[Look, str] = {
    "knit": "k",
    "purl": "p",
    "open": "o",
    "slipped": "s",
    "crossed": "c",
    "not known": "n",
}
_SEEN = {letter: letter for letter in LETTERS.values()}
LOOKS = Signs(_SEEN | {"k": "p", "p": "k"}, _SEEN, _SEEN)
"""What the eye sees of a look from behind, in a mirror and upside down."""

MOST_SHOWN = 1_024
"""Stitches of a cell beyond which it is not written out; house figure."""


def textures_json(component: Component, vocabulary: Vocabulary) -> list[dict[str, Any] | None]:
    """Return the texture of each version of a component; None where its rows cannot be laid out."""
    pairs = zip(textures(component, vocabulary), canonical_textures(component, vocabulary), strict=True)
    return [_texture(texture, least) if texture and least else None for texture, least in pairs]


def keys_of(component: Component, vocabulary: Vocabulary) -> tuple[TextureKey, ...]:
    """Return by what the textures of a component are found again."""
    pairs = zip(textures(component, vocabulary), canonical_textures(component, vocabulary), strict=True)
    return tuple(
        TextureKey(version, key_of(least), _looks(texture))
        for version, (texture, least) in enumerate(pairs)
        if texture and least
    )


def same_texture(services: Services, slug: str, keys: Sequence[TextureKey]) -> list[dict[str, str]]:
    """Return the other components that are kept with one of these textures, by slug."""
    pages = (services.store.page(Wanted("component", texture=each)) for each in dict.fromkeys(key.key for key in keys))
    slugs = {orjson.loads(card)["slug"] for page in pages for card in page.cards}
    return [{"slug": each, "href": f"/v1/components/{each}"} for each in sorted(slugs - {slug})]


def of_same_texture(component: Component, others: Iterable[Component], vocabulary: Vocabulary) -> tuple[str, ...]:
    """Return the slugs of those others that share a texture with a component, up to shifts and moves."""
    own = {cell for cell in canonical_textures(component, vocabulary) if cell}
    likely = (other for other in others if may_share(other, own, vocabulary))
    shared = (other.slug for other in likely if own.intersection(canonical_textures(other, vocabulary)))
    return tuple(slug for slug in shared if slug != component.slug)


def _looks(texture: Texture) -> str:
    return "/".join("".join(LETTERS[texture.looks[label]] for label in row) for row in texture.cell)


def cell_of(looks: str) -> Cell:
    """Return the cell of looks, a letter each, as a store keeps them."""
    return tuple(tuple(row) for row in looks.split("/"))


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
