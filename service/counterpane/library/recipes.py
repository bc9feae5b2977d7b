"""Recipes: plan requests that are kept, each part pinned to a revision. Whatever is kept makes a plan."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from counterpane.craft.findings import Finding
from counterpane.library import components, planning
from counterpane.library.errors import Refused
from counterpane.library.objects import canonical, digest, json_bytes
from counterpane.library.plan_answers import recipe_json
from counterpane.library.ports import Entry, Kept, Shelf
from counterpane.library.services import Services

SHELF: Shelf = "recipe"
HEADINGS = ("slug", "name", "summary")


def get(services: Services, slug: str) -> Kept:
    """Return the latest revision; raise NotFound."""
    return services.store.latest(SHELF, slug)


def revision(services: Services, slug: str, sha256: str) -> Kept:
    """Return the revision of this hash; raise NotFound."""
    return services.store.revision(SHELF, slug, sha256)


def history(services: Services, slug: str) -> tuple[Kept, ...]:
    """Return all revisions, oldest first; raise NotFound."""
    return services.store.history(SHELF, slug)


def add(services: Services, content: Mapping[str, Any], by: str, status: str = "draft") -> Kept:
    """Keep a recipe; raise CannotBePlanned, BadInput or UnknownPart where it makes no plan, Taken, Unkeepable, Busy."""
    entry = entry_of(services, content, by, status)
    services.store.add(entry)
    return get(services, entry.slug)


def revise(services: Services, slug: str, content: Mapping[str, Any], expected: str | None, by: str) -> Kept:
    """Keep the next revision of a recipe; the same content again changes nothing.

    Raise what `add` raises, NotFound, and Stale unless the latest revision is the expected one.
    """
    latest = get(services, slug)
    if content["slug"] != slug:
        message = f"The slug is {content['slug']!r}, and the recipe is kept as {slug!r}."
        hint = "Leave the slug as it is, or add another recipe."
        raise Refused("The slug cannot change.", (Finding("does-not-prove", "error", message, hint, pointer="/slug"),))
    entry = entry_of(services, content, by, latest.status)
    if entry.sha256 != latest.sha256 or latest.sha256 != (expected or latest.sha256):
        services.store.revise(entry, expected)
    return get(services, slug)


def entry_of(services: Services, content: Mapping[str, Any], by: str, status: str) -> Entry:
    """Plan a recipe, pin its parts, and return it as the store keeps it."""
    request = {name: value for name, value in content.items() if name not in HEADINGS}
    whole = {
        "slug": content["slug"],
        "name": content["name"],
        "summary": content.get("summary", ""),
        **request,
        **recipe_json(planning.made(services, request)),
    }
    whole["parts"] = pinned(services, whole["parts"], planning.pins_of(request))
    data = canonical(whole)
    sha256, at = digest(data), services.now()
    told = {"status": status, "changed": at, "sha256": sha256, "etag": f'"{sha256}"'}
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
        return {**part, "revision": pins.get(slug) or components.get(services, slug).sha256}

    return {name: pin(part) for name, part in parts.items()}


def _card(whole: Mapping[str, Any], status: str, sha256: str) -> dict[str, Any]:
    names = (*HEADINGS, "construction")
    told = {"status": status, "sha256": sha256, "href": f"/v1/recipes/{whole['slug']}"}
    return {name: whole[name] for name in names} | {"parts": _slugs(whole)} | told


def _slugs(whole: Mapping[str, Any]) -> list[str]:
    return list(dict.fromkeys(part["component"] for _, part in planning.parts_of(whole)))
