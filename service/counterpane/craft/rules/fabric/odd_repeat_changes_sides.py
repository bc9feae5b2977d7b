"""An odd repeat whose rows say on which side they are worked."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.component import derive
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.settling import body_pointer
from counterpane.craft.findings import Finding, rule


@rule(
    "odd-repeat-changes-sides",
    family="fabric",
    severity="warning",
    bad=(
        r'{"parts": {"body": {"text": "Row 1 (RS): knit.\nRow 2 (WS): knit.\nRow 3 (RS): knit."}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        r'{"parts": {"body": {"text": "Row 1 (RS): knit.\nRow 2 (WS): knit."}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def odd_repeat_changes_sides(attempt: Attempt) -> Iterator[Finding]:
    """An odd repeat whose rows name their sides.

    Sides change row by row, so every second working of an odd repeat begins on the other side than its rows say.
    """
    plan = attempt.plan
    if plan is None:
        return
    for index, (band, count) in enumerate(zip(plan.request.body, plan.counts.body, strict=True)):
        version = derive(band.component, attempt.vocabulary).version_for(count)
        if version and version.row_repeat % 2 and any(row.side for row in version.rows):
            yield Finding(
                "odd-repeat-changes-sides",
                "warning",
                f"The repeat has {version.row_repeat} rows, so that its row 1 falls on RS and WS rows by turns, and "
                "its rows say on which side they are worked.",
                f"Write it twice, {2 * version.row_repeat} rows, the second half as it is worked from the other side.",
                pointer=body_pointer(plan.request, index),
            )
