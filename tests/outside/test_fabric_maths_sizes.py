"""Widths, lengths and gauge against worked vectors computed by an independent script (common practice, no source).

The vectors are B (widths, bands, panels, take-up), C (length and parity) and D (gauge). Those from memory are marked.
"""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest

from counterpane.craft.counts import Progression, count
from counterpane.craft.measures import Gauge, exact, half_up, inches
from counterpane.craft.sizing import bands, classes, lengths, panels, swatch, takeup
from counterpane.craft.stitches import Vocabulary

CM = Fraction(1)


def near(value: Fraction, decimals: str) -> bool:
    """Say whether a value agrees with a printed decimal to half a unit of its last digit."""
    printed = Decimal(decimals)
    return abs(value - Fraction(printed)) <= Fraction(1, 2 * 10 ** -printed.as_tuple().exponent)


def progression(of: int, plus: int, least: int | None = None) -> Progression:
    """Return the class of these counts, its least the first one with a whole repeat where not said."""
    least = of + plus if least is None else least
    return Progression(of, least % of, least)


def test_b03_the_nearest_counts_to_sixty_centimetres_at_22() -> None:
    """133, 129 and 137 stitches come nearest 132 in 4n + 21; 133 are 60.45 cm."""
    target = 60 * Gauge(Fraction(22), Fraction(30)).per_cm
    assert classes.nearest(progression(4, 21), target, 3) == (133, 129, 137)
    assert near(Gauge(Fraction(22), Fraction(30)).width(133), "60.45")


def test_b04_of_two_counts_as_near_the_larger_comes_first() -> None:
    """102 and 98 are both 2 off 100."""
    assert classes.nearest(progression(4, 2), Fraction(100), 2) == (102, 98)


def test_b05_and_b06_two_bands_without_a_common_count_and_their_corrections() -> None:
    """4n + 2 and 6n + 3 share no count; one stitch more or fewer on one side makes them."""
    assert classes.merged(progression(4, 2), progression(6, 3)) is None
    assert bands.corrections(progression(4, 2), progression(6, 3)) == (1, -1)


def test_b07_and_b08_two_stitches_more_make_the_bands_share_24n_plus_17() -> None:
    """8n + 1 and 12n + 3 share no count; with two stitches more they share 17 modulo 24."""
    one, other = progression(8, 1), progression(12, 3)
    assert classes.merged(one, other) is None
    assert bands.corrections(one, other) == (2, -2)
    merged = classes.merged(one, classes.shifted(other, 2))
    assert merged is not None
    assert (merged.plus, merged.of) == (17, 24)


def test_b09_a_change_that_halves_over_both_sides() -> None:
    """An even divisor and an odd difference never halve; an odd divisor always does."""
    assert bands.even_correction(progression(4, 2), progression(6, 3)) is None
    assert bands.even_correction(progression(9, 1), progression(6, 2)) == 2


def test_b10_three_bands_near_132() -> None:
    """135 stitches need one edge stitch in one band and beat 134 with two."""
    found = bands.balanced([progression(4, 2), progression(6, 3), progression(10, 5)], Fraction(132))
    assert (found.count, list(found.changes)) == (135, [1, 0, 0])


def test_b11_three_bands_that_share_few_counts() -> None:
    """12n + 7, 8n + 3 and 10n + 9 share 19 modulo 120, too wide a step for a target of 132."""
    merged = classes.common([progression(12, 7), progression(8, 3), progression(10, 9)])
    assert merged is not None
    assert (merged.plus, merged.of) == (19, 120)
    assert bands.share_few_counts(merged, Fraction(132))


def test_b12_the_least_sum_in_each_class() -> None:
    """Panels of 8, 14 and 10 never make an odd sum."""
    assert panels.least_sums([8, 14, 10]) == (0, None, 10, None, 20, None, 14, None)


def test_b13_six_and_nine_can_make() -> None:
    """Repeats of 6 and 9 make 21, never 20, and not 3."""
    assert [panels.reachable([6, 9], total) for total in (21, 20, 3)] == [True, False, False]


def test_b14_the_largest_sum_that_seven_and_twelve_cannot_make() -> None:
    """It is 65: the product less both."""
    assert panels.largest_missing([7, 12]) == 65


def test_b15_and_b16_panels_a_b_a_near_132() -> None:
    """Four and eight repeats give 133; 132 is never reached, for every sum is odd."""
    pair = panels.Panel(6, 2, least=2, times=2)
    middle = panels.Panel(8, 1, least=3)
    assert panels.arrange([pair, middle], 16, Fraction(132)) == panels.Arrangement((4, 8), 133)
    assert not panels.reachable([pair.step, middle.step], 132 - 16 - 4 - 1)


def test_b17_fourteen_increases_from_118_to_132() -> None:
    """The first gap is 4, the last 5, those between are 8 or 9, and all plain stitches are worked."""
    gaps = takeup.gaps_of_increases(118, 14)
    assert (gaps[0], gaps[-1], sorted(set(gaps[1:-1])), sum(gaps)) == (4, 5, [8, 9], 118)


def test_b18_fourteen_decreases_from_132_to_118() -> None:
    """104 stitches are worked plain and 118 are left."""
    gaps = takeup.gaps_of_decreases(132, 14)
    assert (sum(gaps), sum(gaps) + 14) == (104, 118)


def test_b19_more_decreases_than_pairs_are_refused() -> None:
    """20 stitches cannot become 9 in one row of k2tog."""
    with pytest.raises(ValueError, match="more decreases than pairs"):
        takeup.gaps_of_decreases(20, 11)


