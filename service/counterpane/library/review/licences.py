"""Under which licence a plan's pattern may be shared, and what must be said of whose parts it uses."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from counterpane.craft.component import Component
from counterpane.craft.constructions import Plan
from counterpane.craft.licensing import LICENCES, Licensed, Use
from counterpane.craft.licensing.verdict import HERE, credit_line, sharing_line, verdict
from counterpane.craft.pattern.parts import components_of
from counterpane.craft.rules.licence import judge_licences
from counterpane.library.errors import LicenceRefused
from counterpane.library.plans.plan_answers import finding_json


def licensed_of(plan: Plan, wanted: str | None, sources: Mapping[str, str]) -> Licensed:
    """Return the kept parts of a plan with what their makers ask; rows sent in words are the sender's own.

    `sources` are the names of sources by slug.
    """
    kept = (component for component in components_of(plan) if component.slug)
    return Licensed(tuple(_use(component, sources) for component in kept), wanted)


def _use(component: Component, sources: Mapping[str, str]) -> Use:
    said = component.provenance
    maker = (said.author, said.licence, said.cited(sources), said.notice, said.address, said.changes)
    return Use(component.slug, component.name, *maker, pointer="/parts")


def licensed_in(content: Mapping[str, Any]) -> Licensed:
    """Return parts as they are written in the examples of rules: a title, a creator and a licence each."""
    uses = (Use("", part["title"], part["creator"], part["licence"], "") for part in content["parts"])
    return Licensed(tuple(uses), content.get("licence"))


def refuse_too_free(plan: Plan, wanted: str | None) -> None:
    """Raise LicenceRefused where the parts of a plan do not let it be shared as wanted."""
    if wanted is not None:
        errors = tuple(each for each in judge_licences(licensed_of(plan, wanted, {})) if each.severity == "error")
        if errors:
            raise LicenceRefused(errors[0].message, errors, errors[0].hint)


def sharing_json(plan: Plan, wanted: str | None, sources: Mapping[str, str]) -> dict[str, Any]:
    """Return the verdict on a plan as JSON values: `licence` null where it is not known, and a credit for each part."""
    licensed = licensed_of(plan, wanted, sources)
    found = verdict(licensed)
    return {
        "licence": wanted or (found.licence.spdx if found.licence else None),
        "may": [each.spdx for each in found.may],
        "because": [use.slug for use in found.because or found.unknown],
        "statement": sharing_line(found),
        "credits": [_credit(use) for use in licensed.uses],
        "findings": [finding_json(each) for each in judge_licences(licensed)],
    }


def _credit(use: Use) -> dict[str, Any]:
    known = LICENCES.get(use.licence)
    return {
        "component": use.slug,
        "title": use.title,
        "creator": use.creator,
        "notice": use.notice,
        "source": use.source,
        "address": use.address,
        "licence": use.licence,
        "licence_address": known.address if known else None,
        "changes": [*use.made, HERE],
        "text": credit_line(use),
    }
