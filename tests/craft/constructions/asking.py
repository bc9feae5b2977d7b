"""Plan requests in a few words, for tests of constructions."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from counterpane.craft.component import Component
from counterpane.craft.constructions import Plan, PlanRequest
from counterpane.craft.constructions.making import attempt
from counterpane.craft.stitches import Vocabulary
from counterpane.library.plans.plans import plan_request_of

Starters = Mapping[str, Component]

GAUGE: Mapping[str, Any] = {"stitches": 22, "rows": 30, "over_cm": 10}
"""An invented gauge."""


def content(body: object, width: object = 70, length: object = 90, **rest: object) -> dict[str, Any]:
    """Return the JSON of a request; what is named beside body and size is a part, the gauge or the corner."""
    gauge = rest.pop("gauge", GAUGE)
    corner = rest.pop("corner", "ends")
    size = {"width_cm": width, "length_cm": length}
    return {"parts": {"body": body, **rest}, "gauge": gauge, "size": size, "corner": corner}


def asked(starters: Starters, vocabulary: Vocabulary, body: object, *args: object, **rest: object) -> PlanRequest:
    """Return a request over the starters."""
    return plan_request_of(content(body, *args, **rest), starters.__getitem__, vocabulary)


def planned(starters: Starters, vocabulary: Vocabulary, body: object, *args: object, **rest: object) -> Plan:
    """Return the plan of a request, which must be possible."""
    plan = attempt(asked(starters, vocabulary, body, *args, **rest), vocabulary).plan
    assert plan is not None
    return plan
