"""An end border that is much narrower than the body over the same stitches."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from counterpane.craft.behaviour.figures import Figure
from counterpane.craft.behaviour.places import Place, ends_of
from counterpane.craft.behaviour.take_up import take_up
from counterpane.craft.behaviour.widths import Ratios, ratios
from counterpane.craft.checking.wording import stitches
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.findings import Finding, rule
from counterpane.craft.measures import shown


@rule(
    "border-draws-in",
    family="fabric",
    severity="warning",
    source="common practice, no source; how much a seam eases is a house figure",
    bad=(
        '{"parts": {"body": "garter", "bottom": "rib-two-by-two-border", "top": "rib-two-by-two-border", '
        '"bind_off": "sewn-bind-off"}, '
        '"gauge": [{"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"},'
        ' {"stitches": 28, "rows": 30, "over_cm": 10, "in": "rib-two-by-two-border"}], '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": "garter"}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def border_draws_in(attempt: Attempt) -> Iterator[Finding]:
    """An end border that draws in.

    A rib is narrower than a flat body over the same stitches, so that the body spreads from it like a bell.
    """
    plan = attempt.plan
    places = () if plan is None else ends_of(plan, attempt.vocabulary)
    found = [(place, ratio) for place in places if (ratio := _drawn(place)) is not None]
    if found:
        yield _said([place for place, _ in found], *found[0])


EASES = Fraction(19, 20)
"""Width of a border against the body, over the same stitches, down to which the seam eases; house figure."""


def _drawn(place: Place) -> Ratios | None:
    """Return a border against the body where it is surely too narrow to be eased; None for another."""
    border, plan = place.border, place.plan
    ratio = ratios(plan.request, border, plan.request.body[place.band], place.vocabulary) if border else None
    if ratio is None or ratio.width is None or ratio.width.low is None:
        return None
    high = ratio.likely_width if ratio.swatched else ratio.width.high
    return ratio if high is not None and high < EASES else None


def _said(places: list[Place], first: Place, ratio: Ratios) -> Finding:
    names = " and ".join(place.end for place in places)
    guess = "" if ratio.swatched or ratio.width is None else f" ({ratio.width.source})"
    return Finding(
        "border-draws-in",
        "warning",
        f"The border ({names}) comes out {_times(ratio)} times as wide as the body over the same stitches{guess}: it "
        "draws in, and the body spreads from it like a bell.",
        f"{_more(first, ratio)}, or take a border that lies flat.",
        pointer=f"/parts/{first.end}",
    )


def _times(ratio: Ratios) -> str:
    width: Figure | None = ratio.width
    if ratio.swatched or width is None or width.low is None or width.high is None:
        return f"about {shown(ratio.likely_width, 2)}"
    return f"{shown(width.low, 2)} to {shown(width.high, 2)}"


def _more(place: Place, ratio: Ratios) -> str:
    found = take_up(place, ratio)
    if found is None or found.chosen is None:
        return "Swatch both, and work it over more stitches"
    change = "decrease them evenly where the body begins" if place.end == "bottom" else "increase them evenly before it"
    return f"Work it over about {stitches(-found.chosen)} more between the side borders and {change}"
