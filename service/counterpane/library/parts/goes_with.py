"""What goes with a component: the counts that another must share with it, and where the two meet.

One of the two is a body. A border at the ends, a cast-on and a bind-off run over the body and the stitches beside it,
so that their counts are those of the body and twice those; a selvedge, and a border of one single count that is worked
along an edge, stand beside a body of any count.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from counterpane.craft.component import Component, derive
from counterpane.craft.pairing import facts_of
from counterpane.library.parts import components
from counterpane.library.parts.matrix import BESIDE
from counterpane.library.parts.telling import MOST_COUNT, classes_of
from counterpane.library.parts.wanted import CountClass
from counterpane.library.services import Services

PLACES = {"border": "ends", "selvedge": "selvedge", "cast-on": "cast-on", "bind-off": "bind-off"}
USUAL = "border"
"""The kind that is meant with a body where none is named."""


@dataclass(frozen=True, slots=True)
class Beside:
    """What a component must go with: the kinds that can, the usual one of them, and the counts to share, None for any.

    `never` says why nothing goes with it.
    """

    slug: str
    kinds: tuple[str, ...]
    kind: str
    place: str | None
    meets: tuple[CountClass, ...] | None = None
    never: str = ""

    def shared(self, counts: tuple[CountClass, ...]) -> tuple[CountClass, ...]:
        """Return those of the counts at which the two meet."""
        if self.meets is None:
            return counts
        found = (each.common(other) for each in counts for other in self.meets)
        return tuple(dict.fromkeys(each for each in found if each is not None))

    def told(self, kind: str, shared: tuple[CountClass, ...]) -> dict[str, Any]:
        """Return what is told with a card of this kind."""
        place = self.place or PLACES[kind]
        least = min((each.residue if each.modulus == 0 else each.least for each in shared), default=None)
        return {"component": self.slug, "place": place, "stitches": None if self.meets is None else least}


def beside_of(services: Services, filters: Mapping[str, Any], between: tuple[int, int] | None) -> Beside:
    """Return what goes with the component that the filters name; raise NotFound."""
    component = components.find(services, filters["goes_with"])
    stitches = 2 * filters.get("beside", BESIDE)
    counts = classes_of(component, derive(component, services.vocabulary))
    if component.kind == "body":
        if filters.get("kind") == "selvedge":
            return Beside(component.slug, ("selvedge",), "selvedge", "selvedge")
        kinds = tuple(kind for kind in PLACES if kind != "selvedge")
        return Beside(component.slug, kinds, USUAL, None, _cut(counts, stitches, filters, between))
    place, never = _stands(component, services)
    meets = _cut(counts, -stitches, filters, between) if place not in ("sides", "selvedge") else None
    return Beside(component.slug, ("body",), "body", place, meets, never)


def _stands(component: Component, services: Services) -> tuple[str, str]:
    """Return where a part that is no body stands, and why it can stand nowhere, if so."""
    facts = facts_of(component, services.vocabulary)
    if component.kind == "selvedge":
        return "selvedge", facts.no_edge
    if component.kind == "border" and all(not each.of for each in facts.counts):
        return "sides", facts.no_edge
    return PLACES[component.kind], facts.stuck


def _cut(
    counts: tuple[CountClass, ...], by: int, filters: Mapping[str, Any], between: tuple[int, int] | None
) -> tuple[CountClass, ...]:
    """Return the counts moved by the stitches beside the body, and cut to those that are asked for besides."""
    low, high = between or (1, MOST_COUNT)
    if (admits := filters.get("admits")) is not None:
        low, high = max(low, admits), min(high, admits)
    cut = (each.shifted(by).between(low, high) for each in counts)
    return tuple(each for each in cut if each is not None)
