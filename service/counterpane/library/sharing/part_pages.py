"""All that the page of a part says, as values: rows in words, counts, safety, credit, standing and revisions."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from counterpane.craft.component import Component
from counterpane.craft.licensing import LICENCES
from counterpane.craft.rows.say import WordsKind
from counterpane.craft.stitches import Terms
from counterpane.library.keeping.pinning import pins_in
from counterpane.library.parts import components
from counterpane.library.ports import Kept, Shelf
from counterpane.library.services import Services
from counterpane.library.sharing.published import Published, part_body, revisions_of
from counterpane.library.texts.wordings import Wanted, say_text

NOTED = "What its maker noted is a claim, not a measurement and not an approval. “Not known” was not looked at."
SIDES = {"yes": "both sides alike", "both-good": "the sides differ, both fit to show", "no": "one right side"}
UNKNOWN = "sides not known"
STANDS = {
    "draft": "A draft that nobody has reviewed.",
    "in-review": "Handed in, and not yet decided.",
    "accepted": "Looked at and taken in.",
    "deprecated": "Still here, and something else is better.",
    "yanked": "Not to be used in anything else: read why.",
    "mirrored": "Taken over from another library, and not reviewed in this one.",
}
EACH_WORDING: tuple[tuple[str, Terms], ...] = (("US", "us"), ("UK", "uk"))
_SHORT: WordsKind = "short"


def part_page(services: Services, shown: Published, kept: Kept) -> dict[str, Any]:
    """Return what the page of a part says of one revision."""
    body = part_body(shown, kept)
    component = components.find(services, kept.slug, kept.sha256)
    return {
        "part": body,
        "versions": [_version(services, component, place, body) for place in range(len(component.versions))],
        "sides": SIDES.get(component.reversible or "", UNKNOWN),
        "notes": [(name.replace("_", " "), _note(note)) for name, note in body["safety"].items()],
        "stricter": [(each["note"].replace("_", " "), _note(each["value"])) for each in body.get("stricter_notes", ())],
        "noted": NOTED,
        "credit": credit(services, component),
        "used": sorted(slug for slug, recipe in shown.recipes.items() if kept.slug in pins_in(recipe)),
        **standing(services, shown, "component", kept),
    }


def _version(services: Services, component: Component, place: int, body: Mapping[str, Any]) -> dict[str, Any]:
    rows = component.versions[place].rows
    said = {
        name: say_text(rows, services.vocabulary, Wanted(terms, _SHORT))["text"].splitlines()
        for name, terms in EACH_WORDING
    }
    examples = [each for each in body["examples"] if each["version"] == place]
    derived = body["derived"]["versions"][place]
    return {"name": component.versions[place].name, "said": said, "examples": examples, "derived": derived}


def _note(note: str | Mapping[str, Any]) -> str:
    return note if isinstance(note, str) else f"{note['value']} {note['unit']}"


def credit(services: Services, component: Component) -> dict[str, Any]:
    """Return whose a part is: what its licence asks to be kept with it."""
    said = component.provenance
    known = LICENCES.get(said.licence)
    return {
        "source": said.cited(services.sources),
        "author": said.author,
        "notice": said.notice,
        "address": said.address,
        "changes": list(said.changes),
        "printed": said.printed,
        "licence": f"{known.name} ({said.licence})" if known else said.licence,
        "licence_address": known.address if known else None,
    }


def standing(services: Services, shown: Published, shelf: Shelf, kept: Kept) -> dict[str, Any]:
    """Return where a revision stands and why, and all revisions; of those not shown no more than hash and state."""
    last = services.store.standing(shelf, kept.slug, kept.sha256)
    told = {kept.sha256 for kept in revisions_of(services, shown, shelf, kept.slug)}
    return {
        "sha256": kept.sha256,
        "status": kept.status,
        "stands": STANDS[kept.status],
        "said": last.said if last else None,
        "replacement": last.replacement if last else None,
        "revisions": list(_revisions(services.store.history(shelf, kept.slug), told)),
    }


def _revisions(chain: tuple[Kept, ...], told: set[str]) -> Iterator[dict[str, Any]]:
    for kept in chain:
        plain = {name: getattr(kept, name) for name in ("number", "sha256", "at", "status")}
        yield plain | {"shown": kept.sha256 in told}
