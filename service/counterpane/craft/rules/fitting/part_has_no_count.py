"""A part whose rows work over no number of stitches."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.obstacles import NoCount
from counterpane.craft.findings import Finding, rule


@rule(
    "part-has-no-count",
    family="fitting",
    severity="error",
    bad=(
        r'{"parts": {"body": {"text": "Row 1: *k4; rep from * to end.\nRow 2: *k2; rep from * to last st, k1."}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": {"text": "Rows 1 and 2: knit."}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def part_has_no_count(attempt: Attempt) -> Iterator[Finding]:
    """A part that works over no count.

    Its rows cannot be read, or no number of stitches goes through all of them.
    """
    for met in attempt.met(NoCount):
        message = "The rows of this part cannot be worked one after the other over any number of stitches."
        hint = "Check its rows by themselves: that names the row and the stitch."
        yield Finding("part-has-no-count", "error", message, hint, pointer=met.pointer)
