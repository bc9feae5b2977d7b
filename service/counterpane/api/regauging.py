"""A recipe at another gauge, over HTTP."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.operations import Answer, Call, operation
from counterpane.api.sending import as_json
from counterpane.library.plans.bench import bench_of
from counterpane.library.plans.regauging import plan_regauge
from counterpane_schema.regauge import RegaugeAnswer, RegaugeRequest


@operation(
    "POST",
    "/v1/regauges",
    tag="gauges",
    answer=RegaugeAnswer,
    body=RegaugeRequest,
    problems=("not-usable", "cannot-be-planned", "licence-refuses"),
    examples=examples.REGAUGE,
)
def regauge(call: Call) -> Answer:
    """Take a recipe to another gauge.

    Answers with both ways: the same size, every count and every row anew, and the same counts, which come to another
    size and another shape. A same size that cannot be made has null figures, with findings that say why. Nothing is
    stored.
    """
    return as_json(plan_regauge(call.body, bench_of(call.services, call.body)))
