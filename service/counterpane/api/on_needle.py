"""What should be on the needle after a row over HTTP."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.operations import Answer, Call, operation
from counterpane.api.sending import as_json
from counterpane.library.knitting.on_needle import at_row
from counterpane.library.plans.bench import bench_of
from counterpane_schema.on_needle import OnNeedleAnswer, OnNeedleRequest


@operation(
    "POST",
    "/v1/plans/row",
    tag="plans",
    answer=OnNeedleAnswer,
    body=OnNeedleRequest,
    problems=("not-usable", "cannot-be-planned", "licence-refuses"),
    examples=examples.ON_NEEDLE,
)
def on_needle(call: Call) -> Answer:
    """Tell what should be on the needle after a row, and where a count went wrong.

    Takes the plan request that the piece was begun by, the row that was just worked and, where it is off, what was
    counted. Each suspect is worked on through the rows since: it leaves the count that was told. Nothing is stored.
    """
    return as_json(at_row(call.body, bench_of(call.services, call.body)))
