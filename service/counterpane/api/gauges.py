"""Swatches as they were counted, over HTTP."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.operations import Answer, Call, operation
from counterpane.api.sending import as_json
from counterpane.library.plans import gauges
from counterpane_schema.gauge import GaugeAnswer, GaugeRequest


@operation(
    "POST",
    "/v1/gauges",
    tag="gauges",
    answer=GaugeAnswer,
    body=GaugeRequest,
    problems=("not-usable",),
    examples=examples.GAUGE,
)
def read_gauge(call: Call) -> Answer:
    """Read swatches.

    Takes what was counted over each swatch's window, after the wash and if known before it, and answers with the gauge
    of each texture, what the wash did, how far several swatches are apart, and by how much a size may be off through
    the reading alone. `gauge` of each goes into a plan request as it is. Nothing is stored.
    """
    return as_json(gauges.read(call.body, call.services.facts))
