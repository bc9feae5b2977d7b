"""Sizes: classes of counts, bands, panels, take-up, lengths and swatches against plain counting."""

from __future__ import annotations

from fractions import Fraction
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from counterpane.craft.counts import Progression
from counterpane.craft.measures import Gauge
from counterpane.craft.sizing import bands, classes, lengths, panels, swatch, takeup

CLASSES = st.builds(
    lambda of, plus, extra: Progression(of, (plus + extra * of) % of, max(1, plus % of + extra * of)),
    st.integers(1, 12),
    st.integers(0, 11),
    st.integers(1, 3),
)
TARGETS = st.fractions(min_value=0, max_value=200, max_denominator=4)


@given(CLASSES, TARGETS, st.integers(1, 6))
def test_the_nearest_counts_are_those_that_counting_finds(counts: Progression, target: Fraction, many: int) -> None:
    """They stand in order of distance, the larger of a tie first."""
    members = [count for count in range(1, 600) if counts.admits(count)]
    expected = tuple(sorted(members, key=lambda count: (abs(count - target), -count))[:many])
    assert classes.nearest(counts, target, many) == expected


@given(st.lists(CLASSES, min_size=2, max_size=3))
def test_what_classes_share_is_what_each_of_them_admits(some: list[Progression]) -> None:
    """No count is lost and none is added, up to beyond the least common multiple."""
    shared = classes.common(some)
    for count in range(1, 400):
        assert (shared is not None and shared.admits(count)) == all(one.admits(count) for one in some)


def test_a_fixed_count_shares_only_itself() -> None:
    """A part of 24 stitches fits a multiple of 6 and not one of 7."""
    fixed = Progression(0, 24, 24)
    assert classes.merged(fixed, Progression(6, 0, 6)) == fixed
    assert classes.merged(Progression(7, 0, 7), fixed) is None
    assert classes.nearest(fixed, Fraction(100), 3) == (24,)


@given(CLASSES, st.integers(-40, 40))
def test_shifting_a_class_shifts_its_members(counts: Progression, by: int) -> None:
    """Every count of at least one stitch moves by the same number."""
    moved = classes.shifted(counts, by)
    for count in range(1, 200):
        assert moved.admits(count) == counts.admits(count - by)


@given(CLASSES, CLASSES)
def test_a_correction_of_a_band_gives_it_a_common_count(one: Progression, other: Progression) -> None:
    """With the edge stitches added or dropped, the two bands share counts."""
    for change in bands.corrections(one, other):
        assert classes.merged(one, classes.shifted(other, change)) is not None


@settings(max_examples=40)
@given(st.lists(CLASSES, min_size=1, max_size=3), st.integers(40, 120))
def test_no_count_costs_less_than_the_balanced_one(some: list[Progression], target: int) -> None:
    """Trying every count gives the same least sum of distance and changes."""

    def cost(count: int) -> int:
        return abs(count - target) + sum(abs(bands.change_at(band, count)) for band in some)

    assert cost(bands.balanced(some, Fraction(target)).count) == min(map(cost, range(1, 200)))


@given(st.lists(st.integers(1, 15), min_size=1, max_size=2), st.integers(0, 80))
def test_a_sum_is_reachable_where_some_repeats_add_up_to_it(steps: list[int], total: int) -> None:
    """The table of least sums agrees with trying all repeats."""
    tried = product(range(total + 1), repeat=len(steps))
    sums = {sum(n * step for n, step in zip(repeats, steps, strict=True)) for repeats in tried}
    assert panels.reachable(steps, total) == (total in sums)


@given(st.integers(2, 300), st.data())
def test_increases_are_spread_evenly(stitches: int, data: st.DataObject) -> None:
    """Inner gaps differ by at most one, the end gaps by at most one, and no stitch is lost."""
    gaps = takeup.gaps_of_increases(stitches, data.draw(st.integers(1, stitches - 1)))
    inner = gaps[1:-1] or (0,)
    assert sum(gaps) == stitches
    assert max(inner) - min(inner) <= 1
    assert abs(gaps[0] - gaps[-1]) <= 1


def test_an_increase_needs_a_stitch_on_either_side() -> None:
    """As many increases as stitches are refused."""
    with pytest.raises(ValueError, match="at least one stitch"):
        takeup.gaps_of_increases(5, 5)


@given(st.integers(1, 14), st.integers(0, 1), st.fractions(min_value=1, max_value=300, max_denominator=3))
def test_the_nearest_stretch_is_the_one_that_counting_finds(period: int, parity: int, target: Fraction) -> None:
    """Of all whole repeats with the right parity none is nearer, and a tie goes to the longer."""
    rows = [n * period for n in range(1, 320) if n * period % 2 == parity]
    expected = min(rows, key=lambda row: (abs(row - target), -row), default=None)
    found = lengths.stretch(period, target, parity=parity)
    assert (found.rows if found else None) == expected


def test_a_part_repeat_comes_nearer_where_one_is_allowed() -> None:
    """246 rows are twenty repeats of twelve and half of one."""
    assert lengths.stretch(12, Fraction(246), (0, 6), 0) == lengths.Stretch(20, 6, 246)


@given(st.fractions(min_value=0, max_value=10_000, max_denominator=1000))
def test_a_root_is_rounded_to_the_nearest(value: Fraction) -> None:
    """Half a unit of the last place is never exceeded."""
    found = swatch.root(value, 3)
    half = Fraction(1, 2000)
    assert max(Fraction(0), found - half) ** 2 <= value <= (found + half) ** 2


def test_a_tolerance_sums_independent_swatches_by_squares() -> None:
    """Two halves from two swatches are known better than a whole from one."""
    read = swatch.spread_squared(Fraction(22), Fraction(10))
    half, whole = (Fraction(30), read), (Fraction(60), read)
    assert swatch.tolerance([half, half]) < swatch.tolerance([whole])


def test_fewer_rows_for_the_same_stitches_make_a_longer_piece() -> None:
    """At 18 by 28 instead of 22 by 30 a piece gets wider for its length."""
    before, after = Gauge(Fraction(22), Fraction(30)), Gauge(Fraction(18), Fraction(28))
    assert swatch.change_of_shape(before, after) == Fraction(22 * 28, 18 * 30)


def test_a_count_of_any_size_is_found_at_once() -> None:
    """Near a quintillion stitches the two counts on either side are named."""
    below = 10**18 - (10**18 - 3) % 7
    found = classes.nearest(Progression(7, 3, 10), Fraction(10**18), 2)
    assert sorted(found) == [below, below + 7]
