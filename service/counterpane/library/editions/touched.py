"""What a corrected component touches: recipes and editions that pin an older revision, each with a drafted erratum.

A draft is worked out when it is asked for and is never kept. It becomes an erratum when the recipe is revised and its
next edition is published.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import orjson

from counterpane.craft.constructions import CannotBePlanned
from counterpane.craft.erratum import Line
from counterpane.craft.erratum.lines import lines_of
from counterpane.craft.stitches import Terms
from counterpane.library.editions import editions, errata
from counterpane.library.keeping.keeping import UNEXPLAINED
from counterpane.library.keeping.pinning import pinned_to, pins_in
from counterpane.library.parts import components
from counterpane.library.plans.plan_answers import finding_json
from counterpane.library.ports import Kept, Key, Wanted
from counterpane.library.services import Services
from counterpane.library.values import BadInput

Content = Mapping[str, Any]
LOOKED_OVER = 50
"""Recipes that are read from the store at a time; house."""


@dataclass(frozen=True, slots=True)
class Touched:
    """A page of what a component touches, with the revision that it is held against, and the key of the next page."""

    latest: str
    items: tuple[dict[str, Any], ...]
    last: Key | None


@dataclass(frozen=True, slots=True)
class _Pinned:
    """A recipe at the revision of its latest edition, with that edition; or at its own latest revision."""

    recipe: Kept
    edition: Content | None


def page(services: Services, slug: str, terms: Terms, after: Key | None, limit: int) -> Touched:
    """Look over as many recipes as `limit` says and return those that pin an older revision; raise NotFound."""
    latest = components.latest(services, slug)
    found = services.store.page(Wanted("recipe", after=after, limit=limit))
    names = [orjson.loads(card)["slug"] for card in found.cards]
    items = (item for name in names for item in _of_recipe(services, name, latest, terms))
    return Touched(latest.sha256, tuple(items), found.last)


def everything(services: Services, slug: str, terms: Terms) -> Iterator[dict[str, Any]]:
    """Give what a component touches among all recipes; raise NotFound."""
    after, more = None, True
    while more:
        found = page(services, slug, terms, after, LOOKED_OVER)
        yield from found.items
        after, more = found.last, found.last is not None


def words_of(slug: str, items: Sequence[Content]) -> str:
    """Return what a component touches as plain text: each draft, or why none can be made."""
    return "\n".join(_words(slug, items)) + "\n"


def _words(slug: str, items: Sequence[Content]) -> Iterator[str]:
    if not items:
        yield f"No recipe and no edition pins an older revision of {slug}."
    for item in items:
        name = f"{item['recipe']}, edition {item['edition']}" if item["edition"] else item["recipe"]
        yield f"{name}: {'a draft' if item['fits'] else 'it fits no more'}"
        yield from (f"{each['message']} {each['hint']}" for each in item["findings"])
        if item["erratum"]:
            yield errata.words_of(item["erratum"])


def _of_recipe(services: Services, name: str, latest: Kept, terms: Terms) -> Iterator[dict[str, Any]]:
    for touched in _pinning(services, name):
        pinned = pins_in(touched.recipe).get(latest.slug, latest.sha256)
        if pinned != latest.sha256:
            yield _item(services, touched, pinned, latest, terms)


def _pinning(services: Services, name: str) -> Iterator[_Pinned]:
    """Give the latest edition of a recipe and the recipe itself, once where it stands as that edition has it."""
    recipe, chain = services.store.latest("recipe", name), editions.history(services, name)
    edition = editions.content_of(services, chain[-1]) if chain else None
    if edition:
        yield _Pinned(services.store.revision("recipe", name, edition["revision"]), edition)
    if not edition or edition["revision"] != recipe.sha256:
        yield _Pinned(recipe, None)


def _item(services: Services, touched: _Pinned, pinned: str, latest: Kept, terms: Terms) -> dict[str, Any]:
    notes = _notes(services, pinned) != _notes(services, latest.sha256)
    head = {
        "recipe": touched.recipe.slug,
        "revision": touched.recipe.sha256,
        "edition": touched.edition["number"] if touched.edition else None,
        "pinned": pinned,
        "safety_notes_changed": notes,
    }
    return head | _draft(services, touched, latest, terms, for_safety=notes)


def _draft(services: Services, touched: _Pinned, latest: Kept, terms: Terms, *, for_safety: bool) -> dict[str, Any]:
    """Plan a recipe with the latest revision and return the erratum that follows, or why it fits no more."""
    grade, request = touched.edition or {}, editions.titled(touched.recipe)
    try:
        fresh = _lines(services, pinned_to(request, latest.slug, latest.sha256), grade, terms)
    except CannotBePlanned as refusal:
        return {"fits": False, "findings": [finding_json(each) for each in refusal.findings], "erratum": None}
    except BadInput as refusal:
        told = {"rule": UNEXPLAINED, "severity": "error", "message": str(refusal), "hint": refusal.hint}
        return {"fits": False, "findings": [told], "erratum": None}
    old = errata.lines_in(grade, terms) if grade else _lines(services, request, grade, terms)
    erratum = errata.erratum_json(old, fresh, for_safety=for_safety)
    return {"fits": True, "findings": [], "erratum": {"terms": terms, "note": "", **erratum}}


def _lines(services: Services, request: Content, grade: Content, terms: Terms) -> dict[str, tuple[Line, ...]]:
    return {each.size: lines_of(each.pattern) for each in editions.in_sizes(services, request, grade, terms)}


def _notes(services: Services, sha256: str) -> Any:
    """Return what a revision of a component records of safety."""
    return orjson.loads(services.store.object(sha256)).get("safety")
