"""A part that does not come back to its count."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking.wording import stitches
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.obstacles import CountChanges
from counterpane.craft.findings import Finding, rule


@rule(
    "part-count-drifts",
    family="fitting",
    severity="error",
    bad=(
        r'{"parts": {"body": {"text": "Row 1 (RS): k1, yo, k to end.\nRow 2: knit."}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        r'{"parts": {"body": {"text": "Row 1 (RS): knit.\nRow 2: knit."}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def part_count_drifts(attempt: Attempt) -> Iterator[Finding]:
    """A part that gains or loses stitches.

    A straight piece keeps its count: each repeat of rows must give back the stitches it was given.
    """
    for met in attempt.met(CountChanges):
        message = f"One repeat of these rows {_change(met.by)}, and a straight piece keeps its count."
        hint = "Balance each increase with a decrease before the repeat ends."
        yield Finding("part-count-drifts", "error", message, hint, pointer=met.pointer)


def _change(by: int | None) -> str:
    if by is None:
        return "changes the count by more, the wider the piece is"
    return f"{'gains' if by > 0 else 'loses'} {stitches(abs(by))}"
