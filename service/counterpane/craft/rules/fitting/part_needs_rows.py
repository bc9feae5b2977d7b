"""A border that does not say how many rows it has."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.constructions.amending import working
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.obstacles import NeedsRows
from counterpane.craft.findings import Correction, Finding, rule


@rule(
    "part-needs-rows",
    family="fitting",
    severity="error",
    bad=(
        '{"parts": {"body": "garter", "bottom": {"text": "Rows 1 and 2: knit."}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": "garter", "bottom": {"text": "Rows 1 and 2: knit.", "rows": 12}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def part_needs_rows(attempt: Attempt) -> Iterator[Finding]:
    """A border of unknown height.

    A border in words, or of a texture that is no border, does not say how many rows of it are worked.
    """
    for met in attempt.met(NeedsRows):
        rows = max(1, USUAL_ROWS // met.period) * met.period
        changes = (Correction(met.pointer, rows, "whole repeats of its rows, about as high as usual"),)
        yield Finding(
            "part-needs-rows",
            "error",
            "This border does not say how many rows of it are worked.",
            f"Add “rows”, for example {rows}.",
            pointer=met.pointer,
            changes=working(attempt, changes),
        )


USUAL_ROWS = 12
"""Rows of a usual end border; common practice, no source."""
