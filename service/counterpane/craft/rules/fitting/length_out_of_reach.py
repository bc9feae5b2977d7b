"""A length that the borders alone go beyond."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.constructions.amending import size_change, working
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.obstacles import LengthOutOfReach
from counterpane.craft.findings import Finding, rule
from counterpane.craft.measures import shown


@rule(
    "length-out-of-reach",
    family="fitting",
    severity="error",
    bad=(
        '{"parts": {"body": "garter"}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 4}}'
    ),
    good=(
        '{"parts": {"body": "garter"}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def length_out_of_reach(attempt: Attempt) -> Iterator[Finding]:
    """A length that the borders alone go beyond.

    Between the borders lies at least one repeat of the body.
    """
    for met in attempt.met(LengthOutOfReach):
        why = f"the borders and the smallest body are {shown(met.length_cm)} cm long"
        changes = (size_change(attempt.request, "length", met.length_cm, why),)
        yield Finding(
            "length-out-of-reach",
            "error",
            f"{met.border_rows} border rows and the smallest body are {shown(met.length_cm)} cm long: "
            f"{shown(met.wanted_cm)} cm cannot be reached.",
            "Change the length, or take fewer border rows.",
            pointer="/size",
            changes=working(attempt, changes),
        )
