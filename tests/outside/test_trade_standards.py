"""The trade's check values: swatches, needles, yarn weights, inches and tails. The source stands beside each.

Pages of shops and columnists were read second-hand; they are what the trade says, not standards.
"""

from fractions import Fraction
from itertools import pairwise
from typing import Any

import pytest

from counterpane.craft.measures import CM_PER_INCH, Gauge, half_up, inches, shown
from counterpane.craft.needles import Needle, after_swatch, circular_capacity, nearest_needle
from counterpane.craft.tails import bind_off_yarn, row_yarn, tail_by_trial, tail_by_width
from counterpane.craft.yarn.loops import FULL, loop_mm, metres_per_m2
from counterpane.seeding.facts import load_facts

FACTS: dict[str, Any] = {fact["name"]: fact for fact in load_facts()}
NEEDLES = [
    Needle(Fraction(fact["value"]["mm"]), fact["value"].get("us"), fact["value"].get("uk"))
    for name, fact in FACTS.items()
    if name.endswith("-mm") and name.startswith("needle-")
]
WEIGHTS = [fact["value"] for name, fact in FACTS.items() if name.startswith("yarn-weight-")]
PER_INCH = Gauge(Fraction(5), Fraction(7), CM_PER_INCH)


def test_a_swatch_of_4_inches_at_5_stitches_and_7_rows_to_the_inch() -> None:
    """V1, Craft Yarn Council, "Reading Instructions & Other Basics": cast on 20, work 28 rows."""
    assert PER_INCH.per_cm * inches(Fraction(4)) == 20
    assert PER_INCH.rows_per_cm * inches(Fraction(4)) == 28


@pytest.mark.parametrize(("stitches", "needle"), [("4.5", "smaller"), ("5.5", "larger"), ("5", "same")])
def test_a_swatch_that_comes_out_larger_asks_for_a_smaller_needle(stitches: str, needle: str) -> None:
    """V2, Craft Yarn Council, "Reading Instructions & Other Basics": larger swatch, smaller needle, and the reverse."""
    assert after_swatch(PER_INCH, Gauge(Fraction(stitches), Fraction(7), CM_PER_INCH)) == needle


def test_yarn_for_one_row_and_the_bind_off_of_40_inches() -> None:
    """V12, a yarn shop in Berkeley, page on running short of yarn: 126, 246 and together 366 in with an end of 6 in."""
    row, bind_off = (yarn(Fraction(40), Fraction(6)) for yarn in (row_yarn, bind_off_yarn))
    assert (row, bind_off, row + bind_off - 6) == (126, 246, 366)


def test_the_same_in_centimetres() -> None:
    """V12, the same page: 315, 615 and together 915 cm over 100 cm with an end of 15 cm."""
    row, bind_off = (yarn(Fraction(100), Fraction(15)) for yarn in (row_yarn, bind_off_yarn))
    assert (row, bind_off, row + bind_off - 15) == (315, 615, 915)


def test_a_tail_of_three_widths_and_a_tenth() -> None:
    """V13, a column on tail lengths: 39.6 in for a piece 12 in wide."""
    assert tail_by_width(Fraction(12), 3 * Fraction(11, 10)) == Fraction("39.6")


def test_a_tail_of_four_widths_and_six_inches() -> None:
    """V14, H. Yeoh, a designer's page: 86 in for a piece 20 in wide."""
    assert tail_by_width(Fraction(20), Fraction(4), Fraction(6)) == 86


def test_a_tail_from_ten_trial_stitches() -> None:
    """V15, a craft column on casting on: ten stitches used 5 in, so 60 need 30 in."""
    assert tail_by_trial(Fraction(5), 10, 60) == 30


def test_a_tail_from_eleven_trial_stitches_of_two_strands() -> None:
    """V16, J. Wolcott, a designer's page: 18 in for 11, rounded to 1.625 in each: 113.75 in for 70."""
    each = half_up(tail_by_trial(Fraction(18), 11, 1), Fraction(1, 8))
    assert each == Fraction("1.625")
    assert tail_by_trial(each, 1, 70) == Fraction("113.75")


