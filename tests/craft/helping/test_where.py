"""The truth keeps the true row, and questions end where rows are alike in all that can be seen."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from counterpane.craft.component import Component
from counterpane.craft.constructions import Plan
from counterpane.craft.fabric import from_rs, from_ws
from counterpane.craft.helping.narrowing import (
    NOT_SURE,
    ORDER,
    Answer,
    Question,
    alike,
    answer_of,
    left_by,
    next_question,
)
from counterpane.craft.helping.rows import worked_rows
from counterpane.craft.helping.seeing import Sight, sights
from counterpane.craft.helping.under import LETTERS, Under, in_letters, read, shortened
from counterpane.craft.rows.tree import Side
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.trace import trace
from craft.constructions.asking import planned

Starters = Mapping[str, Component]
BODIES = (
    "waffle",
    "garter",
    "stocking-stitch",
    "seed-stitch",
    "basket-weave",
    "old-shale",
    "eyelet-dots",
    "rope-cable",
)


@pytest.fixture(scope="module")
def pieces(starters: Starters, vocabulary: Vocabulary) -> list[tuple[Plan, tuple[Sight, ...]]]:
    """Return small blankets of several textures with what each row shows."""
    plans = [planned(starters, vocabulary, body, 40, 40) for body in BODIES]
    return [(plan, sights(plan, vocabulary)) for plan in plans]


def questioned(every: tuple[Sight, ...], truth: Sight) -> tuple[tuple[Sight, ...], int]:
    """Answer each question truly; return the rows that are left, and how many questions it took."""
    seen: dict[Question, Answer] = {}
    left = every
    while (asking := next_question(left, seen)) is not None:
        seen[asking.question] = answer_of(truth, asking.question)
        left = left_by(every, seen)
        assert truth in left and len(left) <= asking.worst
    return left, len(seen)


@settings(max_examples=120, deadline=None)
@given(data=st.data())
def test_the_truth_leaves_the_true_row_and_those_alike(
    pieces: list[tuple[Plan, tuple[Sight, ...]]], data: st.DataObject
) -> None:
    """For random rows of several textures; a length, which leaves several, is not asked where all else is known."""
    _, every = data.draw(st.sampled_from(pieces))
    truth = data.draw(st.sampled_from(every))
    left, asked = questioned(every, truth)
    assert truth in left and asked < len(ORDER)
    assert all(alike(truth, other) for other in left)


@pytest.mark.parametrize("body", BODIES)
def test_what_is_seen_is_what_lies_on_a_real_needle(starters: Starters, vocabulary: Vocabulary, body: str) -> None:
    """The whole piece worked loop by loop: the stitches below the needle, past the border, from the side that faces."""
    plan = planned(starters, vocabulary, body, 40, 40)
    rows = worked_rows(plan, 1, 10**6, vocabulary)
    traced = trace([row.row.parts for row in rows], rows[0].before, vocabulary, [row.row.side for row in rows])
    courses = from_rs(traced, vocabulary)
    for at, sight in enumerate(sights(plan, vocabulary)):
        facing = "WS" if rows[at].row.side == "RS" else "RS"
        course = courses[at] if facing == "RS" else from_ws(courses)[at]
        letters = "".join(LETTERS[look] for look in course)[plan.counts.sides + plan.counts.selvedge :]
        under = sight.needle
        assert (sight.row, under.facing, under.needle) == (at + 1, facing, letters[: len(under.needle)])
        assert len(under.needle) >= min(len(letters), 20)


def test_rows_that_are_left_together_look_alike_on_a_real_needle(starters: Starters, vocabulary: Vocabulary) -> None:
    """Seed stitch shows each row like the next from its own side: the count of repeats tells them apart."""
    plan = planned(starters, vocabulary, "seed-stitch", 40, 40)
    every = sights(plan, vocabulary)
    sizes = [len(questioned(every, truth)[0]) for truth in every]
    assert max(sizes) == 1


def test_every_row_is_found_in_three_questions(pieces: list[tuple[Plan, tuple[Sight, ...]]]) -> None:
    """Of all rows of all these blankets; two do for more than half of them."""
    many = [questioned(every, truth)[1] for _, every in pieces for truth in every]
    assert max(many) == 3
    assert sum(each <= 2 for each in many) * 2 > len(many)


@pytest.mark.parametrize(
    ("said", "under"),
    [
        ("RS: k2 p2 / p4", Under("RS", "kkpp", "pppp")),
        ("ws, k / cast-on", Under("WS", "k", "cast-on")),
        ("RS", Under("RS", "", "")),
        ("k2p2", Under(None, "kkpp", "")),
        ("/ p3", Under(None, "", "ppp")),
        ("", None),
        ("k2 / p2 / k2", None),
        ("left: k2", None),
    ],
)
def test_what_lies_under_the_needle_is_read_as_far_as_it_is_told(said: str, under: Under | None) -> None:
    """The side, a course, the course below it: each may be left out, and all of them is no answer."""
    assert read(said) == under


@given(
    st.sampled_from(["RS", "WS"]), st.text("kposx", min_size=1, max_size=9), st.text("kposx", min_size=1, max_size=9)
)
def test_what_lies_under_the_needle_is_read_back_the_same(facing: Side, needle: str, below: str) -> None:
    """As it is listed, so it may be typed; and with fewer stitches it still fits, with others it does not."""
    under = Under(facing, needle, below)
    assert read(under.said()) == under
    assert under.shows(Under(None, needle[:1], "")) and not under.shows(Under(facing, needle + "k", below))


def test_as_few_stitches_are_listed_as_tell_the_answers_apart() -> None:
    """Two courses that differ in their sixth stitch are listed with six, and all others with as many."""
    one, other = Under("RS", "kkkkkpkkkk", "cast-on"), Under("RS", "kkkkkkpkkk", "pppppppp")
    assert shortened([one, other]) == (Under("RS", "kkkk", "cast-on"), Under("RS", "kkkk", "pppp"))
    third = Under("RS", "kkkkkkkkkk", "pppppppp")
    assert [each.needle for each in shortened([one, other, third])] == ["kkkkkpk", "kkkkkkp", "kkkkkkk"]


def test_garter_on_garter_is_one_part(starters: Starters, vocabulary: Vocabulary) -> None:
    """Nothing shows where the border ends: its ridges are counted from the cast-on."""
    every = sights(planned(starters, vocabulary, "garter", 40, 40), vocabulary)
    assert {sight.part for sight in every} == {"bottom+body+top"}
    assert {sight.period for sight in every} == {2}
    assert every[-1].repeats == (len(every) - 1) // 2


def test_who_is_not_sure_loses_nothing(pieces: list[tuple[Plan, tuple[Sight, ...]]]) -> None:
    """All rows are left, and the question is not put again."""
    _, every = pieces[0]
    first = next_question(every, {})
    assert first is not None
    seen: dict[Question, Answer] = {first.question: NOT_SURE}
    again = next_question(every, seen)
    assert left_by(every, seen) == every
    assert again is not None and again.question != first.question


def test_a_length_a_little_off_keeps_the_row(pieces: list[tuple[Plan, tuple[Sight, ...]]]) -> None:
    """A tenth of the length, and a centimetre."""
    _, every = pieces[0]
    truth = every[-1]
    assert truth in left_by(every, {"length_cm": truth.cm * Fraction(11, 10)})
    assert truth not in left_by(every, {"length_cm": truth.cm / 2})


@pytest.mark.parametrize(
    ("said", "letters"),
    [("k2, p2", "kkpp"), ("k k p p", "kkpp"), ("K2P", "kkp"), ("cast-on", "cast-on"), ("k2 z", None), ("", "")],
)
def test_stitches_are_read_in_groups(said: str, letters: str | None) -> None:
    """Spaces and commas make no difference."""
    assert in_letters(said) == letters


def test_courses_too_wide_to_be_worked_loop_by_loop_are_not_looked_at(
    starters: Starters, vocabulary: Vocabulary
) -> None:
    """By hand: 910 metres at 22 to 10 cm are 200200 stitches, too many; rows and lengths are still told."""
    plan = planned(starters, vocabulary, "garter", 91_000, 2, sides=None, bottom=None, top=None)
    found = sights(plan, vocabulary)
    assert plan.counts.cast_on == 200_200
    assert {sight.needle.needle for sight in found} == {""}
    assert [sight.row for sight in found] == list(range(1, plan.sections[0].rows + 1))
