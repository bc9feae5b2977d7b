"""What a peer's revision becomes here: proved again by this program, and marked as mirrored, not reviewed here.

What the peer later holds back is held back here too, and set free when the peer sets it free.
"""

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
from counterpane.library.keeping.record import Move
from counterpane.library.parts import components
from counterpane.library.ports import Change, Entry, Kept, Shelf
from counterpane.library.safety import kept_profiles
from counterpane.library.services import Services
from counterpane.library.values import BadInput

MIRRORED = "mirrored"
GRAVE = ("deprecated", "yanked", "quarantined", "withdrawn")
"""What a peer says of a revision that is followed here, ever stricter; that it was accepted there says nothing here."""
TOLD_BY_PEER = "told-by-peer"
"""The reason of a move that follows a peer."""

Content = Mapping[str, Any]
Read = Callable[[Shelf, bytes], Content]
"""Reads the content of a revision as it would be sent, its numbers as Decimal; raises ValueError for another shape."""

_PROOFS: Mapping[Shelf, Callable[[Services, Content, str, str], Entry]] = {
    "component": components.entry_of,
    "recipe": recipes.entry_of,
    "profile": kept_profiles.entry_of,
    "edition": edition_proof.entry_of,
}


def proved(services: Services, read: Read, change: Change, data: bytes, peer: str) -> Entry:
    """Return a revision of a peer as it is kept here; raise NotTaken for what does not prove."""
    sha256 = change.sha256 or ""
    name = f"{change.kind} {change.slug!r}, number {change.seq} of {peer}, object {sha256}"
    if digest(data) != sha256:
        raise NotTaken(sha256, f"{name}: the bytes are not those of the hash.")
    try:
        entry = _PROOFS[change.kind](services, read(change.kind, data), peer, MIRRORED)
    except (LibraryError, CannotBePlanned, BadInput, ValueError, KeyError, TypeError) as fault:
        raise NotTaken(sha256, f"{name}: it does not prove here: {fault}") from fault
    if (entry.sha256, entry.slug) != (sha256, change.slug):
        raise NotTaken(sha256, f"{name}: this program writes it otherwise, or it has another slug.")
    return replace(entry, body=json_bytes(json.loads(entry.body, parse_float=Decimal) | {"mirrored_from": peer}))


def followed(services: Services, change: Change, copy: Kept, peer: str) -> Move | None:
    """Return the move by which a copy follows what its peer says of it, None where it stays as it stands.

    The stricter of both holds: what was decided here is not undone by a peer.
    """
    own, theirs = _own(services, change.kind, copy), change.event if change.sha256 else "withdrawn"
    status = theirs if _strict(theirs) > _strict(own) else own
    if copy.status in (status, "withdrawn"):
        return None
    place = f"/v1/{change.kind}s/{copy.slug}/standing"
    said = f"{peer}, from which it was taken over, made it {change.event}; the reason stands there under {place}."
    words = (services.now(), peer, TOLD_BY_PEER, said)
    return Move(change.kind, copy.slug, copy.sha256, copy.status, status, *words)


def _strict(status: str) -> int:
    return GRAVE.index(status) if status in GRAVE else -1


def _own(services: Services, shelf: Shelf, copy: Kept) -> str:
    """Return where a copy would stand if its peer had said nothing of it."""
    status = copy.status
    for each in reversed(services.store.standings(shelf, copy.slug)):
        if each.sha256 == copy.sha256:
            if each.because != TOLD_BY_PEER:
                break
            status = each.before
    return status


def mirrored_from(kept: Kept) -> str | None:
    """Return the peer of which a revision is a copy, None for a revision that was written here."""
    peer: str | None = orjson.loads(kept.body).get("mirrored_from")
    return peer
