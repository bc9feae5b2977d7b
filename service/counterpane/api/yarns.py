"""Yarn over HTTP: the largest blanket of what is at hand, a piece in the middle, one yarn in place of another."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.operations import Answer, Call, operation
from counterpane.api.sending import as_json
from counterpane.library.plans.bench import bench_of
from counterpane.library.yarn import yarn_planning
from counterpane.library.yarn.yarn_substitutes import substitute
from counterpane_schema.largest import LargestAnswer, LargestRequest
from counterpane_schema.midway import MidwayAnswer, MidwayRequest
from counterpane_schema.yarn import SubstitutionAnswer, SubstitutionRequest


@operation(
    "POST",
    "/v1/plans/largest",
    tag="plans",
    answer=LargestAnswer,
    body=LargestRequest,
    problems=("not-usable", "cannot-be-planned", "licence-refuses"),
    examples=examples.LARGEST,
)
def plan_largest(call: Call) -> Answer:
    """Plan the largest blanket of the yarn at hand.

    Takes a plan request with its yarn and what there is of it. The size tells the shape to keep, or with `keep` "width"
    the width. Enough yarn covers the likely amount with its margin and the high end of the estimate; what the likely
    amount alone would make stands under `without_margin`. Nothing is stored.
    """
    return as_json(yarn_planning.plan_largest(call.body, bench_of(call.services, call.body)))


@operation(
    "POST",
    "/v1/plans/midway",
    tag="plans",
    answer=MidwayAnswer,
    body=MidwayRequest,
    problems=("not-usable", "cannot-be-planned", "licence-refuses"),
    examples=examples.MIDWAY,
)
def plan_midway(call: Call) -> Answer:
    """Plan again from the middle of a piece.

    Takes the plan request that it was begun by, the rows that are done, and what was weighed and measured. Tells the
    rows that the yarn still does for, the mass at which to start what follows the body, and the plan at the gauge that
    came out, with the cast-on kept. Nothing is stored.
    """
    return as_json(yarn_planning.plan_midway(call.body, bench_of(call.services, call.body)))


@operation(
    "POST",
    "/v1/yarns/substitutes",
    tag="yarns",
    answer=SubstitutionAnswer,
    body=SubstitutionRequest,
    problems=("not-usable",),
    examples=examples.SUBSTITUTES,
)
def substitute_yarn(call: Call) -> Answer:
    """Compare one yarn with another in its place.

    Tells both by tex, metric and English number, metres to 100 g and class, how many strands of the second come nearest
    to the first, and what is needed of it in place of an amount of the first at the same gauge. Nothing is stored.
    """
    return as_json(substitute(call.body, call.services.known.facts))
