"""Classes, needles and ways to weave in ends, from the facts that ship."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.measures import Gauge
from counterpane.craft.needles import cord_capacity
from counterpane.craft.yarn.classes import classes_of_gauge, classes_of_name, classes_of_tex, tex_between
from counterpane.craft.yarn.joins import joins_at
from counterpane.craft.yarn.needles import needle_advice
from counterpane.craft.yarn.weaving import Worn, weaving_of
from counterpane.library.yarn.yarn_facts import cords, weavings, yarn_classes
from counterpane.seeding.facts import facts_by_name

FACTS = facts_by_name()
CLASSES = yarn_classes(FACTS)
ROWS = 100


def numbers(found: object) -> list[int]:
    """Return the numbers of classes."""
    return [each.number for each in found]  # type: ignore[attr-defined]


@pytest.mark.parametrize(
    ("name", "expected"),
    [("double knitting", [3]), ("DK", [3]), ("8-ply", [3]), ("8 ply", [3]), ("Worsted", [4]), ("aran", [4]),
     ("light", [3]), ("baby", [1, 2]), ("12-ply", [4, 5]), ("gold", [])],
)  # fmt: skip
def test_a_name_of_the_trade_tells_its_classes(name: str, expected: list[int]) -> None:
    """In any country; a name that stands for two classes tells both."""
    assert numbers(classes_of_name(name, CLASSES)) == expected


@pytest.mark.parametrize(
    ("stitches", "expected"), [(22, [3]), ("23.5", [2, 3]), (18, [4]), ("20.2", [3, 4]), (5, [7]), (45, [])]
)
def test_a_gauge_tells_its_classes(stitches: str | int, expected: list[int]) -> None:
    """Over 10 cm in stocking stitch; a gauge between two classes belongs to both, one beyond all to none."""
    assert sorted(numbers(classes_of_gauge(Gauge(Fraction(stitches), Fraction(30)), CLASSES))) == expected


@given(st.fractions(min_value=20, max_value=5_000, max_denominator=20))
def test_each_thickness_lies_within_the_tex_of_its_classes(tex: Fraction) -> None:
    """What a thickness tells of a class, the class tells of the thickness."""
    for each in classes_of_tex(tex, CLASSES):
        low, high = tex_between((each,))
        assert (low is None or low <= tex) and (high is None or tex <= high)


def test_thicker_classes_have_fewer_metres_and_wraps() -> None:
    """Shop tables and wraps: the least of a class is no more than that of the class before it."""
    for thin, thick in pairwise(CLASSES):
        assert (thick.wraps[0] or 0) <= (thin.wraps[0] or 0)
        lows = [min((low for low, _ in each.metres if low is not None), default=0) for each in (thin, thick)]
        assert lows[1] <= lows[0]


def test_a_needle_for_a_gauge_and_a_cord_for_the_stitches() -> None:
    """22 stitches to 10 cm are class 3, on 3.75 to 4.5 mm; 153 of them lie with ease on 80 cm."""
    gauge = Gauge(Fraction(22), Fraction(30))
    advice = needle_advice(classes_of_gauge(gauge, CLASSES), gauge, 153, cords(FACTS))
    assert (advice.mm, advice.us, advice.cord_cm) == ((Fraction("3.75"), Fraction("4.5")), ("5", "7"), 80)


def test_the_stitches_lie_on_the_cord_that_is_named_and_not_on_a_shorter_one() -> None:
    """The shortest usual cord."""
    gauge = Gauge(Fraction(22), Fraction(30))
    for stitches in range(20, 460, 11):
        cord = needle_advice((), gauge, stitches, cords(FACTS)).cord_cm
        shorter = [each for each in cords(FACTS) if cord is None or each < cord]
        assert cord is None or cord_capacity(cord, gauge).least >= stitches
        assert all(cord_capacity(each, gauge).least < stitches for each in shorter)


@pytest.mark.parametrize(
    ("sorts", "superwash", "ways"),
    [
        (("animal hair",), False, 2),
        (("animal hair",), True, 3),
        (("animal hair",), None, 3),
        (("plant",), None, 3),
        (("animal hair", "synthetic"), False, 3),
    ],
)
def test_ends_are_woven_in_as_the_smoothest_fibre_asks(
    sorts: tuple[str, ...], superwash: bool | None, ways: int
) -> None:
    """Wool of which nobody knows whether it is superwash is taken to be."""
    found = weaving_of(Worn(sorts, superwash), weavings(FACTS))
    assert found and found.ways == ways


def test_the_ends_of_a_fibre_that_is_not_known_are_not_known() -> None:
    """None is no way."""
    assert weaving_of(Worn(None), weavings(FACTS)) is None


@given(st.integers(1, 12), st.fractions(min_value=1, max_value=30, max_denominator=5))
def test_a_ball_runs_out_in_the_row_that_takes_the_last_of_it(joins: int, ball: Fraction) -> None:
    """Up to the row before it does for all, with that row it does not; by the high figures it runs out sooner."""
    larger = ball * Fraction(6, 5)
    for place, join in enumerate(joins_at(joins, (ball, larger), Fraction(0), ROWS, Fraction), 1):
        assert join.first_row <= join.last_row <= ROWS
        assert join.first_row - 1 <= place * ball or join.first_row == 1
        assert join.first_row == ROWS or join.first_row > place * ball
        assert join.last_row == ROWS or join.last_row > place * larger
