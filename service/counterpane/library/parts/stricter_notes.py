"""What peers say of a component of the same name that is stricter than what is said here.

A peer's component whose name is in use here for something else is kept apart. Its stricter safety notes are told with
the one that is here, and the larger of the measured openings counts in searches, until it is revised to say as much.
"""

from __future__ import annotations

import json
from contextlib import suppress
from dataclasses import asdict
from decimal import Decimal
from fractions import Fraction
from math import ceil
from typing import Any

import orjson

from counterpane.craft.component import Component, Measure, component_of
from counterpane.craft.component.stricter import largest_measured, stricter
from counterpane.library.errors import NotFound
from counterpane.library.keeping.objects import json_bytes
from counterpane.library.ports import Entry, Kept, Store
from counterpane.library.sharing.following import Retold

Told = list[dict[str, Any]]


def noted(store: Store, component: Component) -> tuple[Told, Fraction | None]:
    """Return the stricter notes of peers on a component, and the largest opening anybody measured, in millimetres."""
    told: Told = []
    openings = [largest_measured(component)]
    for each in store.apart("component", component.slug):
        with suppress(NotFound):  # One that was passed over has no bytes here.
            other = component_of(orjson.loads(store.object(each.sha256)))
            told += notes_of(component, other, each.peer, each.sha256)
            openings.append(largest_measured(other))
    return told, max((each for each in openings if each is not None), default=None)


def notes_of(own: Component, other: Component, peer: str, sha256: str) -> Told:
    """Return the notes of a peer's component that are stricter than those of the one here."""
    found = stricter(own, other).items()
    return [{"note": name, "value": _value(value), "peer": peer, "sha256": sha256} for name, value in found]


def retold(store: Store, latest: Kept, other: Entry, peer: str) -> Retold | None:
    """Return what is told of the component here once a peer's is kept apart, None where that is no stricter."""
    own, theirs = component_of(orjson.loads(store.object(latest.sha256))), component_of(orjson.loads(other.content))
    notes = notes_of(own, theirs, peer, other.sha256)
    if not notes:
        return None
    whole = json.loads(latest.body, parse_float=Decimal)
    whole["stricter_notes"] = whole.get("stricter_notes", []) + notes
    openings = (noted(store, own)[1], largest_measured(theirs))
    opening = max((each for each in openings if each is not None), default=None)
    return Retold("component", latest.slug, latest.sha256, json_bytes(whole), micrometres(opening))


def micrometres(millimetres: Fraction | None) -> int | None:
    """Return an opening in whole micrometres, rounded up."""
    return None if millimetres is None else ceil(1000 * millimetres)


def _value(value: Measure | str) -> Any:
    return asdict(value) if isinstance(value, Measure) else value
