"""Loop length and pace worked out again: held against least squares and against the model that they feed."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.yarn.loops import weighed_loop_mm
from counterpane.craft.yarn.pace import worked_hours
from counterpane.craft.yarn.refits import Took, metres_of, refit, time_taken, worth, yarn_taken

ABOVE_0 = st.integers(1, 1_000_000).map(lambda hundredths: Fraction(hundredths, 100))
KNITS = st.lists(st.builds(Took, ABOVE_0, ABOVE_0), min_size=1, max_size=6)
OFF = st.integers(-1000, 1000).filter(bool).map(lambda thousandths: Fraction(thousandths, 1000))


def misfit(knits: list[Took], value: Fraction) -> Fraction:
    """Return the sum of squares of what is off, each weighed by the size of its knit."""
    return sum(((each.of - value * each.over) ** 2 / each.over for each in knits), Fraction(0))


@given(KNITS, OFF)
def test_no_other_figure_fits_better(knits: list[Took], off: Fraction) -> None:
    """It is the least of the weighed squares, which are worked out here and nowhere in the program."""
    found = refit(knits)
    assert found is not None
    assert misfit(knits, found.value) < misfit(knits, found.value + off)


@given(KNITS)
def test_it_lies_between_the_least_and_the_greatest_knit(knits: list[Took]) -> None:
    """Each knit counts as often as it is large: the figure is the mean of the rates over their sizes."""
    found = refit(knits)
    assert found is not None
    size = sum(each.over for each in knits)
    assert found.value == sum(each.of / each.over * (each.over / size) for each in knits)
    assert found.least <= found.value <= found.most
    assert (found.knits, found.apart_pct >= 0) == (len(knits), True)


@given(
    st.integers(1, 50_000),
    st.integers(0, 50_000),
    st.integers(0, 1_000),
    st.integers(1, 5_000).map(lambda tenths: Fraction(tenths, 10)),
)
def test_the_pace_gives_the_hours_back(plain: int, slower: int, rows: int, hours: Fraction) -> None:
    """The model of hours, put to the pace, has the hours of the knit as the middle of its ends."""
    took = time_taken(plain, slower, rows, hours)
    if took is None:
        assert hours * 3600 <= rows * 4
    else:
        assert sum(worked_hours(plain, slower, rows, took.rate)) / 2 == hours


@given(ABOVE_0, ABOVE_0, ABOVE_0)
def test_the_loop_is_that_of_a_weighed_swatch(grams: Fraction, tex: Fraction, loops: Fraction) -> None:
    """By metres first and by tex at once it comes to the same."""
    assert yarn_taken(metres_of(grams, tex), loops).rate == weighed_loop_mm(grams, tex, loops)


def test_two_blankets_worked_by_hand() -> None:
    """460 m over 40,000 loops and 250 m over 20,000: 710 m over 60,000 are 11 5/6 mm."""
    found = refit([yarn_taken(Fraction(460), Fraction(40_000)), yarn_taken(Fraction(250), Fraction(20_000))])
    assert found is not None
    assert (found.value, found.least, found.most) == (Fraction(71, 6), Fraction(23, 2), Fraction(25, 2))


def test_without_knits_there_is_no_refit() -> None:
    """Not known is not 0."""
    assert refit([]) is None


def test_one_knit_is_said_to_be_one() -> None:
    """What a refit is worth depends on how many knits it rests on."""
    assert "one pair of hands" in worth(1)
    assert "chance" in worth(2)
    assert "3 knits" in worth(3)
