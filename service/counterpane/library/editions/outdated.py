"""Which recipes use a component, which pinned parts of a recipe have successors, and what an upgrade would change.

Nothing is upgraded here: the recipe is planned as it stands and with the successors, and the figures are compared.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

import orjson

from counterpane.craft.constructions import CannotBePlanned
from counterpane.library.errors import NotFound
from counterpane.library.keeping.keeping import UNEXPLAINED
from counterpane.library.keeping.listing import words_of
from counterpane.library.keeping.pinning import pinned_to, pins_in, request_of
from counterpane.library.parts import components
from counterpane.library.plans import planning
from counterpane.library.plans.plan_answers import finding_json
from counterpane.library.ports import Key, Wanted
from counterpane.library.services import Services
from counterpane.library.values import BadInput

Content = Mapping[str, Any]
AT_ONCE = 200
MOST_LOOKED_OVER = 10_000
"""Recipes that hold the words of a slug and are looked over for it; house figure that bounds time."""
MOST_LISTED = 200
MOST_CHANGES = 500
"""Figures that are told of one upgrade; house."""
COMPARED = ("counts", "finished", "stitches_total", "yarn")


def used_in(services: Services, slug: str) -> dict[str, Any]:
    """Return how many recipes use a component, and the first of them with the revision that each pins; raise NotFound.

    `whole` is false where more recipes hold its words than are looked over.
    """
    latest = components.latest(services, slug).sha256
    names, whole = _using(services, slug)
    items = [_user(services, name, slug, latest) for name in names[:MOST_LISTED]]
    return {"component": slug, "latest": latest, "recipes": len(names), "whole": whole, "items": items}


def _using(services: Services, slug: str) -> tuple[list[str], bool]:
    """Return the recipes that use a component by name: found by its words, and kept where their cards name it."""
    found: list[str] = []
    after: Key | None = None
    for _ in range(MOST_LOOKED_OVER // AT_ONCE):
        page = services.store.page(Wanted("recipe", words=words_of(slug), after=after, limit=AT_ONCE))
        cards = [orjson.loads(card) for card in page.cards]
        found += [card["slug"] for card in cards if slug in card["parts"]]
        after = page.last
        if after is None:
            return sorted(found), True
    return sorted(found), False


def _user(services: Services, name: str, slug: str, latest: str) -> dict[str, Any]:
    recipe = services.store.latest("recipe", name)
    pinned = pins_in(recipe).get(slug, latest)
    card = {"recipe": name, "revision": recipe.sha256, "status": recipe.status, "pinned": pinned}
    return card | {"outdated": pinned != latest, "href": f"/v1/recipes/{name}"}


def outdated(services: Services, slug: str) -> dict[str, Any]:
    """Return the parts of a recipe that have successors, and what taking them all would change; raise NotFound."""
    recipe = services.store.latest("recipe", slug)
    parts = list(_successors(services, pins_in(recipe)))
    told = {"recipe": slug, "revision": recipe.sha256, "parts": parts}
    if not parts:
        return told | {"fits": True, "changes": [], "findings": []}
    request = upgraded = request_of(recipe)
    for part in parts:
        upgraded = pinned_to(upgraded, part["component"], part["latest"])
    return told | _compared(services, request, upgraded)


def _successors(services: Services, pins: Mapping[str, str]) -> Iterator[dict[str, Any]]:
    for slug, pinned in sorted(pins.items()):
        chain = services.store.history("component", slug)
        latest = next((kept for kept in reversed(chain) if kept.status != "withdrawn"), None)
        if latest is None or latest.sha256 == pinned:
            continue
        old = next((kept for kept in reversed(chain) if kept.sha256 == pinned), None)
        yield {
            "component": slug,
            "pinned": pinned,
            "latest": latest.sha256,
            "behind": latest.number - old.number if old else None,
            "status": {"pinned": old.status if old else None, "latest": latest.status},
        }


def _compared(services: Services, request: Content, upgraded: Content) -> dict[str, Any]:
    try:
        new = planning.plan(services, upgraded)
        old = planning.plan(services, request)
    except CannotBePlanned as refusal:
        return {"fits": False, "changes": [], "findings": [finding_json(each) for each in refusal.findings]}
    except (BadInput, NotFound) as refusal:
        told = {"rule": UNEXPLAINED, "severity": "error", "message": str(refusal), "hint": refusal.hint}
        return {"fits": False, "changes": [], "findings": [told]}
    changes = list(_changes("", _figures(old), _figures(new)))[:MOST_CHANGES]
    return {"fits": True, "changes": changes, "findings": new["findings"]}


def _figures(plan: Content) -> dict[str, Any]:
    """Return what is compared of a plan: its counts, rows, size, yarn, and what is said of safety."""
    safety = plan["safety"] or {}
    return {
        **{name: plan[name] for name in COMPARED},
        "rows": sum(section["rows"] for section in plan["sections"]),
        "safety": {
            "findings": sorted({each["rule"] for each in safety.get("findings", ())}),
            "not_assessed": sorted(safety.get("not_assessed", ())),
        },
    }


def _changes(pointer: str, old: Any, new: Any) -> Iterator[dict[str, Any]]:
    """Give each figure that differs, with its place and both values; a list that differs is given whole."""
    if isinstance(old, Mapping) and isinstance(new, Mapping):
        for name in sorted(set(old) | set(new)):
            yield from _changes(f"{pointer}/{name}", old.get(name), new.get(name))
    elif old != new:
        yield {"pointer": pointer, "old": old, "new": new}


def words_of_outdated(told: Content) -> Sequence[str]:
    """Return what is told of a recipe's parts as lines of plain text."""
    lines = [_part_said(part) for part in told["parts"]]
    if not lines:
        return [f"Each part of {told['recipe']} is pinned to its latest revision."]
    if not told["fits"]:
        lines.append("With the latest revisions no blanket comes of it:")
        return lines + [f"  {each['message']} {each['hint']}" for each in told["findings"]]
    lines.append("An upgrade changes:" if told["changes"] else "An upgrade changes no count, row, yarn or safety.")
    return lines + [f"  {each['pointer'][1:]}: {each['old']} → {each['new']}" for each in told["changes"]]


def _part_said(part: Content) -> str:
    behind = f"{part['behind']} behind" if part["behind"] is not None else "not of its chain"
    return f"{part['component']}: pinned to {part['pinned'][:12]}, the latest is {part['latest'][:12]} ({behind})"
