"""Mass per area: by loops of stitch widths and of row heights, beside the yarn of a whole blanket."""

from collections.abc import Mapping
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.behaviour.mass import HAND_SPREAD, mass_of, mass_per_area, metres_per_m2
from counterpane.craft.component import Component
from counterpane.craft.constructions.making import attempt
from counterpane.craft.measures import Gauge
from counterpane.craft.openings import loop_mm
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.yarn import Yarn, estimate
from counterpane.library.plans.plans import plan_request_of

Starters = Mapping[str, Component]
COUNTS = st.fractions(8, 40)


@given(COUNTS, st.fractions(10, 60))
def test_metres_are_those_of_so_many_loops_laid_end_to_end(stitches: Fraction, rows: Fraction) -> None:
    """Stitches of a square metre times the length of a loop by its width: the other road to the same metres."""
    gauge = Gauge(stitches, rows)
    loops = (stitches * 10) * (rows * 10)
    assert metres_per_m2(gauge)[0] == loops * loop_mm(stitches) / 1000


@given(COUNTS, st.fractions(10, 60), st.fractions(50, 1000))
def test_the_range_holds_both_roads(stitches: Fraction, rows: Fraction, tex: Fraction) -> None:
    """Whatever the fabric, neither way of reckoning the loop lies outside."""
    gauge = Gauge(stitches, rows)
    mass = mass_per_area(gauge, tex)
    assert all(metres * tex / 1000 in mass for metres in metres_per_m2(gauge))


def test_twice_the_yarn_is_twice_the_mass() -> None:
    """Mass goes with the tex."""
    gauge = Gauge(Fraction(22), Fraction(30))
    one, two = (mass_per_area(gauge, Fraction(tex)) for tex in (200, 400))
    assert one.low is not None and one.high is not None
    assert (2 * one.low, 2 * one.high) == (two.low, two.high)


@pytest.mark.parametrize("body", ["stocking-stitch", "garter", "seed-stitch", "basket-weave"])
def test_the_yarn_of_a_whole_blanket_lies_in_the_range(body: str, starters: Starters, vocabulary: Vocabulary) -> None:
    """The yarn of the body, counted stitch by stitch by another model, over the body's area."""
    parts = {"body": body, "sides": None, "bottom": None, "top": None}
    gauge = {"stitches": 22, "rows": 30, "over_cm": 10, "in": body}
    content = {"parts": parts, "gauge": gauge, "size": {"width_cm": 70, "length_cm": 90}}
    plan = attempt(plan_request_of(content, starters.__getitem__, vocabulary), vocabulary).plan
    assert plan is not None
    tex = Fraction(400)
    colour = estimate(plan, [Yarn(tex=tex)], vocabulary).colours[0]
    grams = next(part for part in colour.parts if part.part == "body")
    mass = mass_of(plan.request.body[0].component, plan.request.gauges[0], tex, vocabulary)
    likely = colour.scale.grams
    assert mass is not None and likely is not None
    per_m2 = grams.loops.likely * likely.likely * 10_000 / (plan.width_cm * plan.length_cm)
    assert per_m2 in mass


def test_lace_and_cables_are_not_reckoned(starters: Starters, vocabulary: Vocabulary) -> None:
    """The constants are of plain loops: for others only a weighed swatch tells."""
    gauge = Gauge(Fraction(22), Fraction(30))
    found = [mass_of(starters[slug], gauge, Fraction(400), vocabulary) for slug in ("feather-lace", "rope-cable")]
    assert found == [None, None]


def test_the_spread_is_that_of_hand_knitting() -> None:
    """A basis of machine-knitted wool leaves 15 % either way, and more where the two roads differ."""
    gauge = Gauge(Fraction(22), Fraction(22) * Fraction(53, 41))
    mass = mass_per_area(gauge, Fraction(435))
    assert mass.low is not None and mass.high is not None
    assert (mass.low, mass.high) == tuple(Fraction("507.21") * (1 + way * HAND_SPREAD) for way in (-1, 1))
