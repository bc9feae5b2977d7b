"""A piece of more stitches than are counted."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.obstacles import TooLarge
from counterpane.craft.findings import Finding, rule


@rule(
    "piece-too-large",
    family="fitting",
    severity="error",
    bad=(
        '{"parts": {"body": "garter"}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 100000000000000000, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": "garter"}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def piece_too_large(attempt: Attempt) -> Iterator[Finding]:
    """A piece beyond all measure.

    Counts of 19 digits and more are not answered; a blanket has thousands of stitches.
    """
    for met in attempt.met(TooLarge):
        message = f"The piece would have {met.stitches:,} stitches, and at most {met.most - 1:,} are counted."
        hint = "Check the unit of the width and the length, and the gauge."
        yield Finding("piece-too-large", "error", message, hint, pointer="/size")
