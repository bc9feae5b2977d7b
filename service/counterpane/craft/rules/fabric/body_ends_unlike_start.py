"""A body whose top does not end as its bottom begins."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.component import derive
from counterpane.craft.constructions.amending import working
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.settling import body_pointer
from counterpane.craft.findings import Correction, Finding, rule

SHOWS = 2
"""Rows by which top and bottom must differ before the eye sees it; house figure."""


@rule(
    "body-ends-unlike-start",
    family="fabric",
    severity="note",
    bad=(
        '{"parts": {"body": "waffle"}, '
        '"gauge": [{"stitches": 22, "rows": 30, "over_cm": 10, "in": "waffle"},'
        ' {"stitches": 22, "rows": 30, "over_cm": 10, "in": "garter"}], '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": {"component": "waffle", "rows": 247}}, '
        '"gauge": [{"stitches": 22, "rows": 30, "over_cm": 10, "in": "waffle"},'
        ' {"stitches": 22, "rows": 30, "over_cm": 10, "in": "garter"}], '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def body_ends_unlike_start(attempt: Attempt) -> Iterator[Finding]:
    """A body that does not end as it begins.

    Whole repeats are right for the count of the rows and may still leave the texture cut off at the top: a basket that
    begins with a row of blocks ends with the other one. A few rows more make both ends alike.
    """
    plan = attempt.plan
    if plan is None or len(plan.request.body) > 1:
        return
    version = derive(plan.request.body[0].component, attempt.vocabulary).version_for(plan.counts.body[0])
    closing = version.layout.closing_rows if version is not None and version.layout is not None else None
    rows = next(section.rows for section in plan.sections if section.name.startswith("body"))
    if version is None or closing is None or closing < SHOWS or (rows - closing) % version.row_repeat == 0:
        return
    more = (closing - rows) % version.row_repeat
    pointer = body_pointer(plan.request, 0)
    near = sorted((rows + more, rows + more - version.row_repeat), key=lambda number: abs(number - rows))
    tried = [Correction(f"{pointer}/rows", number, "the top then ends as the bottom begins") for number in near]
    yield Finding(
        "body-ends-unlike-start",
        "note",
        f"After {rows} rows the top of the body does not end as its bottom begins.",
        f"Work {near[0]} or {near[1]} rows of it, or leave it as it is.",
        pointer=pointer,
        changes=working(attempt, tried),
    )
