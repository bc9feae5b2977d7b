"""The yarn of a plan against estimators that know nothing of loops: a rule of hobby knitters, and yarn pages.

The rule is yards = length x width x stitches to the inch / 6, all in inches: 60 m to the square metre for each stitch
to 10 cm. The loop model of plain knitting, fully relaxed, comes to 55. Both are weak: what is held is that the ranges
of a plan meet them.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from counterpane.craft.constructions import Plan
from counterpane.craft.measures import CM_PER_INCH, Gauge, inches
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.yarn import Spread, Yarn, estimate
from counterpane.craft.yarn.loops import FULL, metres_per_m2
from craft.yarn.asking import Starters, planned

YARD_M = 36 * CM_PER_INCH / 100
BY_LOOPS, BY_THE_RULE = 55, 60


def by_the_rule(length_cm: Fraction, width_cm: Fraction, gauge: Gauge) -> Fraction:
    """Return the metres of a piece by the rule of hobby knitters: inches by inches by stitches to the inch, by 6."""
    yards = length_cm / CM_PER_INCH * width_cm / CM_PER_INCH * gauge.per_cm * CM_PER_INCH / 6
    return yards * YARD_M


def metres(plan: Plan, vocabulary: Vocabulary) -> Spread:
    """Return the metres of a plan from its gauge alone, without its ends."""
    found = estimate(plan, [Yarn()], vocabulary).metres
    assert found is not None
    return found


def test_a_scarf_of_48_by_8_inches_at_5_stitches_to_the_inch() -> None:
    """V11, a hobby page on estimating yarn: 320 yards."""
    found = by_the_rule(inches(Fraction(48)), inches(Fraction(8)), Gauge(Fraction(5), Fraction(7), CM_PER_INCH))
    assert found / YARD_M == 320


@pytest.mark.parametrize("stitches", [18, 20, 22, 24, 28])
def test_the_rule_is_60_and_the_loops_are_55_times_the_stitches_of_10_cm(stitches: int) -> None:
    """Derived from both: they differ by 9 %."""
    gauge = Gauge(Fraction(stitches), Fraction(30))
    loop = FULL.wales * 100 / stitches
    rows = FULL.courses * 100 / loop
    assert metres_per_m2(Fraction(stitches), loop, rows) == BY_LOOPS * stitches
    assert abs(by_the_rule(Fraction(100), Fraction(100), gauge) / stitches - BY_THE_RULE) < Fraction(1, 10**9)


@pytest.mark.parametrize("stitches", [16, 18, 20, 22, 24, 28])
@pytest.mark.parametrize("body", ["stocking-stitch", "basket-weave", "moss-stitch", "two-by-two-check"])
def test_a_plan_takes_what_the_rule_says(stitches: int, body: str, starters: Starters, vocabulary: Vocabulary) -> None:
    """At a row gauge of 1.31 rows to a stitch the range of a plan meets the band of 55 to 60 times the stitches."""
    gauge = {"stitches": stitches, "rows": round(stitches * 1.31, 1), "over_cm": 10}
    bare = {"bottom": None, "top": None, "sides": None}
    plan = planned(starters, vocabulary, body, gauge=gauge, **bare)
    area = plan.width_cm * plan.length_cm / 10_000
    found = metres(plan, vocabulary)
    band = BY_LOOPS * stitches * area, BY_THE_RULE * stitches * area
    assert found.low <= band[1] and band[0] <= found.high
    assert Fraction(9, 10) <= found.likely / band[0] and found.likely / band[1] <= Fraction(11, 10)


def test_a_baby_blanket_of_30_by_40_inches_in_worsted(starters: Starters, vocabulary: Vocabulary) -> None:
    """A shop's page (weak): 900 to 1200 yards; the plan at 4.5 to 5 stitches to the inch meets that."""
    found = [
        metres(
            planned(
                starters,
                vocabulary,
                "stocking-stitch",
                gauge={"stitches": stitches, "rows": rows, "over_in": 4},
                size={"width_in": 30, "length_in": 40},
            ),
            vocabulary,
        )
        for stitches, rows in ((18, 24), (20, 26))
    ]
    assert found[0].low / YARD_M <= 1200 and found[-1].high / YARD_M >= 900
