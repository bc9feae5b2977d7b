"""Mass per area beside published figures of the yarn in a square metre.

GATE Textile Engineering, 2015, question 54, has the constants of fully relaxed plain knitting (5.5 and 4.2); a hobby
page's rule of yards by length, width and gauge over 6 is 60 m to the square metre for each stitch to 10 cm.
"""

from fractions import Fraction

import pytest

from counterpane.craft.behaviour.mass import mass_per_area, metres_per_m2
from counterpane.craft.measures import Gauge
from counterpane.craft.yarn.loops import FULL

TEX = Fraction(1000)
"""Grams to 1,000 m at which a metre is a gram."""


@pytest.mark.parametrize(("stitches", "metres"), [(18, 990), (20, 1100), (22, 1210), (24, 1320), (28, 1540)])
def test_the_table_of_plain_knitting_lies_in_the_range(stitches: int, metres: int) -> None:
    """GATE 2015's constants: 55 m for each stitch to 10 cm, at the rows that go with it."""
    gauge = Gauge(Fraction(stitches), stitches * FULL.courses / FULL.wales)
    assert Fraction(metres) in mass_per_area(gauge, TEX)


@pytest.mark.parametrize("stitches", [18, 20, 22, 24, 28])
def test_the_rule_of_thumb_lies_in_the_range(stitches: int) -> None:
    """60 m for each stitch to 10 cm (a hobby page, second-hand): the range is no narrower than two sources differ."""
    gauge = Gauge(Fraction(stitches), stitches * FULL.courses / FULL.wales)
    assert Fraction(60 * stitches) in mass_per_area(gauge, TEX)


def test_the_formula_of_the_trade_in_inches() -> None:
    """Courses and wales to the inch by the loop in mm by 39.37 squared (rounded) by tex over a million."""
    courses, wales, tex = Fraction(7), Fraction(5), Fraction(200)
    loop_mm = Fraction("4.1") * Fraction("25.4") / wales
    grams = courses * wales * loop_mm * Fraction("39.37") ** 2 * tex / 10**6
    gauge = Gauge(wales, courses, Fraction("2.54"))
    assert abs(metres_per_m2(gauge)[0] * tex / 1000 / grams - 1) < Fraction(1, 10_000)
    assert grams in mass_per_area(gauge, tex)
