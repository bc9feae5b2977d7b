"""Spans of sizes against plain comparing."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.sizing.spans import Span, beyond, joined, span_of

LENGTHS = st.fractions(min_value=1, max_value=300, max_denominator=16)
SPANS = st.tuples(LENGTHS, LENGTHS).map(lambda ends: Span(min(ends), max(ends)))


@given(st.lists(SPANS, min_size=1, max_size=4), LENGTHS)
def test_a_joined_span_holds_what_any_of_its_spans_holds(spans: list[Span], length: Fraction) -> None:
    """Nothing that one source says is left out."""
    whole = joined(spans)
    assert whole.most is not None
    if any(span.most is not None and span.least <= length <= span.most for span in spans):
        assert whole.least <= length <= whole.most


@given(LENGTHS, SPANS)
def test_a_size_goes_beyond_an_inside_by_what_is_left_over(size: Fraction, inside: Span) -> None:
    """What it is beyond the least inside, and beyond the most, lead back to both."""
    over = beyond(size, inside)
    assert over.most is not None
    assert (size - over.most, size - over.least) == (inside.least, inside.most)


def test_a_least_size_does_not_take_away_the_bound_of_others() -> None:
    """30 or more and 24 to 35 are 24 to 35; a least size alone has no bound."""
    least = Span(Fraction(30), None)
    assert joined([least, Span(Fraction(24), Fraction(35))]) == Span(Fraction(24), Fraction(35))
    assert joined([least]) == least


def test_a_tolerance_widens_a_span_either_way() -> None:
    """52 3/8 in, give or take 5/8 in, are 51 3/4 to 53 in."""
    found = span_of(["52.375"], "in", "0.625")
    assert (found.least / Fraction(127, 50), (found.most or 0) / Fraction(127, 50)) == (Fraction(207, 4), 53)


def test_what_is_no_span_is_refused() -> None:
    """One that runs backwards, one of nothing, an inside without a bound, a unit that is not known."""
    with pytest.raises(ValueError, match="smaller"):
        Span(Fraction(2), Fraction(1))
    with pytest.raises(ValueError, match="empty"):
        joined([])
    with pytest.raises(ValueError, match="no size"):
        beyond(Fraction(70), Span(Fraction(60), None))
    with pytest.raises(KeyError):
        span_of(["1"], "ell")
