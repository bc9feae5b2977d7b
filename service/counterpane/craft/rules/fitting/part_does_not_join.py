"""A part whose rows cannot be joined to others."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.obstacles import DoesNotJoin
from counterpane.craft.findings import Finding, rule


@rule(
    "part-does-not-join",
    family="fitting",
    severity="error",
    bad=(
        r'{"parts": {"body": {"text": "Row 1 (RS): k5, turn.\nRow 2: k5."}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        r'{"parts": {"body": {"text": "Row 1 (RS): knit.\nRow 2: knit."}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def part_does_not_join(attempt: Attempt) -> Iterator[Finding]:
    """A part that cannot stand beside others.

    The rows of a one-piece blanket go from edge to edge, side borders and all; short rows, rounds and markers do not.
    Nor do side borders that bind off right beside the body: a slit would be left there.
    """
    for met in attempt.met(DoesNotJoin):
        message = f"This part {met.why}, so its rows cannot be joined to those of the parts beside it."
        hint = "Write rows that go from end to end and come back to their beginning."
        yield Finding("part-does-not-join", "error", message, hint, pointer=met.pointer)
