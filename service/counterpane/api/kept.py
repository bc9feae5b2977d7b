"""Answers about what is kept, the same for each noun: stored bytes, lists and chains of revisions."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

import orjson

from counterpane.api.operations import Answer, Call
from counterpane.api.paging import page, read_query, write_cursor
from counterpane.library.keeping import listing
from counterpane.library.parts import companions as library_companions
from counterpane.library.ports import Kept, Key, Shelf


def shown(kept: Kept) -> Answer:
    """Return the stored bytes as they are."""
    return Answer(kept.body, sha256=kept.sha256)


ONLY_MEASURED = (
    "Only parts whose openings somebody measured are listed, each at the yarn, gauge and wash of its record. Left out "
    "are parts with a measured opening of this size or more, and all that nobody measured: an estimate, or a note that "
    "the rows have no openings, answers no such question."
)
"""What a list by measured openings leaves out, and why."""


def added(kept: Kept, before: bool, path: str) -> Answer:
    """Return the stored bytes, with the address of what was made; `before` says that it was made by an earlier try."""
    return published(kept, before, f"{path}/{kept.slug}")


def published(kept: Kept, before: bool, place: str) -> Answer:
    """Return the stored bytes, with the place of what was made; `before` says that it was made by an earlier try."""
    return Answer(kept.body, 201, sha256=kept.sha256, headers=(("Location", place), *again(before)))


def again(before: bool) -> tuple[tuple[str, str], ...]:
    """Return the header of an answer to a request that was done `before`."""
    return (("Idempotency-Replayed", "true"),) if before else ()


def asked(call: Call) -> dict[str, Any]:
    """Return the query without what says how the list is shown and not what it holds."""
    return {name: value for name, value in call.query.items() if name not in ("profile", "facets")}


def listed(call: Call, shelf: Shelf, path: str) -> Answer:
    """Return a page of the cards that the query wants."""
    filters, after, limit = read_query(call.services, asked(call))
    found = listing.page(call.services, shelf, filters, after, limit)
    start: dict[str, Any] = {"left_out": ONLY_MEASURED} if filters.get("openings_under_mm") else {}
    if call.query.get("facets"):
        start["facets"] = listing.facets(call.services, filters)
    if call.count:
        start["total"] = listing.count(call.services, shelf, filters)
    answer = page(path, found.cards, _cursor(call, filters, found.last, limit), start)
    return replace(answer, headers=(*answer.headers, COUNTED)) if call.count else answer


COUNTED = ("Preference-Applied", "count=exact")
"""The header of a list of which the whole was counted (RFC 7240)."""


def companions(call: Call, path: str) -> Answer:
    """Return a page of the companions that the query wants."""
    filters, after, limit = read_query(call.services, call.query)
    found = library_companions.page(call.services, call.path["slug"], filters, after, limit)
    cards = [orjson.dumps(card) for card in found.cards]
    start = {"component": call.path["slug"], "count": found.count}
    return page(path, cards, _cursor(call, filters, found.last, limit), start)


def history(chain: Sequence[Kept], path: str) -> Answer:
    """Return the chain of revisions, oldest first."""
    items = [_revision(kept, path) for kept in chain]
    return Answer(orjson.dumps({"slug": chain[0].slug, "items": items}))


def _revision(kept: Kept, path: str) -> dict[str, Any]:
    return {
        "number": kept.number,
        "sha256": kept.sha256,
        "at": kept.at,
        "status": kept.status,
        "by": kept.by,
        "parent": kept.parent,
        "href": f"{path}/revisions/{kept.sha256}",
        "object": f"/v1/objects/sha256/{kept.sha256}",
    }


def _cursor(call: Call, filters: dict[str, Any], last: Key | None, limit: int) -> str | None:
    return write_cursor(call.services, filters | {"limit": limit}, last) if last is not None else None
