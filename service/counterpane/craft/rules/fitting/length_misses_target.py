"""Stated rows that do not make the wanted length."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.gauging import gauge_of
from counterpane.craft.findings import Finding, rule
from counterpane.craft.measures import half_up, shown


@rule(
    "length-misses-target",
    family="fitting",
    severity="warning",
    bad=(
        '{"parts": {"body": {"component": "garter", "rows": 100}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": {"component": "garter", "rows": 336}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def length_misses_target(attempt: Attempt) -> Iterator[Finding]:
    """Stated rows that miss the length.

    Where all parts say how many rows they have, the length follows from them and not from what is wanted.
    """
    plan = attempt.plan
    if plan is None or any(part.rows is None for part in plan.request.body):
        return
    off = plan.length_cm - plan.request.length_cm
    if abs(off) >= MISS_CM:
        gauge = gauge_of(plan.request, plan.request.body[-1], attempt.vocabulary).gauge
        rows = abs(int(half_up(off * gauge.rows_per_cm)))
        yield Finding(
            "length-misses-target",
            "warning",
            f"The rows stated make {shown(plan.length_cm)} cm, and {shown(plan.request.length_cm)} cm is wanted.",
            f"Work about {rows} rows {'fewer' if off > 0 else 'more'}, or leave the rows of one band open.",
            pointer="/size",
        )


MISS_CM = 1
"""Centimetres by which stated rows may miss the length without a word; house figure."""
