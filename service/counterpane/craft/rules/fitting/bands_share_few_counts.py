"""Bands of the body whose common counts lie far apart."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from counterpane.craft.constructions import Plan
from counterpane.craft.constructions.amending import working
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.fitting import options
from counterpane.craft.constructions.settling import Settled, settle
from counterpane.craft.constructions.sharing import MOST_BANDS, band_changes
from counterpane.craft.findings import Correction, Finding, rule
from counterpane.craft.measures import shown
from counterpane.craft.sizing.bands import FEW_COUNTS


@rule(
    "bands-share-few-counts",
    family="fitting",
    severity="warning",
    bad=(
        '{"parts": {"body": ["waffle", "basket-weave"]}, '
        '"gauge": [{"stitches": 22, "rows": 30, "over_cm": 10, "in": "waffle"},'
        ' {"stitches": 22, "rows": 30, "over_cm": 10, "in": "basket-weave"},'
        ' {"stitches": 22, "rows": 30, "over_cm": 10, "in": "garter"}], '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": {"component": "waffle", "rows": 247}}, '
        '"gauge": [{"stitches": 22, "rows": 30, "over_cm": 10, "in": "waffle"},'
        ' {"stitches": 22, "rows": 30, "over_cm": 10, "in": "basket-weave"},'
        ' {"stitches": 22, "rows": 30, "over_cm": 10, "in": "garter"}], '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def bands_share_few_counts(attempt: Attempt) -> Iterator[Finding]:
    """Bands that share few counts.

    Stacked bands are worked over one count. Where the counts that suit all of them lie far apart, the piece misses
    its width; a band whose side borders give way by a stitch or two brings it back.
    """
    plan = attempt.plan
    if plan is None or len(plan.request.body) < 2 or any(band.stitches for band in plan.request.body):
        return
    settled = settle(attempt.request, attempt.vocabulary)
    step = min(option.counts.of for option in options(settled))
    off = plan.nearest[0].error_cm
    if step > settled.target * FEW_COUNTS or abs(off) > plan.request.width_cm * OFF:
        changes = working(attempt, _changes(settled))
        yield Finding(
            "bands-share-few-counts",
            "warning",
            f"The bands share only every {step}th count: {_near(plan)}, for {shown(plan.request.width_cm)} cm.",
            f"Take one of these counts{', or let the side borders of one band give way' if changes else ''}.",
            pointer="/parts/body",
            changes=changes,
        )


OFF = Fraction(1, 50)
"""Share of the wanted width by which the nearest common count may miss it without a word; house figure."""


def _near(plan: Plan) -> str:
    return ", ".join(f"{near.cast_on} is {shown(near.width_cm)} cm" for near in plan.nearest[:2])


def _changes(settled: Settled) -> list[Correction]:
    """Return the changes of single bands, those that keep both sides alike first."""
    found: list[Correction] = []
    for index in range(min(len(settled.bands), MOST_BANDS)):
        found += list(band_changes(settled, index))[:1]
    return sorted(found, key=lambda change: "left" in change.why)
