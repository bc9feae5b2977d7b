"""Yarn against vectors E03 to E14, which an independent script computed, and published yarn figures.

E01, E02 and E15 stand with the openings. The constants 5.3 and 4.1 are from memory: what is held is the arithmetic.
"""

from fractions import Fraction

import pytest

from counterpane.craft.measures import shown
from counterpane.craft.rows.instructions import read_text
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.tails import tail_by_width
from counterpane.craft.yarn.balls import balls
from counterpane.craft.yarn.loops import (
    FULL,
    STRAND_OF_A_SLIP,
    WET,
    grams_per_m2,
    loop_mm,
    loops_per_cm2,
    metres_per_m2,
    weighed_loop_mm,
)
from counterpane.craft.yarn.sizing import NotEnoughYarn, SizeLaw
from counterpane.craft.yarn.tally import tally_rows

TENTH = Fraction(1, 10)


def test_580_metres_in_balls_of_115_with_a_tenth_over() -> None:
    """E07: 638 m are 5.55 balls, so 6."""
    assert balls(Fraction(580), Fraction(115), TENTH) == 6


def test_two_colours_are_rounded_each_by_itself() -> None:
    """E08: 290 m twice are 3 and 3 balls."""
    assert [balls(Fraction(290), Fraction(115), TENTH)] * 2 == [3, 3]


def test_an_exact_fit_stays_exact() -> None:
    """E09: 575 m in balls of 115 m are 5, and with nothing over no sixth."""
    assert balls(Fraction(575), Fraction(115)) == 5


def test_the_mass_of_a_square_metre_at_22_stitches() -> None:
    """E11: 5.3 times 220 are 1166 m, which at 435 tex are 507.21 g."""
    metres = metres_per_m2(Fraction(22), loop_mm(Fraction(22)))
    assert metres == 1166
    assert grams_per_m2(metres, Fraction(435)) == Fraction("507.21")


def test_both_gauges_give_the_metres_of_a_square_metre() -> None:
    """E03's 1189 m/m2 are 22 stitches by 29 rows of loops of 4.1 widths."""
    assert metres_per_m2(Fraction(22), loop_mm(Fraction(22)), Fraction(29)) == 1189


@pytest.mark.parametrize(("widths", "tail"), [(3, 195), (4, 255)])
def test_a_long_tail_of_132_stitches(widths: int, tail: int) -> None:
    """E12: 3 to 4 widths of 60 cm and 15 cm."""
    width = Fraction(132) / 22 * 10
    assert tail_by_width(width, Fraction(widths), Fraction(15)) == tail


def test_the_loop_of_a_weighed_swatch() -> None:
    """E14: 3.0 g of 435 tex in 400 stitches are 17.241 mm a loop."""
    assert shown(weighed_loop_mm(Fraction(3), Fraction(435), Fraction(400)), 3) == "17.241"


def test_the_strand_of_a_slipped_stitch_and_the_ratio_of_the_constants() -> None:
    """E15: 0.244 loops; 5.3 to 4.1 is 1.293."""
    assert (shown(STRAND_OF_A_SLIP, 3), shown(WET.courses / WET.wales, 3)) == ("0.244", "1.293")


def test_a_loop_of_half_a_centimetre_fully_relaxed() -> None:
    """V10, GATE Textile Engineering, 2015, question 54: Kc 5.5 and Kw 4.2 give 92.4, so 92 loops to the cm2."""
    density = loops_per_cm2(Fraction(1, 2))
    assert density == Fraction("92.4") and int(density) == 92


@pytest.mark.parametrize(
    ("stitches", "loop", "rows", "metres"),
    [
        (18, "2.333", "23.6", 990),
        (20, "2.100", "26.2", 1100),
        (22, "1.909", "28.8", 1210),
        (24, "1.750", "31.4", 1320),
        (28, "1.500", "36.7", 1540),
    ],
)
def test_the_fully_relaxed_table_of_gauges(stitches: int, loop: str, rows: str, metres: int) -> None:
    """V21 and its table, derived from the constants of GATE 2015: loop, rows to 10 cm and metres to the m2."""
    cm = FULL.wales * 10 / stitches
    assert shown(cm, 3) == loop
    assert shown(FULL.courses * 10 / cm, 1) == rows
    assert metres_per_m2(Fraction(stitches), cm * 10, FULL.courses * 10 / cm) == metres


LAW = SizeLaw(area=Fraction(1189), edges=Fraction("8.2"), fixed=Fraction(4), shape=Fraction(4, 3))


def test_the_yarn_of_a_piece_of_60_by_80() -> None:
    """E03: 570.72 m of area, 4.92 m of edges and 4 m of ends are 579.64 m."""
    assert LAW.yarn(Fraction("0.6")) == Fraction("579.64")


def test_what_800_metres_make_with_a_tenth_kept() -> None:
    """E04: 0.6729 m."""
    assert shown(LAW.width(Fraction(800), TENTH), 4) == "0.6729"


def test_put_back_it_takes_the_800_metres() -> None:
    """E05: round trip, to the last of nine decimals of the root."""
    assert shown(LAW.yarn(LAW.width(Fraction(800), TENTH)) * (1 + TENTH), 4) == "800.0000"


def test_three_metres_do_not_do_for_four_of_ends() -> None:
    """E06: refused."""
    with pytest.raises(NotEnoughYarn, match="not enough yarn for the ends"):
        LAW.width(Fraction(3))


def test_a_bias_square_has_used_a_half_and_a_little_at_its_peak(vocabulary: Vocabulary) -> None:
    """E13: from 3 to 120 stitches and back to 3, 62/123 of the yarn is worked when 120 are reached."""
    up, down = "Row 1: k1, yo, k to end.", "Row 1: k1, k2tog, k to end."
    more, fewer = (read_text(text, vocabulary).rows[0].parts for text in (up, down))
    after = [row.after for row in tally_rows([more] * 117 + [fewer] * 117, 3, vocabulary)]
    assert (max(after), after[-1]) == (120, 3)
    assert Fraction(sum(after[:117]), sum(after)) == Fraction(62, 123)
