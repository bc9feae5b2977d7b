"""Swatches of a plan, over HTTP."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.operations import Answer, Call, operation
from counterpane.api.sending import as_json
from counterpane.library.plans.bench import bench_of
from counterpane.library.plans.swatches import write_swatches as write_swatches_of
from counterpane_schema.swatch import SwatchAnswer, SwatchRequest


@operation(
    "POST",
    "/v1/swatches",
    tag="gauges",
    answer=SwatchAnswer,
    body=SwatchRequest,
    problems=("not-usable", "cannot-be-planned", "licence-refuses"),
    examples=examples.SWATCH,
)
def write_swatches(call: Call) -> Answer:
    """Write the swatches of a plan.

    One of each fabric: what to cast on for at least 15 cm of whole repeats with the edges of the blanket, its rows as a
    text of their own, and what to do with it: weigh, count, wash, count again, hang, try with a rod, stretch. Nothing
    is stored.
    """
    return as_json(write_swatches_of(call.body, bench_of(call.services, call.body)))
