"""One sheet of counts for a class, over HTTP."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.operations import Answer, Call, operation
from counterpane.api.sending import as_json
from counterpane.library.plans.bench import bench_of
from counterpane.library.plans.class_counts import plan_class
from counterpane_schema.class_counts import ClassAnswer, ClassRequest


@operation(
    "POST",
    "/v1/class-sheets",
    tag="plans",
    answer=ClassAnswer,
    body=ClassRequest,
    problems=("not-usable",),
    examples=examples.CLASS,
)
def count_class(call: Call) -> Answer:
    """Work out a recipe for a class.

    One recipe in one size at up to ten gauges: cast-on, rows of each part, finished size and yarn for each knitter. One
    who has no plan has null counts, the findings that say why, and the nearest size where one is named. Nothing is
    stored, labels neither.
    """
    return as_json(plan_class(call.body, bench_of(call.services, call.body)))
