"""Blankets whose side borders are picked up along the finished middle."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from counterpane.craft.component import Component
from counterpane.craft.constructions import Plan
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.making import attempt, remeasured, sampler
from counterpane.craft.constructions.obstacles import NeedsRows, NotTaken, WrongKind
from counterpane.craft.measures import Gauge
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.trace import trace
from counterpane.craft.yarn import Yarn, estimate
from counterpane.craft.yarn.edges import bind_off_loops
from counterpane.craft.yarn.pace import hours
from counterpane.library.plans.plans import plan_request_of

Starters = Mapping[str, Component]

BODIES = ("garter", "stocking-stitch", "seed-stitch", "waffle", "basket-weave", "old-shale")
GAUGES = [
    {"stitches": 22, "rows": 30, "over_cm": 10},
    {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter-border"},
]
"""Invented gauges of a body and of garter."""


def tried(starters: Starters, vocabulary: Vocabulary, body: object, **parts: object) -> Attempt:
    """Work out a request for 70 by 90 cm with picked-up sides."""
    gauge = parts.pop("gauge", GAUGES)
    content: dict[str, Any] = {
        "construction": "sides-picked-up",
        "parts": {"body": body, **parts},
        "gauge": gauge,
        "size": {"width_cm": 70, "length_cm": 90},
    }
    return attempt(plan_request_of(content, starters.__getitem__, vocabulary), vocabulary)


def planned(starters: Starters, vocabulary: Vocabulary, body: object, **parts: object) -> Plan:
    """Return the plan of a request, which must be possible."""
    plan = tried(starters, vocabulary, body, **parts).plan
    assert plan is not None
    return plan


def test_the_counts_of_a_blanket_worked_out_by_hand(starters: Starters, vocabulary: Vocabulary) -> None:
    """12 garter rows at 40 are 3 cm: the middle is 64 cm wide (140.8 stitches) and its body 84 cm long, 252 rows.

    252 x 20 / 30 = 168 stitches along the body, and 12 x 20 / 40 = 6 along each end.
    """
    plan = planned(starters, vocabulary, "stocking-stitch")
    assert (plan.counts.cast_on, plan.counts.sides) == (141, 0)
    assert [(each.name, each.picks) for each in plan.picked[1].stretches] == [("bottom", 6), ("body", 168), ("top", 6)]
    assert plan.width_cm == Fraction(1410, 22) + 2 * 3


@pytest.mark.parametrize("body", BODIES)
def test_both_edges_take_the_same_stitches_in_opposite_order(
    body: str, starters: Starters, vocabulary: Vocabulary
) -> None:
    """With the RS facing one goes down the left edge and up the right one."""
    left, right = planned(starters, vocabulary, body).picked
    assert (left.edge, right.edge) == ("left", "right")
    assert left.stretches == right.stretches[::-1]
    assert left.picks == right.picks == sum(each.picks for each in left.stretches) <= left.places


@pytest.mark.parametrize("body", BODIES)
@pytest.mark.parametrize("sides", ["garter-border", "seed-stitch-border", "rib-two-by-two-border"])
def test_the_rows_of_a_border_work_loop_by_loop(
    body: str, sides: str, starters: Starters, vocabulary: Vocabulary
) -> None:
    """The second road comes to the count after each row, from the WS row after the pick-up on."""
    plan = planned(starters, vocabulary, body, sides={"component": sides, "rows": 10})
    border = plan.picked[0].border
    steps = trace([row.parts for row in border.cycle], border.before, vocabulary).steps
    assert border.cycle[0].side == border.first_row_side == "WS"
    assert [step.after for step in steps] == [border.before] * len(border.cycle)


def test_the_count_is_the_nearest_that_the_border_takes(starters: Starters, vocabulary: Vocabulary) -> None:
    """A rib of two and two over 4n + 2 stitches: 180 needed, and 182 beats 178 as the larger of a tie."""
    plan = planned(
        starters,
        vocabulary,
        "stocking-stitch",
        sides={
            "text": "Row 1: *k2, p2; rep from * to last 2 sts, k2.\nRow 2: p2, *k2, p2; rep from * to end.",
            "rows": 10,
        },
        gauge=[{"stitches": 20, "rows": 30, "over_cm": 10}],
    )
    edge = plan.picked[0]
    near = sorted((count for count in range(2, 400) if count % 4 == 2), key=lambda n: (abs(n - edge.need), -n))
    assert edge.picks == near[0]


def test_the_stitches_of_a_piece_are_those_of_all_its_parts(starters: Starters, vocabulary: Vocabulary) -> None:
    """Rows leave loops, a bind-off takes them, and a stitch picked up is one."""
    plan = planned(starters, vocabulary, "waffle")
    borders = sum(edge.picks * (edge.border.rows + 2) for edge in plan.picked)
    assert plan.stitches_total == sum(each.stitches for each in plan.sections) + plan.sections[-1].after + borders


@pytest.mark.parametrize(
    ("body", "selvedge", "places"),
    [
        ("stocking-stitch", None, ["ridge", "row", "ridge"]),
        ("garter", None, ["ridge", "ridge", "ridge"]),
        ("stocking-stitch", "slipped-selvedge", ["chain", "chain", "chain"]),
        ("stocking-stitch", "chain-selvedge", ["chain", "chain", "chain"]),
        ("stocking-stitch", "garter-selvedge", ["ridge", "ridge", "ridge"]),
    ],
)
def test_an_edge_offers_what_its_outer_stitch_leaves(
    body: str, selvedge: str | None, places: list[str], starters: Starters, vocabulary: Vocabulary
) -> None:
    """A plain edge has a place each row; ridges and chains take two rows; common practice, no source."""
    plan = planned(starters, vocabulary, body, selvedge=selvedge)
    assert [each.place for each in plan.picked[0].stretches] == places


def test_240_rows_of_a_slipped_edge_make_120_chains(starters: Starters, vocabulary: Vocabulary) -> None:
    """A stitch in each chain is what garter needs there; common practice, no source."""
    body = {"component": "garter", "rows": 240}
    gauge = [{"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}]
    parts: dict[str, Any] = {"bottom": None, "top": None, "selvedge": "slipped-selvedge", "gauge": gauge}
    edge = planned(starters, vocabulary, body, **parts).picked[0]
    assert (edge.places, edge.need, edge.picks) == (120, 120, 120)


@pytest.mark.parametrize("body", BODIES)
def test_no_admissible_count_is_nearer_than_the_chosen_one(
    body: str, starters: Starters, vocabulary: Vocabulary
) -> None:
    """The widths of the borders are part of the width."""
    plan = planned(starters, vocabulary, body, gauge=GAUGES[:1])
    assert plan.nearest[0].cast_on == plan.counts.cast_on
    assert plan.nearest[0].width_cm == plan.width_cm
    assert [abs(near.error_cm) for near in plan.nearest] == sorted(abs(near.error_cm) for near in plan.nearest)


def test_at_another_gauge_the_stitches_stay_and_the_needs_change(starters: Starters, vocabulary: Vocabulary) -> None:
    """The same stitches and rows measure half at twice the gauge."""
    plan = planned(starters, vocabulary, "waffle", gauge=[{"stitches": 22, "rows": 30, "over_cm": 10}])
    again = remeasured(plan, (Gauge(Fraction(44), Fraction(60)),), vocabulary)
    assert again.width_cm * 2 == plan.width_cm
    assert [edge.picks for edge in again.picked] == [edge.picks for edge in plan.picked]
    assert again.picked[0].need == plan.picked[0].need


def test_without_side_borders_only_the_middle_is_left(starters: Starters, vocabulary: Vocabulary) -> None:
    """Nothing is picked up."""
    assert planned(starters, vocabulary, "garter", sides=None).picked == ()


@pytest.mark.parametrize("body", BODIES)
def test_a_sampler_has_borders_of_its_own(body: str, starters: Starters, vocabulary: Vocabulary) -> None:
    """The smallest piece is smaller, and its long edges take a border too."""
    plan = planned(starters, vocabulary, body)
    small = sampler(plan, vocabulary)
    assert 0 < small.picked[0].picks < plan.picked[0].picks


def test_a_sampler_whose_edges_are_too_short_for_a_border_has_none(starters: Starters, vocabulary: Vocabulary) -> None:
    """A border in sixties finds no sixty on a piece of a few centimetres."""
    border = {"text": "Row 1: *K60; rep from * to end.", "rows": 6}
    plan = planned(starters, vocabulary, "garter", sides=border)
    assert plan.picked
    assert sampler(plan, vocabulary).picked == ()


@pytest.mark.parametrize(
    ("sides", "obstacle"),
    [
        (
            {"component": "garter-border", "stitches": 6},
            NotTaken("/parts/sides/stitches", "stitches", "picked-up sides"),
        ),
        (
            {"text": "Row 1: knit.", "rows": 6, "left": "Row 1: knit."},
            NotTaken("/parts/sides/left", "left", "picked-up sides"),
        ),
        ({"text": "Row 1: knit."}, NeedsRows("/parts/sides/rows", 1)),
        ("plain-bind-off", WrongKind("/parts/sides", "plain-bind-off", "bind-off")),
    ],
)
def test_what_cannot_be_picked_up_is_told_apart(
    sides: object, obstacle: object, starters: Starters, vocabulary: Vocabulary
) -> None:
    """A border that is worked outwards has rows and two like edges."""
    assert obstacle in tried(starters, vocabulary, "garter", sides=sides).obstacles


def test_the_yarn_of_a_border_is_its_pick_up_its_rows_and_its_bind_off(
    starters: Starters, vocabulary: Vocabulary
) -> None:
    """A plain loop for each stitch picked up and knitted; both borders take the same."""
    plan = planned(starters, vocabulary, "waffle")
    parts = {part.part: part.loops.likely for part in estimate(plan, [Yarn()], vocabulary).colours[0].parts}
    edge = plan.picked[0]
    off = bind_off_loops(starters["plain-bind-off"], edge.border.after).likely
    assert parts["left border"] == parts["right border"] == edge.picks + edge.border.stitches + off
    assert (
        hours(plan, vocabulary).quick > hours(replace(plan, stitches_total=plan.stitches_total - 1), vocabulary).quick
    )


def test_a_yarn_of_the_sides_works_both_borders_alone(starters: Starters, vocabulary: Vocabulary) -> None:
    """It is joined on for each edge, and works nothing else."""
    plan = planned(starters, vocabulary, "waffle")
    border = estimate(plan, [Yarn(), Yarn(parts=("sides",))], vocabulary).colours[1]
    assert [part.part for part in border.parts] == ["left border", "right border", "ends"]
    assert border.pieces == 2
