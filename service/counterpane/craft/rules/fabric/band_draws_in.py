"""A band of the body that is much narrower than the band beside it over the same stitches."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from counterpane.craft.behaviour.places import band_name
from counterpane.craft.behaviour.widths import Ratios, ratios
from counterpane.craft.constructions import PlanRequest
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.settling import body_pointer
from counterpane.craft.findings import Finding, rule
from counterpane.craft.measures import shown


@rule(
    "band-draws-in",
    family="fabric",
    severity="warning",
    source="common practice, no source; how much a seam eases is a house figure",
    bad=(
        '{"parts": {"body": [{"component": "garter", "rows": 40}, {"component": "rib-two-by-two", "rows": 40},'
        ' "garter"]}, '
        '"gauge": [{"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"},'
        ' {"stitches": 28, "rows": 40, "over_cm": 10, "in": "rib-two-by-two"}], '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": [{"component": "garter", "rows": 40}, {"component": "rib-two-by-two", "rows": 40},'
        ' "garter"]}, '
        '"gauge": [{"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"},'
        ' {"stitches": 20, "rows": 40, "over_cm": 10, "in": "rib-two-by-two"}], '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def band_draws_in(attempt: Attempt) -> Iterator[Finding]:
    """A band that draws in.

    Over the same stitches a rib or cables are narrower than a flat band, so that the piece has a waist there.
    """
    bands = () if attempt.plan is None else attempt.request.body
    told: set[int] = set()
    for band in range(1, len(bands)):
        for own, other in ((band - 1, band), (band, band - 1)):
            found = ratios(attempt.request, bands[own], bands[other], attempt.vocabulary)
            if found is not None and own not in told and _drawn(found):
                told.add(own)
                yield _said(attempt.request, own, other, found)


def _said(request: PlanRequest, own: int, other: int, found: Ratios) -> Finding:
    guess = "" if found.swatched or found.width is None else f" ({found.width.source})"
    return Finding(
        "band-draws-in",
        "warning",
        f"{band_name(request, own).capitalize()} comes out {_times(found)} times as wide as "
        f"{band_name(request, other)} over the same stitches{guess}: it draws the piece in.",
        "Take bands that are as wide over the same stitches, or change the count between them evenly in a plain row.",
        pointer=body_pointer(request, own),
    )


EASES = Fraction(19, 20)
"""Width of a band against the one beside it, over the same stitches, down to which the seam eases; house figure."""


def _drawn(found: Ratios) -> bool:
    if found.swatched:
        return found.likely_width < EASES
    return found.width is not None and found.width.high is not None and found.width.high < EASES


def _times(found: Ratios) -> str:
    width = found.width
    if found.swatched or width is None or width.low is None or width.high is None:
        return f"about {shown(found.likely_width, 2)}"
    return f"{shown(width.low, 2)} to {shown(width.high, 2)}"
