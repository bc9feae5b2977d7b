"""The same counts at another gauge: against adding up part by part, and there and back again."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from counterpane.craft.component import Component
from counterpane.craft.constructions.one_piece import remeasured
from counterpane.craft.measures import Gauge
from counterpane.craft.stitches import Vocabulary
from craft.constructions.asking import planned

Starters = Mapping[str, Component]
COUNTS = st.fractions(min_value=8, max_value=50, max_denominator=4)

GAUGES = st.builds(Gauge, COUNTS, COUNTS)


@pytest.mark.parametrize("body", ["waffle", "garter", ["waffle", "basket-weave"]])
def test_a_plan_measured_by_its_own_gauges_is_itself(starters: Starters, vocabulary: Vocabulary, body: object) -> None:
    """But for the counts near it and what the rules said."""
    plan = planned(
        starters, vocabulary, body, selvedge="slipped-selvedge", bottom={"component": "garter-border", "rows": 12}
    )
    assert remeasured(plan, plan.request.gauges, vocabulary) == replace(plan, nearest=(), findings=())


@settings(max_examples=25, deadline=None)
@given(GAUGES, GAUGES)
def test_a_size_is_the_sum_of_its_parts_at_their_own_gauges(
    starters: Starters, vocabulary: Vocabulary, body: Gauge, edge: Gauge
) -> None:
    """Width and length are added up here by hand, and lead back to the first plan."""
    plan = planned(starters, vocabulary, "waffle")
    gauges = (replace(body, texture="waffle"), replace(edge, texture="garter-border"))
    other = remeasured(plan, gauges, vocabulary)
    counts, ends = plan.counts, sum(section.rows for section in plan.sections if section.name != "body")
    assert other.counts == counts
    assert other.width_cm == 10 * (counts.body[0] / body.stitches + 2 * counts.sides / edge.stitches)
    assert other.length_cm == 10 * (plan.sections[1].rows / body.rows + ends / edge.rows)
    back = remeasured(other, plan.request.gauges, vocabulary)
    assert (back.width_cm, back.length_cm, back.width_give) == (plan.width_cm, plan.length_cm, plan.width_give)
