"""Plans and yarns for the tests of this folder."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from counterpane.craft.component import Component
from counterpane.craft.constructions import Plan
from counterpane.craft.stitches import Vocabulary
from counterpane.library.plans.plans import make_plan, plan_request_of

Starters = Mapping[str, Component]
GAUGE = {"stitches": 22, "rows": 30, "over_cm": 10}


def planned(starters: Starters, vocabulary: Vocabulary, body: object, **more: Any) -> Plan:
    """Return the plan of a blanket of 60 by 80 cm, unless `size`, `gauge` or parts say otherwise."""
    size, gauge = more.pop("size", {"width_cm": 60, "length_cm": 80}), more.pop("gauge", GAUGE)
    content = {"parts": {"body": body, **more}, "gauge": gauge, "size": size}
    return make_plan(plan_request_of(content, starters.__getitem__, vocabulary), vocabulary)
