"""A left side that does not match its right side."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.obstacles import LeftDiffers
from counterpane.craft.findings import Finding, rule


@rule(
    "left-side-differs",
    family="fitting",
    severity="error",
    bad=(
        '{"parts": {"body": "garter", "sides": {"component": "garter-border", "left": "Rows 1 and 2: k5."}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": "garter", "sides": {"component": "garter-border", "left": "Rows 1 and 2: k6."}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def left_side_differs(attempt: Attempt) -> Iterator[Finding]:
    """A left side that does not go with the right one.

    Both sides are worked in the same rows, over their own stitches.
    """
    for met in attempt.met(LeftDiffers):
        message = f"The left side does not go with the right one: {met.why}."
        hint = "Give the left side as many rows as the right one, over the stitches of the border, or leave it out."
        yield Finding("left-side-differs", "error", message, hint, pointer=f"{met.pointer}/left")
