"""Plans over HTTP."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.operations import Answer, Call, operation
from counterpane.api.sending import as_json
from counterpane.library.plans import planning
from counterpane_schema.plan import PlanAnswer, PlanRequest


@operation(
    "POST",
    "/v1/plans",
    tag="plans",
    answer=PlanAnswer,
    body=PlanRequest,
    problems=("not-usable", "cannot-be-planned", "licence-refuses"),
    examples=examples.PLAN,
)
def plan(call: Call) -> Answer:
    """Work out a plan.

    Solves the stitch count nearest the width at the gauge, and the rows of each section; parts left out are the usual
    ones and are named in `recipe`. Where the parts share no count, the answer is a problem with the smallest changes
    that make them fit. Nothing is stored.
    """
    return as_json(planning.plan(call.services, call.body))
