"""Figures: ranges that are never bare points, and the arithmetic that keeps them so."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.behaviour.figures import STRENGTH, Figure, weaker

ENDS = st.tuples(st.fractions(1, 50), st.fractions(1, 50)).map(sorted).filter(lambda ends: ends[0] < ends[1])
FIGURES = st.builds(lambda ends, basis: Figure(*ends, "cm", basis, f"by {basis}"), ENDS, st.sampled_from(STRENGTH))


def test_a_weak_figure_cannot_be_one_value() -> None:
    """Only what is published may be a point."""
    with pytest.raises(ValueError, match="weak basis"):
        Figure(Fraction(2), Fraction(2), "cm", "common practice", "common practice, no source")
    assert Figure(Fraction(2), Fraction(2), "cm", "published", "a standard").low == 2


def test_the_ends_of_a_figure_stand_in_order() -> None:
    """The low end is not above the high end."""
    with pytest.raises(ValueError, match="above its high end"):
        Figure(Fraction(3), Fraction(2), "cm", "published", "a standard")


def test_an_end_that_is_not_known_sets_no_bound() -> None:
    """With no low end every small value may be meant."""
    figure = Figure(None, Fraction(2), "cm", "house", "house")
    assert (Fraction(-5) in figure, Fraction(3) in figure) == (True, False)


@given(FIGURES, st.fractions(-9, 9), st.integers(0, 10))
def test_so_many_times_a_figure_holds_so_many_times_each_of_its_values(
    figure: Figure, factor: Fraction, tenth: int
) -> None:
    """A value between the ends stays between them, for negative factors too."""
    assert figure.low is not None and figure.high is not None
    value = figure.low + (figure.high - figure.low) * Fraction(tenth, 10)
    if factor:
        assert value * factor in figure.times(factor, "cm")


@given(FIGURES, FIGURES, st.integers(0, 10), st.integers(0, 10))
def test_a_quotient_holds_each_quotient_of_two_values(one: Figure, other: Figure, here: int, there: int) -> None:
    """The range of a quotient is wide enough, and its basis the weaker one."""
    values = []
    for figure, tenth in ((one, here), (other, there)):
        assert figure.low is not None and figure.high is not None
        values.append(figure.low + (figure.high - figure.low) * Fraction(tenth, 10))
    quotient = one.over(other, "times")
    assert values[0] / values[1] in quotient
    assert quotient.basis == weaker(one.basis, other.basis)
    assert one.source in quotient.source and other.source in quotient.source