def test_a_tail_from_ten_trial_stitches_in_centimetres() -> None:
    """Common practice, no source: ten stitches used 12 cm, so 154 need 184.8 and 15, about 200 cm."""
    tail = tail_by_trial(Fraction(12), 10, 154, Fraction(15))
    assert tail == Fraction("199.8")
    assert half_up(tail, Fraction(5)) == 200


def test_a_trial_needs_a_stitch() -> None:
    """A tail cannot be reckoned from no trial stitches."""
    with pytest.raises(ValueError, match="trial"):
        tail_by_trial(Fraction(12), 0, 154)


@pytest.mark.parametrize(("length", "least", "most"), [(16, 80, 160), (36, 180, 360)])
def test_what_a_circular_needle_holds(length: int, least: int, most: int) -> None:
    """V17, a shop's table of circular needles: at 5 stitches to the inch, from the needle's length to twice that."""
    holds = circular_capacity(inches(Fraction(length)), PER_INCH)
    assert (holds.least, holds.most) == (least, most)


@pytest.mark.parametrize(
    ("inch", "cm", "printed", "step"),
    [("28", "71.12", "71", "1"), ("52.375", "133.03", "133", "1"), ("0.625", "1.59", "1.6", "0.1")],
)
def test_the_inches_of_a_crib_in_centimetres(inch: str, cm: str, printed: str, step: str) -> None:
    """V18, 16 CFR 1508.3: 28, 52 3/8 and 5/8 in; the regulation prints 71, 133 and 1.6 cm."""
    length = inches(Fraction(inch))
    assert shown(length, 2) == cm
    assert half_up(length, Fraction(step)) == Fraction(printed)
    assert inch in FACTS["crib-interior-us"]["value"].values()


def test_a_crib_that_is_not_full_size_lies_beyond_the_tolerance_and_2_inches() -> None:
    """16 CFR 1220.1(c)(1)(iii) against 1508.3: the limits are the full size, give or take 5/8 and 2 in."""
    full, other = FACTS["crib-interior-us"]["value"], FACTS["crib-not-full-size-us"]["value"]["beyond"]
    reach = Fraction(full["tolerance"]) + 2
    for side in ("width", "length"):
        assert [Fraction(full[side]) - reach, Fraction(full[side]) + reach] == [Fraction(end) for end in other[side]]


def test_7_is_the_only_number_that_us_and_old_uk_needles_share() -> None:
    """V19, five needle charts of shops and knitters: US 7 and old UK 7 are both 4.5 mm, and nothing else agrees."""
    assert [needle.mm for needle in NEEDLES if needle.us and needle.us == needle.uk] == [Fraction("4.5")]


def test_204_stitches_at_18_to_4_inches() -> None:
    """V20, a yarn shop's page: 4.5 stitches to the inch, 45.33 in."""
    gauge = Gauge(Fraction(18), Fraction(24), inches(Fraction(4)))
    assert gauge.per_cm * CM_PER_INCH == Fraction("4.5")
    assert shown(gauge.width(204) / CM_PER_INCH, 2) == "45.33"


def test_us_numbers_rise_with_thickness() -> None:
    """Five needle charts: a thicker needle has a higher US number; 000 and 00 come before 0."""
    numbers = [_number(needle.us) for needle in NEEDLES if needle.us]
    assert numbers == sorted(set(numbers))


def test_old_uk_numbers_fall_with_thickness() -> None:
    """Five needle charts: a thicker needle has a lower old UK number; 00 and 000 come after 0."""
    numbers = [_number(needle.uk) for needle in NEEDLES if needle.uk]
    assert numbers == sorted(set(numbers), reverse=True)


