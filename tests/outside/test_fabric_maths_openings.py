"""Openings, strands and loops against vectors H07 to H14, E01, E02 and E15 that an independent script computed.

The model is a house model and its constant 4.1 is from memory: what is held here is the arithmetic, not the fabric.
"""

from fractions import Fraction

import pytest

from counterpane.craft.measures import Gauge, half_up
from counterpane.craft.openings import LOOP_WIDTHS, PI, Span, half_loop_mm, loop_mm, opening_mm, root, strand_mm

AT_22 = Gauge(Fraction(22), Fraction(29))
FINE = Gauge(Fraction(36), Fraction(50))
THICK = Gauge(Fraction(14), Fraction(20))


def rounded(value: Fraction | None, places: int) -> str:
    """Return a value with so many decimals, half up."""
    assert value is not None
    return f"{float(half_up(value, Fraction(1, 10**places))):.{places}f}"


@pytest.mark.parametrize(("stitches", "low", "high"), [(4, "18.2", "22.7"), (5, "22.7", "27.3")], ids=["H07", "H08"])
def test_a_strand_is_as_long_as_its_stitches_to_one_more(stitches: int, low: str, high: str) -> None:
    """H07 and H08: past 4 and 5 stitches at 22 to 10 cm."""
    span = strand_mm(stitches, AT_22)
    assert (rounded(span.low, 1), rounded(span.high, 1)) == (low, high)


def test_four_stitches_at_22_stay_below_25_mm_and_five_do_not() -> None:
    """H07 and H08: 25 mm lies above both ends for 4 stitches, and inside for 5."""
    assert strand_mm(4, AT_22).against(Fraction(25)) == "below"
    assert strand_mm(5, AT_22).against(Fraction(25)) == "measure with a rod"


def test_a_yarn_over_at_22_by_29_with_yarn_of_2_mm() -> None:
    """H09 and H10: 2.4673 to 7.3790 mm."""
    span = opening_mm(1, AT_22, Fraction(2))
    assert (rounded(span.low, 4), rounded(span.high, 4)) == ("2.4673", "7.3790")


@pytest.mark.parametrize("limit", [5, 7])
def test_a_yarn_over_at_22_cannot_be_decided(limit: int) -> None:
    """H11: neither 5 nor 7 mm can be decided from the gauge."""
    assert opening_mm(1, AT_22, Fraction(2)).against(Fraction(limit)) == "measure with a rod"


def test_a_yarn_over_in_fine_yarn_is_estimated_below_5_mm() -> None:
    """H12: at 36 by 50 with yarn of 1.2 mm."""
    assert opening_mm(1, FINE, Fraction("1.2")).against(Fraction(5)) == "below"


def test_a_double_yarn_over_in_thick_yarn_is_estimated_above_5_mm() -> None:
    """H13: at 14 by 20 with yarn of 3 mm."""
    assert opening_mm(2, THICK, Fraction(3)).against(Fraction(5)) == "above"


@pytest.mark.parametrize(("limit", "least"), [(5, 33), (7, 24)], ids=["5 mm", "7 mm"])
def test_the_least_gauge_at_which_the_high_end_is_under_a_limit(limit: int, least: int) -> None:
    """H14: from 33 stitches to 10 cm under 5 mm, from 24 under 7 mm."""
    below = [sts for sts in range(1, 60) if opening_mm(1, Gauge(Fraction(sts), Fraction(30))).high < limit]
    assert below[0] == least


def test_without_the_yarn_nothing_is_estimated_above_a_limit() -> None:
    """The low end needs the yarn's diameter; without it an opening is never called above a limit."""
    span = opening_mm(2, THICK)
    assert span.low is None
    assert span.against(Fraction(5)) == "measure with a rod"


def test_a_low_end_never_falls_below_nothing() -> None:
    """Yarn thicker than the circle leaves an estimate of 0 and not less."""
    assert opening_mm(1, AT_22, Fraction(20)).low == 0


@pytest.mark.parametrize(("low", "verdict"), [("4.9", "measure with a rod"), ("5", "above")])
def test_a_low_end_on_the_limit_counts_as_above(low: str, verdict: str) -> None:
    """Limits are inclusive: a low end of 5 mm is above a limit of 5 mm."""
    assert Span(Fraction(low), Fraction(9)).against(Fraction(5)) == verdict


def test_the_loop_at_22_stitches() -> None:
    """E01 and E02: 18.636 mm a loop, 186.36 m for 10,000 stitches."""
    assert rounded(loop_mm(Fraction(22)), 3) == "18.636"
    assert rounded(loop_mm(Fraction(22)) * 10**4 / 1000, 2) == "186.36"


def test_the_strand_of_a_slipped_stitch_in_loops() -> None:
    """E15: one stitch width is 0.244 of a loop."""
    assert rounded(1 / LOOP_WIDTHS, 3) == "0.244"


@pytest.mark.parametrize(("sts", "mm"), [(12, "5.4"), (8, "8.2")])
def test_half_a_loop_round_a_rod(sts: int, mm: str) -> None:
    """Rule R45's house figures: about 5.4 mm at 12 stitches to 10 cm and 8.2 mm at 8."""
    assert rounded(half_loop_mm(Fraction(sts)), 1) == mm


def test_the_root_is_cut_off_and_never_too_large() -> None:
    """The square of a root falls short of the value by less than its last decimal allows."""
    assert 0 <= 2 - root(Fraction(2)) ** 2 < Fraction(3, 10**9)


def test_the_number_of_the_circle_lies_between_archimedes_bounds() -> None:
    """The constant lies between 223/71 and 22/7 (Archimedes, Measurement of a Circle)."""
    assert Fraction(223, 71) < PI < Fraction(22, 7)
