"""What is looked at when something is submitted, at once and by the program; kept as data, and never a refusal.

A submission is read by people. What stands here is what they need not work out: whether the mathematics holds, what the
rules of wording say, what was told of a baby's safety and what was not, the licence, and what it is like.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import orjson

from counterpane.craft.checking import examine
from counterpane.craft.component import component_of, prove
from counterpane.craft.licensing import LICENCES
from counterpane.craft.rules import judge_text
from counterpane.library.keeping.pinning import request_of
from counterpane.library.parts.alike import alike
from counterpane.library.plans import planning
from counterpane.library.plans.plan_answers import finding_json as plan_finding_json
from counterpane.library.ports import Kept
from counterpane.library.services import Services
from counterpane.library.texts.checks import finding_json

NOT_KNOWN = "not known"
MOST_ALIKE = 20
MOST_FINDINGS = 100
"""Findings of the wording that are kept; house."""


def checks_of(services: Services, shelf: str, kept: Kept) -> dict[str, Any]:
    """Return what the program finds in a revision that is submitted."""
    return _of_component(services, kept) if shelf == "component" else _of_recipe(services, kept)


def _of_component(services: Services, kept: Kept) -> dict[str, Any]:
    content: Mapping[str, Any] = orjson.loads(services.store.object(kept.sha256))
    component = component_of(content)
    problems = [f"{each.pointer}: {each.message}" for each in prove(component, services.vocabulary)]
    notes = content.get("safety") or {}
    told = sorted(name for name, value in notes.items() if value not in (NOT_KNOWN, None))
    like = alike(services, kept.slug, limit=MOST_ALIKE)
    licence = component.provenance.licence
    return {
        "mathematics": {"holds": not problems, "problems": problems},
        "wording": _wording(services, [version.rows for version in component.versions]),
        "safety": {"told": told, "not_told": sorted(set(notes) - set(told))},
        "licence": {"name": licence, "known": licence in LICENCES},
        "alike": [{name: each[name] for name in ("slug", "percent", "how", "same", "said")} for each in like["items"]],
        "not_compared": like["not_compared"],
    }


def _wording(services: Services, texts: list[str]) -> list[dict[str, Any]]:
    found = [finding for text in texts for finding in judge_text(examine(text, services.vocabulary))]
    return [finding_json(each) for each in found[:MOST_FINDINGS]]


def _of_recipe(services: Services, kept: Kept) -> dict[str, Any]:
    request = request_of(kept)
    plan = planning.made(services, request)
    answer = planning.answer_of(plan, request, services.known)
    safety, licence = answer["safety"], answer["sharing"]["licence"]
    return {
        "mathematics": {"holds": True, "problems": []},
        "wording": [plan_finding_json(each) for each in plan.findings[:MOST_FINDINGS]],
        "safety": {"told": sorted(safety["assessed"]), "not_told": sorted(safety["not_assessed"])},
        "licence": {"name": licence or NOT_KNOWN, "known": licence is not None},
        "alike": [],
        "not_compared": 0,
    }
