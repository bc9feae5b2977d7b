"""Figures of the trade that a plan must bring out: common practice, no source, unless another source is named."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

import pytest

from counterpane.craft.component import Component
from counterpane.craft.constructions import Plan, PlanRequest
from counterpane.craft.constructions.amending import amended
from counterpane.craft.constructions.fitting import options
from counterpane.craft.constructions.making import attempt
from counterpane.craft.constructions.settling import settle
from counterpane.craft.counts import Progression
from counterpane.craft.findings import Correction
from counterpane.craft.measures import Gauge, shown
from counterpane.craft.rules import fabric, fitting
from counterpane.craft.sizing.lengths import ridges, side_of
from counterpane.craft.stitches import Vocabulary
from counterpane.library.plans.plans import plan_request_of

Starters = Mapping[str, Component]
SMOOTH = {"stitches": 22, "rows": 30, "over_cm": 10}
GARTER = {"stitches": "20.5", "rows": 42, "over_cm": 10, "in": "garter-border"}


def request(starters: Starters, vocabulary: Vocabulary, body: object, **rest: object) -> PlanRequest:
    """Return a request for 70 by 90 cm with a slipped selvedge, garter borders unless others are named."""
    gauge, parts = rest.pop("gauge", SMOOTH), {"selvedge": "slipped-selvedge", "body": body, **rest}
    content = {"parts": parts, "gauge": gauge, "size": {"width_cm": 70, "length_cm": 90}}
    return plan_request_of(content, starters.__getitem__, vocabulary)


def planned(starters: Starters, vocabulary: Vocabulary, body: object, **rest: object) -> Plan:
    """Return the plan of such a request."""
    plan = attempt(request(starters, vocabulary, body, **rest), vocabulary).plan
    assert plan is not None
    return plan


def classes(starters: Starters, vocabulary: Vocabulary, body: object, **rest: object) -> list[tuple[int, int]]:
    """Return the classes of cast-on counts as (multiple, plus)."""
    found = options(settle(request(starters, vocabulary, body, **rest), vocabulary))
    return [(option.counts.of, option.counts.plus) for option in found]


@pytest.mark.parametrize(
    ("body", "multiple", "expected"),
    [("waffle", (3, 0), (153, 46, 139)), ("basket-weave", (8, 2), (154, 17, 140))],
)
def test_seventy_centimetres_with_six_garter_stitches_and_an_edge_stitch_each_side(
    body: str, multiple: tuple[int, int], expected: tuple[int, int, int], starters: Starters, vocabulary: Vocabulary
) -> None:
    """Waffle of 3n + 15 takes 153 stitches, 46 repeats in 139; basket weave of 8n + 18 takes 154, 17 in 140."""
    counts = planned(starters, vocabulary, body).counts
    assert classes(starters, vocabulary, body) == [multiple]
    assert (counts.cast_on, *counts.repeats, *counts.body) == expected


def test_waffle_and_basket_weave_as_bands_take_24n_plus_18(starters: Starters, vocabulary: Vocabulary) -> None:
    """Near 154 these are 138 and 162."""
    bands = ["waffle", "basket-weave"]
    assert classes(starters, vocabulary, bands) == [(24, 18)]
    assert {near.cast_on for near in planned(starters, vocabulary, bands).nearest[:2]} == {138, 162}


def test_one_garter_stitch_fewer_each_side_lets_the_bands_meet_at_154(
    starters: Starters, vocabulary: Vocabulary
) -> None:
    """The first correction gives the waffle band 142 stitches, 3 times 47 and 1, and makes the plan at 154."""
    asked = request(starters, vocabulary, ["waffle", "basket-weave"])
    found = [each for rule in fitting.RULES for each in rule.check(attempt(asked, vocabulary))]
    change = found[0].changes[0]
    assert change == Correction(
        "/parts/body/0/stitches", 142, "at 154 stitches this band then has side borders of 5 stitches"
    )
    plan = attempt(amended(asked, change), vocabulary).plan
    assert plan is not None
    assert (plan.counts.cast_on, plan.counts.repeats[0]) == (154, 47)


def test_sixteen_rows_of_garter_are_eight_ridges() -> None:
    """On either side; row 1 is a RS row."""
    assert ridges(16) == (8, 8)


def test_a_multiple_of_5_plus_2_with_borders_of_8_and_an_edge_stitch_is_cast_on_over_5n_plus_20(
    starters: Starters, vocabulary: Vocabulary
) -> None:
    """Two times nine stitches come on top of the body's two."""
    body = {"text": "Row 1 (RS): k2, *p3, k2; rep from * to end.\nRow 2: p2, *k3, p2; rep from * to end."}
    sides = {"component": "garter-border", "stitches": 8}
    found = options(settle(request(starters, vocabulary, body, sides=sides), vocabulary))
    assert [option.counts for option in found] == [Progression(5, 0, 25)]
    assert found[0].counts.admits(5 * 20 + 20)


