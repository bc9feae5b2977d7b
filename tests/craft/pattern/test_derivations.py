"""Why the numbers of a plan are what they are: the sums come to the plan's own numbers, worked out elsewhere."""

import re
from collections.abc import Mapping
from fractions import Fraction
from typing import Any

import pytest

from counterpane.craft.constructions import Plan
from counterpane.craft.pattern.derivations import Derivation, derivations
from counterpane.library.plans.plans import make_plan, plan_request_of
from counterpane.seeding import load_component
from craft.pattern.plans import vocabulary

GAUGES = [
    {"in": "waffle", "stitches": 22, "rows": 30, "over_cm": 10},
    {"in": "garter-border", "stitches": "20.5", "rows": 42, "over_cm": 10},
]
MIXES: Mapping[str, dict[str, Any]] = {
    "waffle": {"body": "waffle", "selvedge": "slipped-selvedge"},
    "bands": {"body": ["waffle", "garter", "seed-stitch"]},
    "words": {
        "body": {"text": "Row 1 (RS): *k3, p2; rep from * to last 3 sts, k3.\nRow 2: *p3, k2; rep to last 3, p3."}
    },
    "bare": {"body": "basket-weave", "sides": None, "bottom": None, "top": None},
}


def planned(name: str, construction: str = "one-piece") -> Plan:
    """Return the plan of a mix; figures are invented."""
    content = {
        "construction": construction,
        "parts": MIXES[name],
        "gauge": GAUGES,
        "size": {"width_cm": 70, "length_cm": 90},
    }
    return make_plan(plan_request_of(content, load_component, vocabulary()), vocabulary())


def named(plan: Plan, start: str) -> Derivation:
    """Return the derivation whose name begins so."""
    return next(each for each in derivations(plan, vocabulary(), "us") if each.name.startswith(start))


def centimetres(each: Derivation) -> Fraction:
    """Return the sum of what the lines of a derivation come to."""
    return sum((Fraction(found) for line in each.sums for found in re.findall(r"= ([\d.]+) cm", line)), Fraction(0))


@pytest.mark.parametrize("name", MIXES)
def test_the_numbers_are_those_of_the_plan(name: str) -> None:
    """Cast-on, body, rows, all stitches."""
    plan = planned(name)
    found = {each.name: each.number for each in derivations(plan, vocabulary(), "us")}
    assert (found["Cast-on"], found["All stitches"]) == (plan.counts.cast_on, plan.stitches_total)
    assert [number for name, number in found.items() if name.startswith("Rows of")] == [
        section.rows for section in plan.sections
    ]


@pytest.mark.parametrize("construction", ["one-piece", "sides-picked-up"])
@pytest.mark.parametrize("name", ["waffle", "bands", "words"])
def test_the_parts_of_width_and_length_add_up(name: str, construction: str) -> None:
    """Each part is shown to 0.1 cm, so that a sum of five may be off by a quarter of a centimetre."""
    plan = planned(name, construction)
    assert abs(centimetres(named(plan, "Finished width")) - plan.width_cm) <= Fraction(1, 4)
    assert abs(centimetres(named(plan, "Finished length")) - plan.length_cm) <= Fraction(1, 4)


@pytest.mark.parametrize("name", MIXES)
def test_the_counts_below_and_above_are_the_nearest_of_the_plan(name: str) -> None:
    """Worked out from the progression here, and by trying counts there."""
    plan = planned(name)
    near = {each.cast_on for each in plan.nearest}
    assert {named(plan, "Cast-on").below, named(plan, "Cast-on").above} <= near


def test_the_cast_on_of_a_waffle_is_told_by_hand() -> None:
    """(70 - 12 / 2.05 - 2 / 2.2) x 2.2 + 14 = 153.1; three times 46 and 15 are 153."""
    cast_on = named(planned("waffle"), "Cast-on")
    assert "(70 − 6.8) cm × 22 ÷ 10 cm = 139.1 of the body, + 14 at the sides = 153.1 wanted." in cast_on.sums
    assert "Body, Waffle: 3 stitches plus 1, at least 4; with 14 beside it a cast-on of 3 stitches, at least 18." in (
        cast_on.sums
    )
    assert (cast_on.below, cast_on.number, cast_on.above) == (150, 153, 156)


def test_a_body_is_repeats_and_balancing_stitches() -> None:
    """139 are 46 threes and one."""
    body = named(planned("waffle"), "Body")
    assert body.sums[1] == "139 = 46 × 3 + 1 stitch outside the repeat, for balance."


def test_the_rows_of_a_body_are_what_the_borders_leave() -> None:
    """90 cm less 24 garter rows at 42 rows to 10 cm are 84.3 cm, 252.9 rows, in fours."""
    rows = named(planned("waffle"), "Rows of body")
    assert rows.sums[1] == "84.3 cm × 30 ÷ 10 cm = 252.9 rows wanted."
    assert (rows.below, rows.number, rows.above) == (248, 252, 256)


def test_picked_up_stitches_are_told_stretch_by_stretch() -> None:
    """What the stretches get is what is picked up."""
    picked = named(planned("waffle", "sides-picked-up"), "Picked up")
    assert sum(int(line.rsplit("get ", 1)[1][:-1]) for line in picked.sums[:-1]) == picked.number


def test_a_body_of_one_count_is_not_divided_into_repeats() -> None:
    """A strip of twelve stitches is worked once across."""
    parts = {"body": {"text": "Row 1 (RS): k12.\nRow 2 (WS): p12."}, "sides": None, "bottom": None, "top": None}
    content = {"parts": parts, "gauge": GAUGES[0], "size": {"width_cm": "5.5", "length_cm": 90}}
    strip = make_plan(plan_request_of(content, load_component, vocabulary()), vocabulary())
    assert named(strip, "Body").sums == ("12, the whole cast-on: nothing is worked beside it.",)
