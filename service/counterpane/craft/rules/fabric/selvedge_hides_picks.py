"""A long edge that offers fewer places than a picked-up border needs."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.constructions import PickedEdge
from counterpane.craft.constructions.amending import amended
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.making import attempt as made_of
from counterpane.craft.findings import Correction, Finding, rule
from counterpane.craft.measures import half_up

OFFERS = {
    "chain": "a slipped selvedge shows one chain for two rows and hides the bars between",
    "ridge": "a garter edge offers one ridge for two rows",
    "row": "a plain edge offers one place each row",
}
"""What each sort of edge offers; common practice, no source."""


@rule(
    "selvedge-hides-picks",
    family="fabric",
    severity="warning",
    bad=(
        '{"construction": "sides-picked-up", "parts": {"body": "stocking-stitch", '
        '"sides": {"component": "garter-border", "rows": 20}, "selvedge": "slipped-selvedge"}, '
        '"gauge": [{"stitches": 22, "rows": 30, "over_cm": 10, "in": "stocking-stitch"}, '
        '{"stitches": 22, "rows": 44, "over_cm": 10, "in": "garter-border"}], '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"construction": "sides-picked-up", "parts": {"body": "stocking-stitch", '
        '"sides": {"component": "garter-border", "rows": 20}}, '
        '"gauge": [{"stitches": 22, "rows": 30, "over_cm": 10, "in": "stocking-stitch"}, '
        '{"stitches": 22, "rows": 44, "over_cm": 10, "in": "garter-border"}], '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def selvedge_hides_picks(attempt: Attempt) -> Iterator[Finding]:
    """A selvedge that hides what a picked-up border needs.

    A border of fewer stitches than the edge needs draws the edge in. A plain selvedge offers a place in every row; a
    slipped one shows a chain for two rows and hides the bars between, and a garter edge has a ridge for two rows.
    """
    if attempt.plan is None or not attempt.plan.picked:
        return
    edge = attempt.plan.picked[0]
    if not falls_short(edge):
        return
    hidden = next((each.place for each in edge.stretches if each.place == "chain"), None)
    short = next((each.place for each in edge.stretches if each.places < each.need), "row")
    yield Finding(
        "selvedge-hides-picks",
        "warning",
        f"The border needs {half_up(edge.need)} stitches along each long edge, and the edge offers {edge.places} "
        f"places: {OFFERS[hidden or short]}. {edge.picks} stitches draw the edge in.",
        "Pick up in both strands of each chain where more are needed, leave the selvedge out, or take a plain one."
        if hidden
        else "Pick up between the ridges too where more are needed, or take a border of fewer stitches to 10 cm.",
        pointer="/parts/selvedge" if hidden else "/parts/sides",
        changes=tuple(_left_out(attempt)) if hidden else (),
    )


def falls_short(edge: PickedEdge) -> bool:
    """Say whether an edge has fewer places than the stitches it needs."""
    return half_up(edge.need) > edge.places


def _left_out(attempt: Attempt) -> Iterator[Correction]:
    """Give the request without its selvedge, where its long edges then offer enough."""
    change = Correction("/parts/selvedge", None, "a plain edge offers a place in every row")
    plan = made_of(amended(attempt.request, change), attempt.vocabulary).plan
    if plan is not None and plan.picked and not falls_short(plan.picked[0]):
        yield change