def test_135_stitches_at_22_and_a_half_are_60_centimetres() -> None:
    """22.5 stitches over 10 cm."""
    assert Gauge(Fraction("22.5"), Fraction(30)).width(135) == 60


def test_after_a_body_that_ends_on_ws_sixteen_rows_bring_the_bind_off_to_rs(
    starters: Starters, vocabulary: Vocabulary
) -> None:
    """The top border begins on a RS row, and the row after it is a RS row."""
    plan = planned(starters, vocabulary, "stocking-stitch", top={"component": "garter-border", "rows": 16})
    _, body, top = plan.sections
    assert (body.last_row_side, top.first_row_side, top.last_row_side) == ("WS", "RS", "WS")
    assert side_of(top.first_row + 16) == "RS"


def test_one_row_gauge_for_all_would_be_over_two_centimetres_out(starters: Starters, vocabulary: Vocabulary) -> None:
    """270 rows at 30 are 90 cm; with 24 of them garter at 42 rows the piece is 87.7 cm."""
    borders = {"component": "garter-border", "rows": 12}
    body = {"component": "stocking-stitch", "rows": 246}
    plan = planned(starters, vocabulary, body, bottom=borders, top=borders, gauge=[SMOOTH, GARTER])
    assert (sum(section.rows for section in plan.sections), shown(plan.length_cm)) == (270, "87.7")


def test_twenty_and_a_half_repeats_of_basket_weave(starters: Starters, vocabulary: Vocabulary) -> None:
    """With 16 garter rows at 42 rows below and above, 246 rows are 82.0 cm and the whole is 89.6 cm."""
    borders = {"component": "garter-border", "rows": 16}
    plan = planned(starters, vocabulary, "basket-weave", bottom=borders, top=borders, gauge=[SMOOTH, GARTER])
    body = plan.sections[1]
    assert (body.rows, Fraction(body.rows, 12), shown(body.cm_length)) == (246, Fraction(41, 2), "82.0")
    assert shown(plan.length_cm) == "89.6"


def test_a_garter_end_of_153_stitches_frills(starters: Starters, vocabulary: Vocabulary) -> None:
    """At 20.5 it is 74.6 cm wide over a body that at 22 stitches would be 69.5 cm, and the rule says so."""
    garter = Gauge(Fraction("20.5"), Fraction(42))
    assert (shown(garter.width(153)), shown(Gauge(Fraction(22), Fraction(30)).width(153))) == ("74.6", "69.5")
    made = attempt(request(starters, vocabulary, "waffle", gauge=[SMOOTH, GARTER]), vocabulary)
    said = [each.message for rule in fabric.RULES for each in rule.check(made) if each.rule == "border-frills"]
    assert "74.6 cm wide" in said[0]


@pytest.mark.parametrize(
    ("sides", "rows", "words"),
    [("garter-border", 42, "every 5 body rows, alternately after 4 and 6"),
     ("seed-stitch-border", 34, "every 15 body rows, alternately after 14 and 16")],
)  # fmt: skip
def test_extra_rows_beside_stocking_stitch(
    sides: str, rows: int, words: str, starters: Starters, vocabulary: Vocabulary
) -> None:
    """Garter at 42 rows needs a pair for every 5 body rows at 30, moss at 34 one for every 15."""
    gauges = [{**SMOOTH, "in": "stocking-stitch"}, {"stitches": 22, "rows": rows, "over_cm": 10, "in": sides}]
    made = attempt(request(starters, vocabulary, "stocking-stitch", sides=sides, gauge=gauges), vocabulary)
    said = [each.hint for rule in fabric.RULES for each in rule.check(made) if each.rule == "rows-differ-in-height"]
    assert words in said[0]


def test_eighteen_rows_over_154_stitches_are_2772(starters: Starters, vocabulary: Vocabulary) -> None:
    """They are nine ridges, and at 42 rows over 10 cm they measure 4.3 cm."""
    borders = {"component": "garter-border", "rows": 18}
    bottom = planned(starters, vocabulary, "basket-weave", bottom=borders, gauge=[SMOOTH, GARTER]).sections[0]
    assert (bottom.before, bottom.stitches, ridges(bottom.rows)[0]) == (154, 2772, 9)
    assert shown(bottom.cm_length) == "4.3"
