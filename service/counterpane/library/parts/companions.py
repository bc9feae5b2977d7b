"""Companions: which components fit another at a stitch count, and where."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import orjson

from counterpane.craft.component import KINDS, Component, Derived, derive
from counterpane.craft.constructions.obstacles import Stuck
from counterpane.craft.constructions.strips import Edging, selvedge, side_border
from counterpane.craft.findings import Correction, Finding
from counterpane.library.errors import Refused
from counterpane.library.parts import components
from counterpane.library.parts.telling import classes_of
from counterpane.library.ports import CountClass, Key, Wanted
from counterpane.library.services import Services

SHARES_ONLY = ("cast-on", "body", "bind-off")
"""Kinds that are always worked over the same stitches, never beside them."""

SHARES_THE_ROW = {"cast-on": "cast-on", "border": "ends", "body": "band", "bind-off": "bind-off"}


@dataclass(frozen=True, slots=True)
class Companions:
    """A page of companions at a count of the component's own stitches."""

    count: int
    cards: tuple[dict[str, Any], ...]
    last: Key | None


def page(services: Services, slug: str, filters: Mapping[str, Any], after: Key | None, limit: int) -> Companions:
    """Return companions by kind and slug, of one kind or of every kind but the component's own.

    Raise NotFound, and Refused with the nearest counts where the component does not admit the count.
    """
    component = components.find(services, slug)
    derived = derive(component, services.vocabulary)
    count = filters.get("count") or min(start.least for start in derived.starts)
    if not any(each.admits(count) for each in classes_of(component, derived)):
        raise Refused(f"{slug!r} does not take {count} stitches.", (_refused(slug, derived, count),))
    kinds = (filters["kind"],) if "kind" in filters else tuple(kind for kind in KINDS if kind != component.kind)
    return _collected(services, count, kinds, after, limit)


def _refused(slug: str, derived: Derived, count: int) -> Finding:
    near = {value for start in derived.starts for value in (start.below(count), start.above(count)) if value}
    ordered = sorted(near, key=lambda value: (abs(value - count), -value))[:2]
    changes = tuple(Correction("/count", value, f"{slug} takes {derived.said}") for value in ordered)
    message = f"{slug} takes {derived.said}: {count} is not one of them."
    hint = "Ask at " + " or ".join(map(str, ordered)) + " stitches."
    return Finding("does-not-prove", "error", message, hint, pointer="/count", changes=changes)


def _collected(services: Services, count: int, kinds: tuple[str, ...], after: Key | None, limit: int) -> Companions:
    """Walk the kinds in turn; a key is the place of a kind, then the store's own key within it."""
    found: list[dict[str, Any]] = []
    place, within = (int(after[0]), after[1:] or None) if after else (0, None)
    while place < len(kinds):
        admits = count if kinds[place] in SHARES_ONLY else None
        wanted = Wanted("component", kinds[place], admits, after=within, limit=limit - len(found))
        part = services.store.page(wanted)
        cards = [orjson.loads(card) for card in part.cards]
        found += [{**card, "places": places} for card in cards if (places := _places(services, card, count))]
        place, within = (place, part.last) if part.last else (place + 1, None)
        if len(found) >= limit or within:
            break
    last = (place, *(within or ())) if place < len(kinds) else None
    return Companions(count, tuple(found), last)


def _places(services: Services, card: Mapping[str, Any], count: int) -> list[dict[str, Any]]:
    """Return where the component of a card fits: over the same stitches, or beside them with stitches of its own."""
    component = components.find(services, card["slug"], card["sha256"])
    derived = derive(component, services.vocabulary)
    places = []
    if component.kind in SHARES_THE_ROW and any(each.admits(count) for each in classes_of(component, derived)):
        places.append({"place": SHARES_THE_ROW[component.kind], "stitches": count, "cast_on": count})
    width = _width(services, component, classes_of(component, derived), count)
    if width is not None:
        place = "selvedge" if component.kind == "selvedge" else "sides"
        places.append({"place": place, "stitches": width, "cast_on": count + 2 * width})
    return places


def _width(services: Services, component: Component, classes: tuple[CountClass, ...], count: int) -> int | None:
    """Return the stitches of an edge on one side: a border's default or fixed count, a selvedge's own.

    None for a part that is no edge, or whose rows cannot stand beside others.
    """
    edging = Edging(component, "")
    try:
        if component.kind == "selvedge":
            return selvedge(edging, None, None, services.vocabulary).widths[0]
        default = next((each.default for each in component.parameters if each.name == "stitches"), None)
        fixed = next((each.residue for each in classes if each.modulus == 0), None)
        width = (default or fixed) if component.kind == "border" else None
        return side_border(edging, (width, width), count + 2 * width, services.vocabulary).widths[0] if width else None
    except Stuck:
        return None
