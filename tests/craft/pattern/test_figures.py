"""Figures as a knitter reads them."""

from fractions import Fraction

import pytest

from counterpane.craft.pattern.figures import (
    both,
    counted,
    gauge_text,
    inch,
    percent,
    span_in_inches,
    times_more,
    window,
)


def test_a_length_is_converted_exactly_and_rounded_once() -> None:
    """90 cm are 35.43 in, which are 35½ to a quarter; 69.55 cm are shown half up, and are 27.38 in."""
    assert both(Fraction(90)) == "90.0 cm (35½ in)"
    assert both(Fraction(6955, 100)) == "69.6 cm (27½ in)"


@pytest.mark.parametrize(
    ("cm", "said"),
    [("2.54", "1 in"), ("0.635", "¼ in"), ("0.3", "under ¼ in"), ("0", "0 in"), ("1.905", "¾ in"), ("0.3175", "¼ in")],
)
def test_inches_are_said_to_a_quarter(cm: str, said: str) -> None:
    """An inch is 2.54 cm by definition (1959); an eighth goes up, and what is less is said to be so."""
    assert inch(Fraction(cm)) == said


def test_a_span_of_one_length_is_said_once() -> None:
    """27.4 and 27.5 in are both 27½ to a quarter."""
    assert span_in_inches(Fraction("69.6"), Fraction("69.9")) == "27½ in"
    assert span_in_inches(Fraction("67.8"), Fraction("69.9")) == "26¾ to 27½ in"


@pytest.mark.parametrize(
    ("over_cm", "said"),
    [(Fraction(10), "10 cm"), (Fraction(1016, 100), "4 in"), (Fraction(254, 100), "1 in"), (Fraction(15), "15 cm")],
)
def test_a_window_is_said_in_the_unit_it_was_given_in(over_cm: Fraction, said: str) -> None:
    """Four inches are 10.16 cm and are not called that."""
    assert window(over_cm) == said


def test_a_gauge_stands_beside_the_other_units_window() -> None:
    """22 stitches over 10 cm are 22.352 over 4 in; ten centimetres and four inches are not the same."""
    told = gauge_text(Fraction(22), Fraction(30), Fraction(10))
    assert told == "22 sts and 30 rows over 10 cm (over 4 in: 22.4 sts and 30.5 rows)"


def test_a_stated_gauge_keeps_its_decimals() -> None:
    """20.5 stitches are not rounded to 21."""
    assert gauge_text(Fraction(41, 2), Fraction(42), Fraction(1016, 100)).startswith("20.5 sts and 42 rows over 4 in")


def test_small_repeats_are_words_and_do_not_run_into_row_numbers() -> None:
    """Once, five, and 45 as a figure."""
    assert [times_more(amount) for amount in (1, 5, 45)] == ["once more", "five times more", "45 times more"]


def test_amounts_agree_with_their_nouns() -> None:
    """One ridge, two ridges, 1,836 stitches."""
    assert (counted(1, "ridge"), counted(2, "ridge")) == ("1 ridge", "2 ridges")
    assert counted(1836, "stitch", "stitches") == "1,836 stitches"


def test_a_share_is_rounded_half_up() -> None:
    """25 of 1000 are 3 in 100."""
    assert percent(Fraction(25), 1000) == 3
