"""Side borders whose rows are higher than those of the body."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from counterpane.craft.behaviour.places import band_name, band_section, the_band
from counterpane.craft.behaviour.widths import Ratios, ratios
from counterpane.craft.constructions import Plan
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.findings import Finding, rule
from counterpane.craft.measures import shown


@rule(
    "side-border-waves",
    family="fabric",
    severity="warning",
    source="common practice, no source; the limit is a house figure",
    bad=(
        '{"parts": {"body": "garter", "sides": "seed-stitch-border"}, '
        '"gauge": [{"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"},'
        ' {"stitches": 20, "rows": 34, "over_cm": 10, "in": "seed-stitch-border"}], '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": "garter", "sides": "seed-stitch-border"}, '
        '"gauge": [{"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"},'
        ' {"stitches": 20, "rows": 40, "over_cm": 10, "in": "seed-stitch-border"}], '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def side_border_waves(attempt: Attempt) -> Iterator[Finding]:
    """Side borders whose rows are higher than those of the body.

    Worked row for row such a border is longer than the body beside it, so that its edge waves; rows cannot be left
    out of it while it is worked with the body.
    """
    plan = attempt.plan
    if plan is None or plan.request.sides is None:
        return
    for band, part in enumerate(plan.request.body):
        found = ratios(plan.request, plan.request.sides, part, attempt.vocabulary)
        if found is not None and _surely_longer(found):
            yield _said(plan, band, found)


MOST = Fraction(20, 21)
"""Rows of the border to one of the body from which the difference does not show; house figure."""


def _surely_longer(found: Ratios) -> bool:
    if found.rows is None:
        return False
    most = found.likely_rows if found.swatched else found.rows.high
    return most is not None and most < MOST


def _said(plan: Plan, band: int, found: Ratios) -> Finding:
    body, long = the_band(band_name(plan.request, band)), band_section(plan, band).cm_length
    rows = _ends(found)
    guess = "" if found.swatched or found.rows is None else f" ({found.rows.source})"
    longer = [shown(long * (1 / each - 1)) for each in rows[::-1]]
    return Finding(
        "side-border-waves",
        "warning",
        f"The side borders take about {' to '.join(shown(each, 2) for each in rows)} rows to one of {body}{guess}: "
        f"worked row for row they are about {' to '.join(longer)} cm longer along it, and their edge waves.",
        "Take side borders of the body's own texture or with lower rows, such as garter, or pick them up afterwards.",
        pointer="/parts/sides",
    )


def _ends(found: Ratios) -> tuple[Fraction, ...]:
    rows = found.rows
    if found.swatched or rows is None or rows.low is None or rows.high is None:
        return (found.likely_rows,)
    return rows.low, rows.high
