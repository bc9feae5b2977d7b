"""What of a library is shown to strangers: the revisions that may be, and nothing of what was taken back.

A slug whose latest revision is withdrawn or in quarantine is left out whole, and so is a recipe that pins a revision
which is not shown. Nobody's name is among it but those of makers, which stand in the contents.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

import orjson

from counterpane.library.errors import NotFound, Stale
from counterpane.library.keeping import recipes
from counterpane.library.keeping.keeping import Keeping
from counterpane.library.keeping.objects import json_bytes
from counterpane.library.keeping.pinning import pins_in
from counterpane.library.parts import components
from counterpane.library.ports import Change, Kept, Shelf
from counterpane.library.services import Services
from counterpane.library.sharing.exports import cards

TAKEN_BACK = ("withdrawn", "quarantined")
AT_ONCE = 200
MOST_TOLD = 50
"""Changes that a feed of a folder tells; house."""


@dataclass(frozen=True, slots=True)
class Published:
    """The revisions shown, by slug, and how many slugs are left out.

    `only` are the states that are shown, empty for all but those of `TAKEN_BACK`.
    """

    parts: Mapping[str, Kept]
    recipes: Mapping[str, Kept]
    left_out: int
    only: Collection[str] = ()

    @property
    def shelves(self) -> tuple[tuple[Shelf, Mapping[str, Kept]], ...]:
        """What is shown of each shelf."""
        return ("component", self.parts), ("recipe", self.recipes)

    def shows(self, kept: Kept) -> bool:
        """Say whether a revision may be shown where it stands."""
        return _may(kept.status, self.only)


def published(services: Services, only: Collection[str] = ()) -> Published:
    """Choose what of a library is shown: of each slug the latest revision that may be."""
    parts, without = _chosen(services, components.COMPONENTS, only)
    whole, others = _chosen(services, recipes.RECIPES, only)
    sound = {slug: kept for slug, kept in whole.items() if _rests_on_shown(services, kept, only)}
    return Published(parts, sound, without + others + len(whole) - len(sound), tuple(only))


def _may(status: str, only: Collection[str]) -> bool:
    return status not in TAKEN_BACK and (not only or status in only)


def _chosen(services: Services, noun: Keeping, only: Collection[str]) -> tuple[dict[str, Kept], int]:
    found: dict[str, Kept] = {}
    left_out = 0
    for slug in _slugs(services, noun.shelf):
        kept = _latest_shown(noun.history(services, slug), only)
        left_out += kept is None
        if kept is not None:
            found[slug] = noun.told(services, kept)
    return found, left_out


def _slugs(services: Services, shelf: Shelf) -> Iterator[str]:
    """Give every slug that is not withdrawn, in order."""
    return (orjson.loads(card)["slug"] for card in cards(services, shelf, {}))


def _latest_shown(chain: tuple[Kept, ...], only: Collection[str]) -> Kept | None:
    if chain[-1].status in TAKEN_BACK:
        return None
    return next((kept for kept in reversed(chain) if _may(kept.status, only)), None)


def _rests_on_shown(services: Services, recipe: Kept, only: Collection[str]) -> bool:
    """Say whether all that a recipe pins may be shown."""
    try:
        pinned = [services.store.revision("component", *pin) for pin in pins_in(recipe).items()]
    except NotFound:
        return False
    return all(_may(kept.status, only) for kept in pinned)


def part_body(shown: Published, kept: Kept) -> dict[str, Any]:
    """Return what is told of a part, with no slug among those of its texture that is not shown."""
    whole: dict[str, Any] = orjson.loads(kept.body)
    return whole | {"same_texture": [each for each in whole["same_texture"] if each["slug"] in shown.parts]}


def body_bytes(shown: Published, shelf: Shelf, kept: Kept) -> bytes:
    """Return the answer about a revision as bytes, as the API gives it."""
    whole = orjson.loads(kept.body)
    if shelf != "component" or all(each["slug"] in shown.parts for each in whole["same_texture"]):
        return kept.body
    return json_bytes(part_body(shown, kept))


def card_of(shelf: Shelf, kept: Kept) -> dict[str, Any]:
    """Return the line of a list about a revision, whose address leads to its page in the folder."""
    whole = orjson.loads(kept.body)
    if shelf == "component":
        names, counts = ("slug", "kind", "name", "summary", "reversible"), ("multiple", "fixed", "classes")
        told = {name: whole[name] for name in names} | {name: whole["derived"][name] for name in counts}
        told |= {name: whole["provenance"][name] for name in ("licence", "author", "source")}
    else:
        told = {name: whole[name] for name in (*recipes.HEADINGS, "construction")}
        told |= {"parts": list(pins_in(kept)), "licence": whole["sharing"]["licence"]}
    return told | {"status": kept.status, "sha256": kept.sha256, "href": f"{shelf}s/{kept.slug}.json"}


def objects_of(services: Services, shown: Published) -> Iterator[tuple[str, bytes]]:
    """Give the canonical bytes of every revision that may be shown, by their hash, each once."""
    given: set[str] = set()
    for shelf, kept_by_slug in shown.shelves:
        for slug in kept_by_slug:
            for kept in revisions_of(services, shown, shelf, slug):
                if kept.sha256 not in given:
                    given.add(kept.sha256)
                    yield kept.sha256, services.store.object(kept.sha256)


def revisions_of(services: Services, shown: Published, shelf: Shelf, slug: str) -> list[Kept]:
    """Return the revisions of a slug that may be shown, oldest first."""
    chain = [kept for kept in services.store.history(shelf, slug) if shown.shows(kept)]
    return chain if shelf == "component" else [each for each in chain if _rests_on_shown(services, each, shown.only)]


def latest_changes(services: Services, shown: Published) -> list[Change]:
    """Return the latest lines of the history that tell of what is shown, the latest first."""
    names = dict(shown.shelves)
    found: list[Change] = []
    end = services.store.last_change()
    while end > 0 and len(found) < MOST_TOLD:
        start = max(0, end - AT_ONCE)
        told = services.store.changes(start, end - start)
        found += [change for change in reversed(told) if change.slug in names.get(change.kind, ())]
        end = start
    return found[:MOST_TOLD]


def refuse_moved(services: Services, shown: Published) -> None:
    """Raise Stale where something that is shown was taken back since it was chosen."""
    for shelf, kept_by_slug in shown.shelves:
        for kept in kept_by_slug.values():
            try:
                still = services.store.revision(shelf, kept.slug, kept.sha256).status not in TAKEN_BACK
            except NotFound:
                still = False
            if not still:
                raise Stale(f"The {shelf} {kept.slug!r} was taken back meanwhile.", kept.sha256)
