"""Where the parts of a blanket lie: they fill each section without a gap, at their own gauges."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise

import pytest

from counterpane.craft.component import Component
from counterpane.craft.constructions.making import attempt
from counterpane.craft.constructions.zones import zones
from counterpane.craft.stitches import Vocabulary
from counterpane.library.plans.plans import plan_request_of
from craft.constructions.asking import content, planned

Starters = Mapping[str, Component]
GAUGES = [
    {"stitches": 22, "rows": 30, "over_cm": 10, "in": "waffle"},
    {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter-border"},
]


@pytest.mark.parametrize("corner", ["ends", "sides"])
def test_the_parts_of_a_section_lie_side_by_side(starters: Starters, vocabulary: Vocabulary, corner: str) -> None:
    """Each begins where the one before it ends, and together they are as wide as the section."""
    plan = planned(starters, vocabulary, "waffle", gauge=GAUGES, corner=corner, selvedge="slipped-selvedge")
    found = zones(plan, vocabulary)
    for order, section in enumerate(plan.sections, start=1):
        across = [zone for zone in found if zone.order == order]
        assert all(one.left_cm + one.width_cm == other.left_cm for one, other in pairwise(across))
        assert section.cm_width == sum(zone.width_cm for zone in across)
        assert section.before == sum(zone.stitches for zone in across)


def test_sections_lie_on_one_another(starters: Starters, vocabulary: Vocabulary) -> None:
    """The body begins where the bottom border ends, and the top border ends at the length of the blanket."""
    plan = planned(starters, vocabulary, ["waffle", "basket-weave"], gauge=GAUGES)
    feet = {zone.order: zone.foot_cm for zone in zones(plan, vocabulary)}
    tops = {zone.order: zone.foot_cm + zone.length_cm for zone in zones(plan, vocabulary)}
    assert feet[1] == 0
    assert all(feet[order + 1] == tops[order] for order in range(1, 4))
    assert tops[4] == plan.length_cm


def test_a_wider_end_stands_out_on_both_sides(starters: Starters, vocabulary: Vocabulary) -> None:
    """Garter at 20 stitches is wider than a body at 22, and the body lies in the middle of it."""
    plan = planned(starters, vocabulary, "waffle", gauge=GAUGES, sides=None)
    bottom, body, top = zones(plan, vocabulary)
    assert bottom.left_cm == top.left_cm == 0
    assert body.left_cm == (bottom.width_cm - body.width_cm) / 2 > 0


def test_picked_up_borders_lie_beside_a_middle_without_a_gap(starters: Starters, vocabulary: Vocabulary) -> None:
    """From edge to edge they fill the finished width, at every height."""
    request = content("waffle", gauge=GAUGES, sides={"component": "garter-border", "rows": 12})
    asked = plan_request_of({**request, "construction": "sides-picked-up"}, starters.__getitem__, vocabulary)
    plan = attempt(asked, vocabulary).plan
    assert plan is not None
    left, *middle, right = sorted(zones(plan, vocabulary), key=lambda zone: zone.left_cm)
    assert (left.left_cm, right.left_cm + right.width_cm) == (0, plan.width_cm)
    assert {left.left_cm + left.width_cm} == {zone.left_cm for zone in middle}
    assert {right.left_cm} == {zone.left_cm + zone.width_cm for zone in middle}
