"""A border that stops where the count is another."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking.wording import either
from counterpane.craft.constructions.amending import working
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.obstacles import StopsMidRepeat
from counterpane.craft.findings import Correction, Finding, rule


@rule(
    "border-stops-mid-repeat",
    family="fitting",
    severity="error",
    bad=(
        '{"parts": {"body": "garter", "bottom": {"component": "fan", "rows": 9}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": "garter", "bottom": {"component": "garter-border", "rows": 10}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def border_stops_mid_repeat(attempt: Attempt) -> Iterator[Finding]:
    """A border that stops on another count.

    Some rows hold more stitches than others; what follows must begin with the count of the piece.
    """
    for met in attempt.met(StopsMidRepeat):
        changes = tuple(Correction(met.pointer, rows, "the count is then as at the beginning") for rows in met.nearest)
        more = met.after > met.before
        yield Finding(
            "border-stops-mid-repeat",
            "error",
            f"After {met.rows} rows this part has {'more' if more else 'fewer'} stitches than it began with: "
            f"{met.before} have become {met.after}.",
            f"Stop after {either(met.nearest)} rows.",
            pointer=met.pointer,
            changes=working(attempt, changes),
        )
