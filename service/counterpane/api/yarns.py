"""Yarn over HTTP: the largest blanket of what is at hand."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.operations import Answer, Call, operation
from counterpane.api.sending import as_json
from counterpane.library import yarn_planning
from counterpane.library.planning import finder
from counterpane_schema.largest import LargestAnswer, LargestRequest


@operation(
    "POST",
    "/v1/plans/largest",
    tag="plans",
    answer=LargestAnswer,
    body=LargestRequest,
    problems=("not-usable", "cannot-be-planned"),
    examples=examples.LARGEST,
)
def plan_largest(call: Call) -> Answer:
    """Plan the largest blanket of the yarn at hand.

    Takes a plan request with its yarn and what there is of it. The size tells the shape to keep, or with `keep` "width"
    the width. Enough yarn covers the likely amount with its margin and the high end of the estimate; what the likely
    amount alone would make stands under `without_margin`. Nothing is stored.
    """
    find = finder(call.services, call.body)
    return as_json(yarn_planning.plan_largest(call.body, find, call.services.vocabulary))
