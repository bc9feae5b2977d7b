"""One recipe in several sizes, over HTTP."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.operations import Answer, Call, operation
from counterpane.api.sending import as_json
from counterpane.library.plans.bench import bench_of
from counterpane.library.plans.grading import plan_grade
from counterpane_schema.grade import GradeAnswer, GradeRequest


@operation(
    "POST",
    "/v1/grades",
    tag="plans",
    answer=GradeAnswer,
    body=GradeRequest,
    problems=("not-usable", "cannot-be-planned", "licence-refuses"),
    examples=examples.GRADE,
)
def grade(call: Call) -> Answer:
    """Grade a recipe into several sizes.

    Takes a plan request with `sizes` in place of its size. Every size is planned and proved, and all are written as one
    pattern whose counts stand in brackets: as data, with one count a size for each row, and as a text that is read back
    in every size before it is answered. Borders stay as they are, or keep their share of the size. Nothing is stored.
    """
    services = call.services
    return as_json(plan_grade(call.body, bench_of(services, call.body), services.grade_press))
