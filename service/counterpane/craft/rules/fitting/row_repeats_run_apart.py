"""Row repeats side by side that come together too late."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.heights import MOST_ROWS_IN_REPEAT
from counterpane.craft.constructions.obstacles import RepeatsRunApart
from counterpane.craft.findings import Finding, rule


@rule(
    "row-repeats-run-apart",
    family="fitting",
    severity="error",
    bad=(
        '{"parts": {"body": {"text": "Rows 1-47: knit."}, "sides": {"text": "Rows 1-43: k6."}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": {"text": "Rows 1-2: knit."}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def row_repeats_run_apart(attempt: Attempt) -> Iterator[Finding]:
    """Row repeats that hardly ever meet.

    Parts side by side begin their repeats together only after the least common multiple of their rows; a pattern of
    thousands of rows cannot be followed.
    """
    for met in attempt.met(RepeatsRunApart):
        message = f"The repeats of rows side by side come together only after {met.rows:,} rows."
        hint = f"Choose parts whose repeats meet within {MOST_ROWS_IN_REPEAT:,} rows."
        yield Finding("row-repeats-run-apart", "error", message, hint, pointer=met.pointer)
