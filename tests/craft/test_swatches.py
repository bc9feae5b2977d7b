"""Swatches: what their reading leaves open against trying every error, several taken together, and the wash."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.measures import Gauge, Reading
from counterpane.craft.sizing import swatch

COUNTS = st.fractions(min_value=4, max_value=60, max_denominator=4)
WINDOWS = st.fractions(min_value=2, max_value=30, max_denominator=10)
READINGS = st.builds(
    Reading,
    st.fractions(min_value=Fraction(1, 10), max_value=1, max_denominator=10),
    st.fractions(min_value=Fraction(1, 20), max_value=1, max_denominator=20),
    st.just(1),
)
GAUGES = st.builds(Gauge, COUNTS, COUNTS, WINDOWS, st.none(), READINGS)
FACTORS = st.fractions(min_value=Fraction(8, 10), max_value=Fraction(12, 10), max_denominator=100)


@given(COUNTS, WINDOWS, READINGS, st.integers(1, 400))
def test_the_worst_case_is_the_worst_of_all_errors_tried(
    count: Fraction, window: Fraction, reading: Reading, worked: int
) -> None:
    """Every corner and the middle of both errors lie inside, and the ends are met."""
    signs = (-1, 0, 1)
    tried = [
        worked * (window + a * reading.window_error_cm) / (count + b * reading.count_error)
        for a, b in product(signs, repeat=2)
    ]
    assert swatch.worst_case(worked, count, window, reading) == (min(tried), max(tried))


def test_a_count_that_may_be_nothing_has_no_worst_case_above() -> None:
    """A quarter stitch read to a quarter may be no stitch at all."""
    least, most = swatch.worst_case(10, Fraction(1, 4), Fraction(1, 20))
    assert (least, most) == (0, None)


@given(st.fractions(min_value=20, max_value=200, max_denominator=2), COUNTS, READINGS, st.integers(1, 5))
def test_a_window_gives_the_tolerance_that_it_was_asked_for(
    width: Fraction, per_10: Fraction, reading: Reading, swatches: int
) -> None:
    """Read over that window, each of the swatches, the width is known to within a centimetre."""
    several = replace(reading, swatches=swatches)
    window = swatch.window_for(Fraction(1), width, per_10 / 10, several)
    spread = swatch.spread_squared(per_10 / 10 * window * swatches, window * swatches, several)
    assert abs(swatch.tolerance([(width, spread)]) - 1) < Fraction(1, 100)


@given(GAUGES, st.integers(2, 9))
def test_several_swatches_that_agree_are_known_better_by_a_root(gauge: Gauge, many: int) -> None:
    """The square of the uncertainty falls to one part in as many (D12), and the gauge stays."""
    together = swatch.pooled([gauge] * many)
    one = swatch.spread_squared(gauge.stitches, gauge.over_cm, gauge.reading)
    assert swatch.spread_squared(together.stitches, together.over_cm, together.reading) == one / many
    assert (together.per_cm, together.rows_per_cm) == (gauge.per_cm, gauge.rows_per_cm)


@given(GAUGES, GAUGES)
def test_two_swatches_give_a_gauge_between_theirs(one: Gauge, other: Gauge) -> None:
    """Their order does not matter."""
    both = swatch.pooled([one, other])
    assert min(one.per_cm, other.per_cm) <= both.per_cm <= max(one.per_cm, other.per_cm)
    assert both == swatch.pooled([other, one])


def test_swatches_of_two_textures_give_no_gauge() -> None:
    """A gauge counts only in its own fabric."""
    waffle = Gauge(Fraction(22), Fraction(30), texture="waffle")
    with pytest.raises(ValueError, match="one texture"):
        swatch.pooled([waffle, replace(waffle, texture="garter")])
    with pytest.raises(ValueError, match="one texture"):
        swatch.pooled([])


def test_what_only_some_swatches_say_of_the_wash_is_not_said_of_all() -> None:
    """Neither that they were washed, nor what they counted before."""
    plain = Gauge(Fraction(22), Fraction(30))
    washed = replace(plain, washed=True, before=Gauge(Fraction(21), Fraction(28)))
    assert (swatch.pooled([plain, washed]).washed, swatch.pooled([plain, washed]).before) == (None, None)
    assert swatch.pooled([washed, washed]).before == Gauge(Fraction(42), Fraction(56), Fraction(20), None, TWICE)


TWICE = Reading(swatches=2)


@given(GAUGES, FACTORS, FACTORS)
def test_the_factors_of_a_wash_are_found_again(gauge: Gauge, wide: Fraction, long: Fraction) -> None:
    """What was multiplied is read off the counts before and after (D10)."""
    assert swatch.wash_factors(swatch.washed(gauge, wide, long)) == (wide, long)
    assert swatch.wash_factors(gauge) is None
