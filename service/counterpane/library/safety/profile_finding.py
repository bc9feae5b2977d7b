"""How a request names a list of a ward or charity, and how it is found among those that are kept or that ship.

A list is named by its slug, by its slug and the hash of one revision, or sent whole.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from decimal import Decimal
from functools import lru_cache

import orjson

from counterpane.craft.safety import Profile
from counterpane.library.errors import NotFound
from counterpane.library.keeping.objects import canonical, digest
from counterpane.library.near import nearest
from counterpane.library.ports import Shelf, Store, Wanted
from counterpane.library.safety.profiles import PROFILE, Listed, content_of, profile_of
from counterpane.library.values import BadInput, read_fields, text

SHELF: Shelf = "profile"
SEND_IT = "Send the list itself: name, dated, source, items."
MOST_COMPARED = 1_000
"""Slugs among which the nearest of one that is not known is looked for; house."""

KEPT_READY = 256
"""Lists that stand ready without being read again; house."""

FindProfile = Callable[[str, str | None], Listed]
"""How a list is found by its slug, at one revision or at the latest; raises NotFound."""


def found_among(profiles: Mapping[str, Profile]) -> FindProfile:
    """Return how a list is found among these, each of which has one revision."""

    def find(slug: str, sha256: str | None = None) -> Listed:
        if slug not in profiles:
            raise NotFound(f"No list is called {slug[:80]!r}.", nearest(slug, profiles) or SEND_IT)
        profile = profiles[slug]
        found = digest(canonical({"slug": slug, **content_of(profile)}))
        if sha256 not in (None, found):
            hint = "Name the library that holds it, or leave the revision out."
            raise NotFound(f"The list {slug!r} that ships with the program is not the revision that is named.", hint)
        return Listed(profile, slug, found)

    return find


def found_in(store: Store) -> FindProfile:
    """Return how a list is found in a store, at one revision or at the latest."""

    def find(slug: str, sha256: str | None = None) -> Listed:
        try:
            kept = store.revision(SHELF, slug, sha256) if sha256 else store.latest(SHELF, slug)
        except NotFound as missing:
            known = (orjson.loads(card)["slug"] for card in store.page(Wanted(SHELF, limit=MOST_COMPARED)).cards)
            hint = missing.hint if sha256 else nearest(slug, known) or SEND_IT
            raise NotFound(f"No list is called {slug[:80]!r}." if not sha256 else str(missing), hint) from None
        return Listed(_ready(kept.body), slug, kept.sha256)

    return find


@lru_cache(KEPT_READY)
def _ready(body: bytes) -> Profile:
    whole = json.loads(body, parse_float=Decimal)
    return profile_of({name: whole[name] for name in PROFILE})


def listed_of(value: object, find: FindProfile, pointer: str = "") -> Listed:
    """Return the list that a request names or holds; BadInput for one that is not known, or that does not hold."""
    if isinstance(value, str):
        return _found(find, value, None, pointer)
    if isinstance(value, Mapping) and "profile" in value:
        named = read_fields(pointer, value, {"profile": text, "revision": text})
        if "profile" not in named:
            raise BadInput(f"{pointer}/profile", "No list is named.", "Give its slug.")
        return _found(find, str(named["profile"]), _text_or_none(named.get("revision")), pointer)
    return Listed(profile_of(value, pointer))


def _found(find: FindProfile, slug: str, sha256: str | None, pointer: str) -> Listed:
    try:
        return find(slug, sha256)
    except NotFound as missing:
        raise BadInput(pointer, str(missing), missing.hint) from None


def _text_or_none(value: object) -> str | None:
    return None if value is None else str(value)
