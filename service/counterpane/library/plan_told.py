"""What is told of a plan beside its counts: its yarn, the label of the piece, and its safety."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from counterpane.craft.constructions import Plan
from counterpane.craft.yarn import YarnEstimate
from counterpane.library.known import Known
from counterpane.library.plan_labels import for_with_yarn, label_of_plan
from counterpane.library.safety import safety_of_plan
from counterpane.library.yarns import yarn_of_plan


@dataclass(frozen=True, slots=True)
class Told:
    """The yarn, the label and the safety record of a plan; yarn and label are None where no yarn is named."""

    yarn: YarnEstimate | None
    label: Mapping[str, Any] | None
    safety: Mapping[str, Any]


def told_of(plan: Plan, content: Mapping[str, Any], known: Known) -> Told:
    """Work out what is told of the plan of a request; the safety rules hear of its fibres and of how it is washed."""
    yarn = yarn_of_plan(plan, content.get("yarn"), known.vocabulary)
    label = label_of_plan(content, yarn, known.facts)
    return Told(yarn, label, safety_of_plan(plan, for_with_yarn(content, label), yarn, known.profiles))
