"""Where revisions stand: moving one, telling its moves, and what a plan must know of the parts that it takes."""

from __future__ import annotations

import json
from collections.abc import Mapping
from decimal import Decimal
from typing import Any

from counterpane.craft.component.standing import PlacedPart
from counterpane.library.errors import NotFound, NotTheirs
from counterpane.library.keeping.objects import json_bytes
from counterpane.library.keeping.once import only_once
from counterpane.library.keeping.record import Move, Retell, Standing
from counterpane.library.ports import ROLES, Done, Holder, Once, Shelf
from counterpane.library.review import ladder, reasons
from counterpane.library.services import Services
from counterpane.library.values import BadInput

Content = Mapping[str, Any]
NEEDED = {"deprecated": ("replacement",), "quarantined": ("until", "owner")}
"""What must be said beside the reason of a move; none of it is taken with another one."""


def placed_part_of(told: Content) -> PlacedPart:
    """Return a placed part of the JSON values of an example."""
    return PlacedPart(**told)


def placed_part(services: Services, pointer: str, slug: str, pins: Mapping[str, str]) -> PlacedPart | None:
    """Return where a part of a request stands, at the revision that it takes; None where nothing is to be said."""
    last = services.store.standing("component", slug, pins[slug]) if slug in pins else _of_latest(services, slug)
    if last is None:
        return None
    over = bool(last.until and last.until < services.now()[:10])
    return PlacedPart(pointer, slug, last.status, last.said, last.replacement, last.until, over)


def _of_latest(services: Services, slug: str) -> Standing | None:
    try:
        latest = services.store.latest("component", slug)
    except NotFound:  # A withdrawn one, or none at all, which planning says in its own words.
        return next(
            (each for each in services.store.standings("component", slug)[::-1] if each.status == "withdrawn"), None
        )
    if latest.status in ("draft", "accepted"):
        return None
    return services.store.standing("component", slug, latest.sha256)


def owns(services: Services, shelf: Shelf, slug: str, holder: Holder) -> bool:
    """Say whether the holder of a token added a slug; raise NotFound."""
    return services.store.names().get(services.store.author(shelf, slug)) == holder.name


def require_owner(services: Services, shelf: Shelf, slug: str, holder: Holder) -> None:
    """Raise NotTheirs for a contributor who did not add what is changed; a reviewer may change anything."""
    if ROLES.index(holder.role) < ROLES.index("reviewer") and not owns(services, shelf, slug, holder):
        raise NotTheirs(f"The {shelf} {slug!r} was added by somebody else.")


def move(services: Services, shelf: Shelf, slug: str, content: Content, holder: Holder) -> dict[str, Any]:
    """Move a revision, the latest if none is named, and tell where the slug stands.

    Raise NotFound, BadInput, Moved and NotTheirs. `content` has `to`, `because` and `say`, and what NEEDED asks for.
    """
    return move_once(services, shelf, slug, content, holder, once=None)[0]


def move_once(
    services: Services, shelf: Shelf, slug: str, content: Content, holder: Holder, *, once: Once | None
) -> tuple[dict[str, Any], bool]:
    """Move a revision, or tell of what was moved under this key; say whether it was before.

    Raise what `move` raises, and KeyReused.
    """
    _, done = only_once(services.store, once, lambda: _move(services, shelf, slug, content, holder, once=once))
    return told(services, shelf, slug), done is not None


def _move(
    services: Services, shelf: Shelf, slug: str, content: Content, holder: Holder, *, once: Once | None
) -> Done | None:
    sha256 = content.get("revision") or services.store.latest(shelf, slug).sha256
    before = services.store.revision(shelf, slug, sha256).status
    last = services.store.standing(shelf, slug, sha256)
    ladder.require_unreviewed(before, content["to"])
    ladder.require_move(before, content["to"], holder.role, own=owns(services, shelf, slug, holder), last=last)
    reasons.refuse_unfit(content["because"], content["say"], content["to"])
    more = _more(services, shelf, slug, content)
    words = {"because": content["because"], "said": content["say"].strip()}
    made = Move(shelf, slug, sha256, before, content["to"], services.now(), holder.name, **words, **more)
    return services.store.move(made, retelling(made), once)


def _more(services: Services, shelf: Shelf, slug: str, content: Content) -> dict[str, Any]:
    needed = NEEDED.get(content["to"], ())
    for name in ("replacement", "until", "owner"):
        if (content.get(name) is None) == (name in needed):
            message = f"A move to {content['to']} {'says' if name in needed else 'does not say'} {name!r}."
            raise BadInput(f"/{name}", message, "Add it." if name in needed else "Leave it out.")
    replacement = content.get("replacement")
    if replacement == slug:
        raise BadInput("/replacement", "It cannot stand in its own place.", "Name another one.")
    if replacement:
        services.store.latest(shelf, replacement)
    if content.get("until") and content["until"] <= services.now()[:10]:
        raise BadInput("/until", f"{content['until']} is not after today.", "Name a day to come.")
    return {name: content[name] for name in needed}


def retelling(move: Move) -> Retell:
    """Return what turns the body or the card of a revision into that after a move; numbers keep their digits."""

    def retell(told: bytes) -> bytes:
        whole = json.loads(told, parse_float=Decimal)
        names = ("because", "said", "replacement", "until", "at")
        whole["status"] = move.status
        if "etag" in whole:  # A body and no card.
            whole["standing"] = {name: getattr(move, name) for name in names}
        return json_bytes(whole)

    return retell


def told(services: Services, shelf: Shelf, slug: str) -> dict[str, Any]:
    """Return where each revision of a slug stands and all its moves, oldest first; raise NotFound.

    People are told by their keys, and by their names where these are kept.
    """
    chain = services.store.history(shelf, slug)
    names = services.store.names()
    moves = [_told(each, names) for each in services.store.standings(shelf, slug)]
    revisions = [{"number": kept.number, "sha256": kept.sha256, "status": kept.status} for kept in chain]
    return {"slug": slug, "revisions": revisions, "moves": moves}


def _told(each: Standing, names: Mapping[str, str]) -> dict[str, Any]:
    plain = ("sha256", "at", "because", "said", "replacement", "until")
    people = {"by": person_json(each.by, names), "owner": person_json(each.owner, names)}
    return {"from": each.before, "to": each.status, **{name: getattr(each, name) for name in plain}, **people}


def person_json(key: str | None, names: Mapping[str, str]) -> dict[str, Any] | None:
    """Return somebody by key, with the name where it is kept."""
    return {"key": key, "name": names.get(key)} if key else None