def test_the_nearest_needle_to_the_wire_gauge() -> None:
    """Old UK numbers follow the Imperial Standard Wire Gauge (from memory: 4.470 mm is 7, 3.251 mm is 10)."""
    assert nearest_needle(Fraction("4.470"), NEEDLES).uk == "7"
    assert nearest_needle(Fraction("3.251"), NEEDLES).uk == "10"


def test_the_gauges_of_the_yarn_weights_have_no_gap() -> None:
    """Craft Yarn Council: the bands run from 1 to 40 stitches without a gap, and only 23 and 24 lie in two."""
    classes = [set(range(int(low), int(high) + 1)) for low, high in (weight["stitches"] for weight in WEIGHTS)]
    assert set.union(*classes) == set(range(1, 41))
    assert {number for one, other in pairwise(classes) for number in one & other} == {23, 24}


def test_the_needles_of_the_yarn_weights_touch_end_to_end() -> None:
    """Craft Yarn Council: each class of yarn begins at the needle at which the one before ends."""
    ends = [weight["needle_mm"] for weight in WEIGHTS]
    assert all(before[-1] == after[0] for before, after in pairwise(ends))
    assert [Fraction(end[0]) for end in ends] == sorted(Fraction(end[0]) for end in ends)


def test_thicker_yarn_has_fewer_stitches() -> None:
    """Craft Yarn Council: the gauge falls as the number of the class rises."""
    lows = [int(weight["stitches"][0]) for weight in WEIGHTS]
    assert lows == sorted(lows, reverse=True)
    assert [weight["number"] for weight in WEIGHTS] == [str(number) for number in range(8)]


@pytest.mark.parametrize("weight", WEIGHTS, ids=lambda weight: str(weight["name"]))
def test_the_needles_of_a_yarn_weight_are_the_same_in_both_scales(weight: dict[str, Any]) -> None:
    """Craft Yarn Council against five needle charts: the millimetres and the US numbers of a class agree.

    The council's class 5 ends at 8 mm and US 11, and class 6 at 12.75 mm and US 17, as the charts have it.
    """
    us = {needle.mm: needle.us for needle in NEEDLES}
    assert [us[Fraction(mm)] for mm in weight["needle_mm"]] == weight["needle_us"]


def test_4_inches_are_1_6_per_cent_more_than_10_cm() -> None:
    """International yard and pound agreement, 1959: 22 stitches to 4 in are 21.65 to 10 cm."""
    gauge = Gauge(Fraction(22), Fraction(30), inches(Fraction(4)))
    assert shown(10 * gauge.per_cm, 2) == "21.65"
    assert shown(inches(Fraction(4)) / 10 * 100 - 100, 1) == "1.6"


def test_yards_by_the_rule_of_a_sixth() -> None:
    """V11, a hobby page: length by width by stitches to the inch, over 6, is 320 yd for 48 by 8 in at 5 stitches.

    The rule is 60 times the stitches to 10 cm in metres to the m2, exactly. The loop model, which has nothing to do
    with it, has 55 fully relaxed (GATE Textile Engineering, 2015) and 53 wet relaxed (from memory): 8 and 12 % less.
    """
    length, width, gauge = Fraction(48), Fraction(8), Gauge(Fraction(5), Fraction(7), CM_PER_INCH)
    yards = length * width * 5 / 6
    metres = yards * 36 * CM_PER_INCH / 100
    per_m2 = metres / (inches(length) * inches(width) / 10_000)
    stitches = gauge.per_cm * 10
    assert (yards, per_m2) == (320, 60 * stitches)
    full = metres_per_m2(stitches, FULL.wales * 100 / stitches, FULL.courses * stitches / FULL.wales)
    wet = metres_per_m2(stitches, loop_mm(stitches))
    assert [shown(100 - 100 * model / per_m2, 1) for model in (full, wet)] == ["8.3", "11.7"]


def _number(name: str) -> Fraction:
    """Return a needle's number as a fraction: 10 1/2 is 21/2, and 00 lies one below 0."""
    if set(name) == {"0"}:
        return Fraction(1 - len(name))
    return sum((Fraction(part) for part in name.split()), Fraction(0))