def test_b20_the_row_of_increases_joins(vocabulary: Vocabulary) -> None:
    """B17 written as a row takes 118 stitches alone and leaves 132."""
    row = takeup.row_of_changes(takeup.gaps_of_increases(118, 14), "m1")
    chain = count([row], vocabulary)
    assert (chain.starts, chain.after(118)) == ((Progression.only(118),), 132)


def test_b21_the_take_up_of_cables() -> None:
    """Nine crossings of six stitches draw in 14 to 18 stitches (from memory)."""
    assert takeup.cable_extra(6 * 9) == (14, 18)


def test_c01_eighty_centimetres_at_thirty_rows() -> None:
    """26 repeats of 8 rows between borders of 16 make 240 rows."""
    target = Gauge(Fraction(22), Fraction(30)).rows_per_cm * 80
    assert lengths.repeats_for(target, 16, 8, 16) == (26, 240)


def test_c02_no_number_of_repeats_ends_on_a_ws_row() -> None:
    """17 rows plus sixes are always odd."""
    assert lengths.repeats_for(Fraction(240), 16, 6, 16, 1) is None


def test_c03_one_more_border_row_makes_it_possible() -> None:
    """34 repeats of 6 rows, a border of 17 below and a closing row make 238 rows."""
    assert lengths.repeats_for(Fraction(240), 17, 6, 16, 1) == (34, 238)


def test_c04_an_odd_repeat_is_worked_an_even_number_of_times() -> None:
    """42 repeats of 5 rows make 242."""
    assert lengths.repeats_for(Fraction(240), 16, 5, 16) == (42, 242)


def test_c05_the_first_rows_of_an_odd_repeat_alternate() -> None:
    """They fall on RS and WS in turn."""
    assert list(lengths.first_sides(4, 5)) == ["RS", "WS", "RS", "WS"]


def test_c06_a_top_border_of_16_rows_brings_the_bind_off_to_a_rs_row() -> None:
    """After 240 rows the next is row 241."""
    assert lengths.side_of(240 + 1) == "RS"


def test_c07_of_two_lengths_as_near_the_longer_is_taken() -> None:
    """244 rows rather than 236 for 240."""
    assert lengths.repeats_for(Fraction(240), 16, 8, 12) == (27, 244)


def test_c08_rows_stay_exact() -> None:
    """45.5 cm at 28 rows are 127.4 rows."""
    assert exact("45.5") * Gauge(Fraction(22), Fraction(28)).rows_per_cm == Fraction(637, 5)


def test_d01_22_over_10_cm_in_inches() -> None:
    """5.588 to an inch and 22.352 over 4 in."""
    per_cm = Gauge(Fraction(22), Fraction(30)).per_cm
    assert (per_cm * inches(Fraction(1)), per_cm * inches(Fraction(4))) == (Fraction(1397, 250), Fraction(2794, 125))


def test_d02_5_5_to_an_inch_over_10_cm() -> None:
    """21.6535 stitches."""
    assert Gauge(exact("5.5"), Fraction(7), inches(Fraction(1))).per_cm * 10 == Fraction(2750, 127)


def test_d03_and_d04_the_worst_cases_of_132_stitches() -> None:
    """A quarter stitch and a millimetre leave 58.733 to 61.297 cm."""
    low, high = swatch.worst_case(132, Fraction(22), Fraction(10))
    assert near(low, "58.733")
    assert high is not None
    assert near(high, "61.297")


def test_d05_and_d06_the_uncertainty_of_sixty_centimetres() -> None:
    """0.5244 cm is the standard uncertainty, 1.0487 cm the tolerance."""
    assert near(60 * swatch.root(swatch.spread_squared(Fraction(22), Fraction(10)), 8), "0.5244")
    assert near(swatch.tolerance([(60 * CM, swatch.spread_squared(Fraction(22), Fraction(10)))]), "1.0487")


def test_d07_the_window_for_half_a_centimetre() -> None:
    """21 cm of swatch are needed on 60 cm at 22."""
    assert near(swatch.window_for(Fraction(1, 2), Fraction(60), Fraction(22, 10)), "20.975")


def test_d08_the_same_width_at_18() -> None:
    """133 stitches at 22 become 109 or 105 at 18, the target 108.82."""
    before, after = Gauge(Fraction(22), Fraction(30)), Gauge(Fraction(18), Fraction(25))
    assert swatch.regauged(progression(4, 21), 133, before, after, 2) == (109, 105)
    assert near(before.width(133) * after.per_cm, "108.82")


def test_d09_the_same_count_at_18() -> None:
    """133 stitches measure 73.89 cm."""
    assert Gauge(Fraction(18), Fraction(25)).width(133) == Fraction(665, 9)


def test_d10_a_wash_that_shrinks() -> None:
    """21 by 28 becomes 22.105 by 30.435."""
    after = swatch.washed(Gauge(Fraction(21), Fraction(28)), exact("0.95"), exact("0.92"))
    assert (after.stitches, after.rows) == (Fraction(420, 19), Fraction(700, 23))


def test_d11_a_gauge_of_nothing_is_refused() -> None:
    """No stitches over 10 cm is no gauge."""
    with pytest.raises(ValueError, match="gauge must be above 0"):
        Gauge(Fraction(0), Fraction(30))


def test_d12_three_swatches_averaged() -> None:
    """The uncertainty falls to 0.5774 of one."""
    assert near(half_up(swatch.averaged(3), Fraction(1, 10_000)), "0.5774")
