"""Recipes: plan requests that are kept, each part pinned to a revision. Whatever is kept makes a plan."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from counterpane.library.keeping.keeping import Keeping
from counterpane.library.keeping.objects import canonical, digest, json_bytes
from counterpane.library.parts import components
from counterpane.library.plans import planning
from counterpane.library.plans.plan_answers import recipe_json
from counterpane.library.ports import Entry, Shelf
from counterpane.library.review.licences import sharing_json
from counterpane.library.safety.profile_finding import listed_of
from counterpane.library.services import Services

SHELF: Shelf = "recipe"
HEADINGS = ("slug", "name", "summary")


def entry_of(services: Services, content: Mapping[str, Any], by: str, status: str) -> Entry:
    """Plan a recipe, pin its parts, and return it as the store keeps it.

    Raise CannotBePlanned, BadInput or UnknownPart where it makes no plan, and Unkeepable.
    """
    request = {name: value for name, value in content.items() if name not in HEADINGS}
    plan = planning.made(services, request)
    whole = {
        "slug": content["slug"],
        "name": content["name"],
        "summary": content.get("summary", ""),
        **request,
        **recipe_json(plan),
    }
    whole["parts"] = pinned(services, whole["parts"], planning.pins_of(request))
    if named := (whole.get("for") or {}).get("profile"):
        whole["for"] = {**whole["for"], "profile": _list_pinned(services, named)}
    data = canonical(whole)
    sha256, at = digest(data), services.now()
    sharing = sharing_json(plan, request.get("licence"), services.known.sources)
    told = {"sharing": sharing, "status": status, "changed": at, "sha256": sha256, "etag": f'"{sha256}"'}
    return Entry(
        shelf=SHELF,
        slug=whole["slug"],
        kind=SHELF,
        sha256=sha256,
        content=data,
        body=json_bytes(whole | told),
        card=json_bytes(_card(whole, status, sha256)),
        title=f"{whole['slug'].replace('-', ' ')} {whole['name']}",
        words="\n".join((whole["summary"], *_slugs(whole))),
        at=at,
        by=by,
        status=status,
    )


def pinned(services: Services, parts: Mapping[str, Any], pins: Mapping[str, str]) -> dict[str, Any]:
    """Return the parts with the hash of each component's revision: the one that is pinned, else the latest."""

    def pin(part: Any) -> Any:
        if isinstance(part, list):
            return [pin(each) for each in part]
        if not isinstance(part, Mapping) or "component" not in part:
            return part
        slug = part["component"]
        return {**part, "revision": pins.get(slug) or components.latest(services, slug).sha256}

    return {name: pin(part) for name, part in parts.items()}


def _list_pinned(services: Services, named: Any) -> Any:
    """Return the list that a piece is held against with the hash of its revision; one sent whole stays as it is."""
    listed = listed_of(named, services.known.find_profile, "/for/profile")
    return named if listed.slug is None else {"profile": listed.slug, "revision": listed.sha256}


def _card(whole: Mapping[str, Any], status: str, sha256: str) -> dict[str, Any]:
    names = (*HEADINGS, "construction")
    told = {"status": status, "sha256": sha256, "href": f"/v1/recipes/{whole['slug']}"}
    return {name: whole[name] for name in names} | {"parts": _slugs(whole)} | told


def _slugs(whole: Mapping[str, Any]) -> list[str]:
    return list(dict.fromkeys(part["component"] for _, part in planning.parts_of(whole)))


RECIPES = Keeping(SHELF, entry_of)
