"""The parts of a plan by name: what they are called on paper, in the terms of the reader."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from counterpane.craft.component import Component
from counterpane.craft.constructions import Part, Plan, PlanRequest, Section
from counterpane.craft.pattern.terms import in_terms
from counterpane.craft.stitches import Terms

_SECTIONS: Mapping[str, str] = {"bottom": "Bottom border", "body": "Body", "top": "Top border"}
_PAIR = re.compile(r"(?P<us>[^()]*? stitch)(?P<more>[^()]*) \(UK (?P<uk>[^()]+)\)")
"""A name that is another stitch elsewhere, as the library keeps it: "Seed stitch border (UK moss stitch)"."""

IN_WORDS = "Rows as given"
"""What a part is called that was given in words and has no name."""


def parts_of(request: PlanRequest) -> Iterator[Part]:
    """Yield the parts of a request in the order in which they are met: from cast-on to bind-off."""
    chosen = (
        request.cast_on,
        request.bottom,
        request.selvedge,
        request.sides,
        *request.body,
        request.top,
        request.picked,
    )
    yield from (part for part in (*chosen, request.bind_off) if part is not None)


def components_of(plan: Plan) -> tuple[Component, ...]:
    """Return the components of a plan, each once, in the order in which they are met."""
    return tuple(dict.fromkeys(part.component for part in parts_of(plan.request)))


def called(component: Component, terms: Terms) -> str:
    """Return the name of a component in the terms, with its other names where they may be another stitch elsewhere."""
    pair = _PAIR.fullmatch(component.name)
    if pair and terms == "uk":
        here, there = pair["uk"], pair["us"]
        return f"{here[0].upper()}{here[1:]}{pair['more']} (US {there[0].lower()}{there[1:]})"
    return in_terms(component.name, terms) or IN_WORDS


def texture_name(plan: Plan, slug: str, terms: Terms) -> str:
    """Return the name of the component of this slug, or the slug with spaces where the plan holds no such part."""
    for component in components_of(plan):
        if component.slug == slug and slug:
            return called(component, terms)
    return slug.replace("-", " ") or IN_WORDS


def section_name(section: Section) -> str:
    """Return the heading of a section."""
    known = _SECTIONS.get(section.name)
    return known or section.name[:1].upper() + section.name[1:].replace("_", " ")
