"""Plans and patterns over the components of a library."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from typing import Any

from counterpane.craft.component import Component
from counterpane.craft.constructions import CannotBePlanned, Plan
from counterpane.craft.constructions.swatching import swatches as swatches_of
from counterpane.craft.findings import Finding
from counterpane.craft.pattern import Pattern
from counterpane.craft.pattern.units import pattern_in_units
from counterpane.craft.rules.standing import RULES
from counterpane.library.parts import components
from counterpane.library.patterns.patterns import write_pattern
from counterpane.library.plans import sizes
from counterpane.library.plans.known import Known
from counterpane.library.plans.plan_behaviour import behaviour_of_plan, tex_of
from counterpane.library.plans.plan_labels import aftercare
from counterpane.library.plans.plan_swatches import no_swatch_json, swatch_json
from counterpane.library.plans.plan_time import time_json
from counterpane.library.plans.plan_told import Told, told_of
from counterpane.library.plans.plans import Find, make_plan, plan_json, plan_request_of, sampler_of
from counterpane.library.review import standing
from counterpane.library.review.licences import refuse_too_free, sharing_json
from counterpane.library.services import Services
from counterpane.library.values import BadInput
from counterpane.library.yarn.yarn_told import needles_json

Heard = dict[str, tuple[Finding, ...]]
"""What is to be said of where each part stands that was found, by its slug."""

BESIDE_THE_PLAN = ("terms", "words", "title", "as", "paper", "units", "sheet")
"""Members of a pattern request that say how to write and not what to plan."""


def plan(services: Services, content: Mapping[str, Any]) -> dict[str, Any]:
    """Return the plan of a request as JSON values; raise CannotBePlanned, and BadInput for a value of no sense."""
    worked_out = made(services, content)
    return answer_of(worked_out, content, services.known)


def answer_of(plan: Plan, content: Mapping[str, Any], known: Known) -> dict[str, Any]:
    """Return a plan as JSON values, with what its request makes known of safety, yarn, behaviour and size."""
    told = told_of(plan, content, known)
    answer = plan_json(plan, told.safety, sampler_of(plan, known.vocabulary), told.yarn)
    found = swatches_of(plan, known.vocabulary)
    pieces = {
        "swatches": [swatch_json(swatch) for swatch in found.made],
        "no_swatch": [no_swatch_json(missing) for missing in found.missing],
    }
    behaviour = behaviour_of_plan(plan, known.vocabulary, tex_of(told.yarn))
    needles = needles_json(told.needles, known.facts)
    time = time_json(plan, content.get("pace"), known.vocabulary)
    fabric = {"label": told.label, "behaviour": behaviour, **pieces, "needles": needles, "time": time}
    sharing = {"sharing": sharing_json(plan, content.get("licence"), known.sources)}
    return answer | fabric | sharing | sizes.told(known.facts, content, plan)


def made(services: Services, content: Mapping[str, Any]) -> Plan:
    """Return the plan of a request or a recipe, with each part at the revision that is pinned, else at the latest."""
    heard: Heard = {}
    return made_of(content, finder(services, content, heard), services.known, heard)


def made_of(content: Mapping[str, Any], find: Find, known: Known, heard: Heard) -> Plan:
    """Return the plan of a request over what `find` finds, with what is `heard` on the way of where parts stand.

    Raises what planning raises, and LicenceRefused for a licence that a part does not allow.
    """
    request = plan_request_of(sizes.sized(content, known.facts), find, known.vocabulary)
    plan = make_plan(request, known.vocabulary)
    refuse_too_free(plan, content.get("licence"))
    return with_heard(plan, heard)


def with_heard(plan: Plan, heard: Heard) -> Plan:
    """Return a plan with what was heard of where its parts stand."""
    said = tuple(finding for findings in heard.values() for finding in findings)
    return replace(plan, findings=(*plan.findings, *said)) if said else plan


def planned_part(content: Mapping[str, Any]) -> dict[str, Any]:
    """Return what a pattern request asks to be planned, without how it is to be written."""
    return {name: value for name, value in content.items() if name not in BESIDE_THE_PLAN}


def pattern_of(plan: Plan, content: Mapping[str, Any], known: Known) -> Pattern:
    """Write a plan with the terms, units, title, yarn and child of its request."""
    return pattern_told(plan, content, known, told_of(plan, content, known))


def pattern_told(plan: Plan, content: Mapping[str, Any], known: Known, told: Told) -> Pattern:
    """Write a plan of which it is worked out already what is told beside its counts."""
    written = write_pattern(
        plan,
        known.vocabulary,
        content.get("terms") or "us",
        content.get("title"),
        told.safety,
        yarn=told.yarn,
        needles=told.needles,
        sampler=sampler_of(plan, known.vocabulary),
        swatches=swatches_of(plan, known.vocabulary),
        sources=known.sources,
        after=aftercare(content, told.yarn, known.facts),
        designer=content.get("designer"),
        words=content.get("words") or "short",
    )
    return pattern_in_units(written, content.get("units") or "both")


def finder(services: Services, content: Mapping[str, Any], heard: Heard | None = None) -> Callable[[str], Component]:
    """Return how a part's component is found by its slug; a request pins one revision of a component at most.

    What finds one raises CannotBePlanned where it stands in the way, and else puts into `heard` what is to be said of
    where it stands.
    """
    pins = pins_of(content)
    places = {part["component"]: pointer for pointer, part in reversed(list(parts_of(content)))}

    def find(slug: str) -> Component:
        placed = standing.placed_part(services, places.get(slug, "/parts"), slug, pins)
        said = tuple(found for rule in RULES for found in rule.check(placed)) if placed else ()
        if any(finding.severity == "error" for finding in said):
            raise CannotBePlanned(said)
        if heard is not None:
            heard[slug] = said
        return components.find(services, slug, pins.get(slug))

    return find


def pins_of(content: Mapping[str, Any]) -> dict[str, str]:
    """Return the hash to which each component is pinned; raise BadInput where one is pinned to two."""
    pins: dict[str, str] = {}
    for pointer, part in parts_of(content):
        pinned = part.get("revision")
        if pinned and pins.setdefault(part["component"], pinned) != pinned:
            message = f"{part['component']!r} is pinned to two revisions."
            raise BadInput(f"{pointer}/revision", message, "Pin a component to one revision in all its places.")
    return pins


def parts_of(content: Mapping[str, Any]) -> Iterator[tuple[str, Mapping[str, Any]]]:
    """Give each part that names a component, with its pointer; a slug alone as an object."""
    for name, part in content["parts"].items():
        bands = isinstance(part, list)
        for place, each in enumerate(part if bands else (part,)):
            pointer = f"/parts/{name}/{place}" if bands else f"/parts/{name}"
            if isinstance(each, str):
                yield pointer, {"component": each}
            elif isinstance(each, Mapping) and "component" in each:
                yield pointer, each
