"""Stitches picked up along an edge, by closed form and one place after the other."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.constructions.picking import ROWS_OF_A_PLACE, Place, Stretch, dealt, rate, rate_in_words
from counterpane.craft.measures import half_up

PLACES = st.sampled_from(sorted(ROWS_OF_A_PLACE))
STRETCHES = st.lists(
    st.tuples(st.integers(2, 60), st.fractions(Fraction(1, 3), 1, max_denominator=30), PLACES), min_size=1, max_size=5
)


def along(told: list[tuple[int, Fraction, Place]]) -> list[Stretch]:
    """Return stretches of so many rows, each with its picks for a row."""
    return [Stretch(f"part {index}", rows, place, rows * per_row) for index, (rows, per_row, place) in enumerate(told)]


def walked(stretches: list[Stretch], picks: int) -> list[int]:
    """Walk up the edge row by row and pick up a stitch whenever a half of one more is needed, as a knitter does."""
    whole = sum((each.need for each in stretches), Fraction(0))
    done, reached, found = 0, Fraction(0), []
    for each in stretches:
        before = done
        for _ in range(each.rows):
            reached += each.need / each.rows * picks / whole
            while done + Fraction(1, 2) <= reached:
                done += 1
        found.append(done - before)
    return found


@given(STRETCHES)
def test_the_picks_of_each_stretch_are_those_of_a_walk_up_the_edge(told: list[tuple[int, Fraction, Place]]) -> None:
    """With places enough everywhere, sums rounded half up are what one row after the other comes to."""
    stretches = along([(rows, per_row, "row") for rows, per_row, _ in told])
    needs = [each.need for each in stretches]
    picks = int(half_up(sum(needs, Fraction(0))))
    room = [each.rows + picks for each in stretches]
    assert dealt(picks, needs, room) == tuple(walked(stretches, picks))


@given(STRETCHES, st.data())
def test_no_stretch_gets_more_picks_than_it_has_places(
    told: list[tuple[int, Fraction, Place]], data: st.DataObject
) -> None:
    """All picks are dealt out, and each stretch has room for its own."""
    stretches = along(told)
    places = [each.places for each in stretches]
    picks = data.draw(st.integers(0, sum(places)))
    found = dealt(picks, [each.need for each in stretches], places)
    assert sum(found) == picks
    assert all(0 <= count <= room for count, room in zip(found, places, strict=True))


def test_more_picks_than_places_are_refused() -> None:
    """Nothing is picked up in the air."""
    with pytest.raises(ValueError, match="4 picks in 3 places"):
        dealt(4, [Fraction(4)], [3])


@pytest.mark.parametrize(
    ("rows", "place", "picks", "words"),
    [
        (240, "row", 180, "3 stitches for every 4 rows: pick up 3 and leave one row out, 60 times"),
        (
            240,
            "row",
            176,
            "about 3 stitches for every 4 rows: pick up 2 and leave one row out, 16 times; "
            "pick up 3 and leave one row out, 48 times; evenly mixed",
        ),
        (240, "chain", 120, "1 stitch for every 2 rows, one in each chain"),
        (12, "ridge", 6, "1 stitch for every 2 rows, one in each ridge"),
        (12, "row", 4, "1 stitch for every 3 rows: one in every 3 rows, 4 times"),
    ],
)
def test_a_rate_is_said_as_a_knitter_keeps_it_in_mind(rows: int, place: Place, picks: int, words: str) -> None:
    """176 from 240 rows at 22 stitches and 30 rows: 3 for 4 is near, and the rest is spread; common practice."""
    assert rate_in_words(Stretch("body", rows, place, Fraction(picks), picks=picks)) == words


@given(st.integers(1, 400), st.integers(1, 400))
def test_the_runs_of_a_rate_come_to_its_picks_and_places(picks: int, more: int) -> None:
    """The numbers in the words, added up, are the picks and the places."""
    words = rate_in_words(Stretch("body", picks + more, "row", Fraction(picks), picks=picks))
    runs = [run.rsplit(", ", 1) for run in words.partition(": ")[2].removesuffix("; evenly mixed").split("; ")]
    many = [1 if times == "once" else int(times.split()[0]) for _, times in runs]
    sizes = [int(next(word for word in said.split() if word.isdigit())) for said, _ in runs]
    if runs[0][0].startswith("pick up"):
        assert sum(size * times for size, times in zip(sizes, many, strict=True)) == picks
        assert sum(many) == more
    else:
        assert sum(size * times for size, times in zip(sizes, many, strict=True)) == picks + more
        assert sum(many) == picks


def test_a_rate_has_at_most_four_rows() -> None:
    """22 stitches to 30 rows is 11 for 15, and 3 for 4 the nearest that one keeps in mind."""
    assert rate(176, 240) == Fraction(3, 4)


def test_a_stretch_without_picks_has_no_rate() -> None:
    """The piece of a sampler may be so small that a part of its edge gets none."""
    assert rate_in_words(Stretch("body", 4, "row", Fraction(1, 3), picks=0)) == "none"
