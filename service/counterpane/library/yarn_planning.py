"""Plans that begin with yarn: the largest blanket of what is at hand."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from counterpane.craft.constructions import Plan
from counterpane.craft.stitches import Vocabulary
from counterpane.library.plans import Find, make_plan, plan_json, plan_request_of, sampler_of
from counterpane.library.safety import safety_of_plan
from counterpane.library.yarn_largest import keep_of, largest_json, largest_of
from counterpane.library.yarns import yarn_of_plan

Content = Mapping[str, Any]
LARGEST = ("have", "keep")
"""Members of a request for the largest blanket that a plan request does not have."""


def plan_largest(content: Content, find: Find, vocabulary: Vocabulary) -> dict[str, Any]:
    """Return the largest blanket of the yarn at hand as JSON values, with its whole plan.

    Raises what planning raises, BadInput for yarn that cannot be reckoned, CannotBePlanned where it does for no size.
    """
    request = _without(content, LARGEST)
    plan = make_plan(plan_request_of(request, find, vocabulary), vocabulary)
    found = largest_of(plan, request.get("yarn"), content["have"], keep_of(content.get("keep")), vocabulary)
    proved = make_plan(found.plan.request, vocabulary)
    return largest_json(found, request.get("yarn"), vocabulary) | {"plan": _answer(proved, request, vocabulary)}


def _without(content: Content, names: tuple[str, ...]) -> dict[str, Any]:
    return {name: value for name, value in content.items() if name not in names}


def _answer(plan: Plan, request: Content, vocabulary: Vocabulary) -> dict[str, Any]:
    safety = safety_of_plan(plan, request.get("for"))
    yarn = yarn_of_plan(plan, request.get("yarn"), vocabulary)
    return plan_json(plan, safety, sampler_of(plan, vocabulary), yarn)
