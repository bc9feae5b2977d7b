"""Numbers and shapes that mean nothing are refused where they come in, each with what would mean something."""

from __future__ import annotations

from fractions import Fraction

import pytest

from counterpane.craft.counts import Progression
from counterpane.craft.measures import exact
from counterpane.craft.sizing.bands import MOST_TRIED, balanced, change_at
from counterpane.craft.sizing.panels import least_sums
from counterpane.craft.sizing.swatch import root


@pytest.mark.parametrize(
    ("number", "why"),
    [("a dozen", "is not a decimal number"), ("Infinity", "of ordinary size"), ("1e99", "of ordinary size")],
)
def test_what_is_no_decimal_of_ordinary_size_is_no_number(number: str, why: str) -> None:
    """Words, endless numbers and numbers of a hundred digits measure nothing that is knitted."""
    with pytest.raises(ValueError, match=why):
        exact(number)


def test_nothing_below_0_has_a_root() -> None:
    """Widths come from areas, and no area lies below 0."""
    with pytest.raises(ValueError, match="below 0"):
        root(Fraction(-1))


@pytest.mark.parametrize("step", [0, 100_001])
def test_panels_repeat_over_at_least_one_stitch_and_over_no_table_without_end(step: int) -> None:
    """A panel that never grows fills no width, and one beyond the table is not looked at."""
    with pytest.raises(ValueError, match="1 to 100,000 stitches"):
        least_sums([step, 200_000])


def test_a_band_of_one_count_changes_by_what_it_lacks() -> None:
    """A band that is worked over 24 stitches alone takes two more as edge stitches at 26."""
    assert change_at(Progression.only(24), 26) == 2


def test_bands_far_from_the_target_are_balanced_within_bounds() -> None:
    """A band of a million stitches and a target of 100: the search ends, and the count comes as near as it looked."""
    found = balanced([Progression.only(10**6)], Fraction(100))
    assert (found.count, found.changes) == (100 + MOST_TRIED, (100 + MOST_TRIED - 10**6,))


def test_a_narrow_target_is_balanced_without_counts_below_1() -> None:
    """At three stitches a band that takes 4, 8, 12 is best worked over 4."""
    assert balanced([Progression(4, 0, 4)], Fraction(3)).count == 4
