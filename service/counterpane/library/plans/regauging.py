"""A recipe at another gauge: the same size from other counts, and the same counts at another size.

The change of shape says what the same counts do: width over length, before and after.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import Any

from counterpane.craft.constructions import CannotBePlanned, Plan, PlanRequest
from counterpane.craft.constructions.gauging import body_gauge
from counterpane.craft.constructions.making import remeasured
from counterpane.craft.measures import half_up
from counterpane.craft.sizing.swatch import change_of_shape
from counterpane.library.plans.bench import Bench
from counterpane.library.plans.plan_answers import counts_json, finding_json, finished_json, tenths
from counterpane.library.plans.plan_requests import regauged

Answer = dict[str, Any]


def plan_regauge(content: Mapping[str, Any], bench: Bench) -> Answer:
    """Return a plan request at the gauge `to`: what it is, the same size, the same counts, and the change of shape.

    Raises what planning raises where the request makes no plan at its own gauge.
    """
    plan = bench.made({name: value for name, value in content.items() if name != "to"})
    asked = regauged(plan.request, content["to"], "/to", bench.find, bench.vocabulary)
    same_counts = remeasured(plan, asked.gauges, bench.vocabulary)
    return {
        "before": _told(plan),
        "same_size": _same_size(asked, bench),
        "same_counts": _told(same_counts),
        "shape": _shape(plan, same_counts),
    }


def _same_size(asked: PlanRequest, bench: Bench) -> Answer:
    """Return the plan of the same size, every count and every row anew; null figures where there is none."""
    try:
        made = bench.plan(asked)
    except CannotBePlanned as refusal:
        nothing = dict.fromkeys(("counts", "finished", "sections"))
        return nothing | {"findings": [finding_json(finding) for finding in refusal.findings]}
    return _told(made) | {"findings": [finding_json(finding) for finding in made.findings]}


def _told(plan: Plan) -> Answer:
    sections = [
        {"name": section.name, "rows": section.rows, "length_cm": tenths(section.cm_length)}
        for section in plan.every_section
    ]
    return {"counts": counts_json(plan), "finished": finished_json(plan), "sections": sections}


def _shape(before: Plan, after: Plan) -> Answer:
    """Return width over length before and after, and by how much the same counts are wider for their length.

    `body_percent` is that of the body's gauge alone, `percent` that of the whole piece.
    """
    one, other = (plan.width_cm / plan.length_cm for plan in (before, after))
    body = change_of_shape(body_gauge(before.request).gauge, body_gauge(after.request).gauge)
    return {
        "width_to_length": {"before": _hundredths(one), "after": _hundredths(other)},
        "percent": _percent(other / one),
        "body_percent": _percent(body),
    }


def _percent(factor: Fraction) -> float:
    return float(half_up(100 * (factor - 1), Fraction(1, 10)))


def _hundredths(value: Fraction) -> float:
    return float(half_up(value, Fraction(1, 100)))
