"""What is told of a plan beside its counts: its yarn, the label of the piece, and its safety."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from counterpane.craft.constructions import Plan
from counterpane.craft.yarn import YarnEstimate
from counterpane.craft.yarn.needles import NeedleAdvice
from counterpane.library.plans.known import Known
from counterpane.library.plans.plan_labels import for_with_yarn, label_of_plan
from counterpane.library.safety.safety import safety_of_plan
from counterpane.library.yarn.yarn_told import needles_of_plan, told_yarn


@dataclass(frozen=True, slots=True)
class Told:
    """The yarn, the needles, the label and the safety record of a plan; yarn and label are None without a yarn."""

    yarn: YarnEstimate | None
    needles: NeedleAdvice
    label: Mapping[str, Any] | None
    safety: Mapping[str, Any]


def told_of(plan: Plan, content: Mapping[str, Any], known: Known) -> Told:
    """Work out what is told of the plan of a request; the safety rules hear of its fibres and of how it is washed."""
    yarn = told_yarn(plan, content.get("yarn"), known.vocabulary, known.facts)
    needles = needles_of_plan(plan, known.vocabulary, known.facts, yarn)
    label = label_of_plan(content, yarn, known.facts)
    return Told(yarn, needles, label, safety_of_plan(plan, for_with_yarn(content, label), yarn, known.find_profile))
