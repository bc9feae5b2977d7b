"""A width that no count comes near."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking.wording import stitches
from counterpane.craft.constructions.amending import size_change, working
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.obstacles import WidthOutOfReach
from counterpane.craft.findings import Finding, rule
from counterpane.craft.measures import shown


@rule(
    "width-out-of-reach",
    family="fitting",
    severity="error",
    bad=(
        '{"parts": {"body": "garter"}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 5, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": "garter"}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def width_out_of_reach(attempt: Attempt) -> Iterator[Finding]:
    """A width that no count comes near.

    The edges and one repeat of the body take a certain width at least, and a part of one fixed count has only that.
    """
    for met in attempt.met(WidthOutOfReach):
        why = f"{stitches(met.cast_on)} are {shown(met.width_cm)} cm wide"
        changes = (size_change(attempt.request, "width", met.width_cm, why),)
        yield Finding(
            "width-out-of-reach",
            "error",
            f"The nearest count is {stitches(met.cast_on)}, which are {shown(met.width_cm)} cm: "
            f"no count comes near {shown(met.wanted_cm)} cm.",
            "Change the width, or take parts over fewer or more stitches.",
            pointer="/size",
            changes=working(attempt, changes),
        )
