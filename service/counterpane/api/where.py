"""Which row a piece is on over HTTP."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.operations import Answer, Call, operation
from counterpane.api.sending import as_json
from counterpane.library.knitting.where import where
from counterpane.library.plans.bench import bench_of
from counterpane_schema.where import WhereAnswer, WhereRequest


@operation(
    "POST",
    "/v1/plans/where",
    tag="plans",
    answer=WhereAnswer,
    body=WhereRequest,
    problems=("not-usable", "cannot-be-planned", "licence-refuses"),
    examples=examples.WHERE,
)
def which_row(call: Call) -> Answer:
    """Ask which row a piece is on, by what its fabric shows.

    Takes the plan request that the piece was begun by and what was answered so far, and returns the question that
    separates the rows that are left best, or those rows. Send the answers again with each further one: nothing is
    stored.
    """
    return as_json(where(call.body, bench_of(call.services, call.body)))
