"""What a peer's revision becomes here: proved again by this program, and marked as mirrored, not reviewed here."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from dataclasses import replace
from decimal import Decimal
from typing import Any

import orjson

from counterpane.craft.constructions import CannotBePlanned
from counterpane.library.editions import edition_proof
from counterpane.library.errors import LibraryError, NotTaken
from counterpane.library.keeping import recipes
from counterpane.library.keeping.objects import digest, json_bytes
from counterpane.library.parts import components
from counterpane.library.ports import Change, Entry, Kept, Shelf
from counterpane.library.safety import kept_profiles
from counterpane.library.services import Services
from counterpane.library.values import BadInput

MIRRORED = "mirrored"
GRAVE = ("deprecated", "yanked", "quarantined", "withdrawn")
"""What a peer says of a revision that is followed here; that it was accepted there says nothing here."""

Content = Mapping[str, Any]
Read = Callable[[Shelf, bytes], Content]
"""Reads the content of a revision as it would be sent, its numbers as Decimal; raises ValueError for another shape."""

_PROOFS: Mapping[Shelf, Callable[[Services, Content, str, str], Entry]] = {
    "component": components.entry_of,
    "recipe": recipes.entry_of,
    "profile": kept_profiles.entry_of,
    "edition": edition_proof.entry_of,
}


def proved(services: Services, read: Read, change: Change, data: bytes, by: tuple[str, str]) -> Entry:
    """Return a revision as it is kept here, of a peer and in a state; raise NotTaken for what does not prove."""
    peer, status = by
    sha256 = change.sha256 or ""
    name = f"{change.kind} {change.slug!r}, number {change.seq} of {peer}, object {sha256}"
    if digest(data) != sha256:
        raise NotTaken(sha256, f"{name}: the bytes are not those of the hash.")
    try:
        entry = _PROOFS[change.kind](services, read(change.kind, data), peer, status)
    except (LibraryError, CannotBePlanned, BadInput, ValueError, KeyError, TypeError) as fault:
        raise NotTaken(sha256, f"{name}: it does not prove here: {fault}") from fault
    if (entry.sha256, entry.slug) != (sha256, change.slug):
        raise NotTaken(sha256, f"{name}: this program writes it otherwise, or it has another slug.")
    return replace(entry, body=json_bytes(json.loads(entry.body, parse_float=Decimal) | {"mirrored_from": peer}))


def mirrored_from(kept: Kept) -> str | None:
    """Return the peer of which a revision is a copy, None for a revision that was written here."""
    peer: str | None = orjson.loads(kept.body).get("mirrored_from")
    return peer
