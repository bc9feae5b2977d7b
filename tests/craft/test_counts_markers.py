"""Counts between markers, and rows that turn before their end."""

from __future__ import annotations

import pytest

from counterpane.craft.counts import (
    UNPROVED,
    Progression,
    count,
    work,
)
from counterpane.craft.counts.needle import Amount, Needle
from counterpane.craft.counts.stuck import Stuck
from counterpane.craft.counts.walking import walk_row
from counterpane.craft.rows.tree import (
    CastOn,
    Group,
    Hold,
    IntoOne,
    Marker,
    Node,
    OpenRepeat,
    Place,
    Turn,
    Work,
)
from counterpane.craft.trace import trace

from .handmade import KNIT, PLACE, REMOVE, SLIP, TO_MARKER, misfit_of
from .small_vocabulary import VOCABULARY

HERE = Place(1, 5)


def test_rows_worked_stitch_for_stitch_keep_the_markers() -> None:
    """Plain rows carry the segments along, turned round with the work."""
    rows = [
        (Work("k", 2), PLACE, Work("k", 3), PLACE, KNIT),
        (KNIT,),
        (Work("k", 4), OpenRepeat((Work("p"),), 3), Work("k", 3)),
    ]
    assert [step.segments for step in work(rows, 9, VOCABULARY)] == [(4, 3, 2), (2, 3, 4), (4, 3, 2)]


def test_rounds_do_not_turn_the_markers_round() -> None:
    """In the round the segments are met in the order in which they were worked."""
    (step,) = work([(Work("k", 2), PLACE, KNIT)], 9, VOCABULARY, ["round"])
    assert step.segments == (2, 7)


def test_one_segment_may_stay_open() -> None:
    """With one segment of unknown width the multiple is derived through the markers."""
    rows = [
        (Work("k", 5), PLACE, KNIT),
        (OpenRepeat((Work("k", 2), Work("p", 2)), 0, marker=True), SLIP, KNIT),
    ]
    chain = count(rows, VOCABULARY)
    assert (chain.starts, chain.weights) == ((Progression(4, 1, 9),), (4, 1))


def test_a_marker_not_reached_leaves_stitches() -> None:
    """Two stitches before a marker at five leave three."""
    slip = Marker("slip", place=HERE)
    misfit = misfit_of([(Work("k", 5), PLACE, KNIT), (KNIT,), (Work("k", 2), slip, KNIT)], 9)
    assert (misfit.slug, misfit.row, misfit.left, misfit.needs) == ("row-leaves-stitches", 2, 3, None)
    assert misfit.place == HERE


def test_segments_that_never_fit_do_not_join() -> None:
    """A fixed segment of 5 never holds pairs: the rows do not join, whatever the cast-on."""
    rows = [(KNIT, PLACE, CastOn(5)), (OpenRepeat((Work("k", 2),), 0, marker=True), SLIP, KNIT)]
    misfit = count(rows, VOCABULARY).misfit
    assert misfit is not None
    assert (misfit.slug, misfit.row) == ("rows-do-not-join", 1)


def test_a_row_that_moves_stitches_without_a_word_loses_the_markers() -> None:
    """The count stays exact; whoever counts to a marker afterwards is not followed."""
    rows = [(Work("k", 5), PLACE, KNIT), (OpenRepeat((Work("k"), Work("kfb"))),), (TO_MARKER, SLIP, KNIT)]
    steps = work(rows, 8, VOCABULARY)
    assert [step.after for step in steps] == [8, 12, None]
    assert steps[2].misfit is not None
    assert steps[2].misfit.slug == UNPROVED
    assert work([*rows[:2], (SLIP, KNIT)], 8, VOCABULARY)[2].misfit is not None
    assert work([*rows[:2], (PLACE, KNIT)], 8, VOCABULARY)[2].after == 12


def test_markers_placed_in_a_repeat_are_followed_from_a_known_count() -> None:
    """Eight stitches take four of them; of any number of stitches only the stitches are known."""
    rows = [(OpenRepeat((Work("k", 2), PLACE)),), (KNIT,)]
    assert [step.segments for step in work(rows, 8, VOCABULARY, ["round", "round"])] == [(2, 2, 2, 2, 0)] * 2
    assert count(rows, VOCABULARY).starts == (Progression(2, 0, 2),)
    assert count([rows[0], (TO_MARKER, SLIP, KNIT)], VOCABULARY).starts == ()


@pytest.mark.parametrize(
    ("row", "before", "after"),
    [
        (OpenRepeat((Group((Work("k"), PLACE), 2),)), 8, 8),
        (OpenRepeat((Work("k", 2), PLACE), last=(Work("kfb"),)), 9, 10),
        (OpenRepeat((Work("k"), Work("p"), Work("k"), PLACE)), 3 * 501, 3 * 501),
    ],
)
def test_what_places_too_many_markers_or_in_brackets_is_counted_only(row: Node, before: int, after: int) -> None:
    """The stitches are exact; where a marker hangs is not known, nor where one hangs that is placed beside them."""
    steps = work([(row,), (Work("k"), PLACE, KNIT)], before, VOCABULARY)
    assert [step.after for step in steps] == [after, after]
    assert [step.segments for step in steps] == [(), ()]


def test_two_thousand_stitches_and_markers_of_a_repeat_are_followed() -> None:
    """Three stitches and a marker, five hundred times."""
    (step,) = work([(OpenRepeat((Work("k"), Work("p"), Work("k"), PLACE)),)], 1500, VOCABULARY, ["round"])
    assert step.segments == (3,) * 500 + (0,)


def test_nothing_is_passed_over_a_marker_that_a_repeat_places() -> None:
    """Behind the marker no stitch lies yet, and that is told where the pass-over stands."""
    misfit = misfit_of([(OpenRepeat((Work("k", 2), PLACE, Work("psso", place=Place(1, 8)))),)], 4)
    assert (misfit.slug, misfit.place, misfit.asked, misfit.left) == ("row-runs-short", Place(1, 8), 2, 0)


def test_a_marker_behind_the_last_stitch_stays() -> None:
    """Placed at the end of a round and not slipped in the next, it hangs there with no stitch behind it."""
    steps = work([(Work("k", 5), PLACE, KNIT), (Work("k", 5),)], 5, VOCABULARY, ["round", "round"])
    assert [step.segments for step in steps] == [(5, 0), (5, 0)]


def test_a_repeat_to_a_marker_keeps_what_comes_before_it() -> None:
    """Of five stitches before the marker two are knitted together after the repeat, however many follow."""
    rows = [(Work("k", 5), PLACE, KNIT), (OpenRepeat((Work("p"),), None, marker=True), Work("k2tog"), SLIP, KNIT)]
    assert work(rows, 9, VOCABULARY, ["round", "round"])[1].segments == (4, 4)


def test_a_square_from_the_centre_grows_between_its_markers() -> None:
    """Four markers placed in a repeat: each quarter of the next round takes four stitches and leaves six."""
    quarter = (Work("k"), Work("yo"))
    rows = [
        (OpenRepeat((*quarter, *quarter, PLACE), 0),),
        (Group((*quarter, OpenRepeat((Work("k"),), 1, marker=True, plain=True), *quarter, SLIP), 4),),
    ]
    assert [step.after for step in work(rows, 8, VOCABULARY, ["round", "round"])] == [16, 24]
    assert [step.after for step in trace(rows, 8, VOCABULARY, ["round", "round"]).steps] == [16, 24]


def test_a_marker_that_ends_the_round_need_not_be_placed() -> None:
    """Slipped after the last stitch it changes nothing; among stitches nobody knows where it hangs."""
    assert work([(KNIT, SLIP)], 8, VOCABULARY)[0].after == 8
    misfit = misfit_of([(Work("k", 3), Marker("slip", place=HERE), KNIT)], 8)
    assert (misfit.slug, misfit.place) == (UNPROVED, HERE)


def test_nobody_works_to_a_marker_that_was_not_placed() -> None:
    """The repeat that counts to it is named."""
    misfit = misfit_of([(OpenRepeat((Work("k"),), marker=True, place=HERE), KNIT)], 8)
    assert (misfit.slug, misfit.place) == (UNPROVED, HERE)


def test_a_thousand_markers_are_followed_and_no_more() -> None:
    """One stitch before each of them, and the place of the one too many is told."""
    row = (Work("k"), PLACE) * 1000
    assert work([row], 1000, VOCABULARY, ["round"])[0].segments == (1,) * 1000 + (0,)
    misfit = misfit_of([(*row, Marker("place", place=HERE))], 1000)
    assert (misfit.slug, misfit.place) == (UNPROVED, HERE)


@pytest.mark.parametrize(
    ("row", "kept"),
    [
        ((Work("k", 9),), True),
        ((Work("k", 5), Work("p", 4)), True),
        ((Group((Work("p"), Work("k", 2)), 3),), True),
        ((OpenRepeat((Work("k"), Work("p")), 1), Work("k")), True),
        ((OpenRepeat((Work("k"),), last=(Work("p"),)),), False),
        ((Work("k2tog"), Work("yo"), KNIT), False),
        ((Group((Work("k2tog"), Work("yo")), 2), Work("k", 5)), False),
        ((Hold(1), Work("k", 1), Work("k", held=True), KNIT), False),
        ((IntoOne((Work("k"),)), KNIT), False),
    ],
)
def test_markers_stay_where_every_stitch_becomes_one(row: tuple[Node, ...], kept: bool) -> None:
    """Knitted and purled stitches carry them along; what is moved, made, lost or worked twice does not."""
    steps = work([(Work("k", 4), PLACE, KNIT), row], 9, VOCABULARY, ["round", "round"])
    assert steps[1].misfit is None
    assert [step.segments for step in steps] == [(4, 5), (4, 5) if kept else ()]


def test_a_removed_marker_joins_its_segments() -> None:
    """After it is taken off, the stitches are one segment."""
    rows = [(Work("k", 5), PLACE, KNIT), (KNIT,), (TO_MARKER, REMOVE, KNIT)]
    assert work(rows, 9, VOCABULARY)[2].segments == ()


def test_a_row_names_what_it_meets_or_slips_it() -> None:
    """A marker at the stop of a repeat is slipped, unless the row goes on with it."""
    first = (Work("k", 3), PLACE, Work("k", 4), PLACE, KNIT)
    named = (OpenRepeat((Work("k"),), 3, plain=True), SLIP, Work("k", 3))
    unnamed = (OpenRepeat((Work("k"),), 3, plain=True), Work("k", 3), PLACE)
    assert work([first, named], 9, VOCABULARY)[1].segments == (3, 4, 2)
    assert work([first, unnamed], 9, VOCABULARY)[1].segments == (0, 3, 4, 2)


def test_a_row_is_turned_unless_it_is_said_to_be_a_round() -> None:
    """The seven stitches worked last are met first."""
    assert walk_row(Needle.holding(9), (Work("k", 2), PLACE, KNIT), VOCABULARY).left == (Amount(7), Amount(2))


TO_LAST_4 = OpenRepeat((Work("k"),), 4, plain=True)


@pytest.mark.parametrize(
    ("first", "row"),
    [
        ((TO_LAST_4, PLACE, Work("k", 4)), (Work("k", 5, place=HERE), KNIT)),
        ((TO_LAST_4, PLACE, Work("k", 4)), (OpenRepeat((Work("k"), Work("kfb")), 0, place=HERE), PLACE)),
        ((Work("k", 4), PLACE, KNIT), (OpenRepeat((Work("k"),), 5, plain=True, place=HERE), Work("k", 5))),
        ((KNIT,), (OpenRepeat((Work("psso"), Work("k", 2)), 3, plain=True, place=HERE), Work("k", 3))),
    ],
)
def test_what_is_not_followed_has_a_place(first: tuple[Node, ...], row: tuple[Node, ...]) -> None:
    """What may or may not reach a marker, or be worked at all, is named where it stands."""
    needle = walk_row(Needle.any_count(), first, VOCABULARY, in_round=True)
    with pytest.raises(Stuck) as told:
        walk_row(needle, row, VOCABULARY)
    assert (told.value.slug, told.value.place) == (UNPROVED, HERE)


@pytest.mark.parametrize(
    "row",
    [
        (Work("k", 6), KNIT),
        (OpenRepeat((Work("k"),), 7, plain=True), Work("k", 7)),
        (OpenRepeat((Work("k"), Work("kfb"))), PLACE),
    ],
)
def test_what_depends_on_where_a_marker_hangs_is_proved_at_a_count_only(row: tuple[Node, ...]) -> None:
    """With a segment of unknown width at either end, the row may or may not reach the marker."""
    rows = [(OpenRepeat((Work("k"),), 5, plain=True), PLACE, Work("k"), PLACE, Work("k", 4)), (KNIT,), row]
    turned = [rows[0], row] if row[0] == OpenRepeat((Work("k"),), 7, plain=True) else rows
    assert count(turned, VOCABULARY).proved_at_count_only


def test_a_row_too_long_for_its_segments_runs_short() -> None:
    """Carried over the markers, ten stitches are not there."""
    misfit = misfit_of([(Work("k", 3), PLACE, KNIT), (Work("k", 4), Work("p", 6, place=Place(1, 5)))], 8)
    assert (misfit.slug, misfit.place, misfit.left) == ("row-runs-short", Place(1, 5), 4)


def test_unworked_stitches_wait_and_are_counted() -> None:
    """A short row and its way back leave all stitches on the needles; the next row works them all."""
    rows = [(OpenRepeat((Work("k"),), 5, plain=True), Turn()), (OpenRepeat((Work("p"),), 0, plain=True),), (KNIT,)]
    assert [(step.before, step.after) for step in work(rows, 20, VOCABULARY)] == [(20, 20)] * 3
    assert count(rows, VOCABULARY).starts == (Progression(1, 0, 5),)


def test_a_turned_row_can_go_no_further_than_its_edge() -> None:
    """After 5 stitches and a turn only 5 can be worked back."""
    misfit = misfit_of([(Work("k", 5), Turn()), (Work("p", 6),)], 20)
    assert (misfit.slug, misfit.row, misfit.needs) == ("row-runs-short", 1, None)


def test_the_next_row_works_past_an_earlier_turn() -> None:
    """Short rows that grow reach into the stitches that waited."""
    rows = [
        (Work("k", 8), Turn()),
        (Work("p", 4), Turn()),
        (Work("k", 6), Turn()),
        (OpenRepeat((Work("p"),), 0, plain=True),),
    ]
    assert [step.after for step in work(rows, 20, VOCABULARY)] == [20] * 4


def test_turns_in_a_group_are_worked_as_written() -> None:
    """Two short rows in brackets are two short rows."""
    row = (Group((Work("k", 3), Turn()), 2), KNIT)
    assert work([row], 9, VOCABULARY)[0].after == 9


def test_a_repeat_that_places_markers_gives_up_those_that_hang_there() -> None:
    """Behind a marker at four stitches one is placed after every second: all twenty stitches are worked."""
    rows = [(Work("k", 4), PLACE, KNIT), (OpenRepeat((Work("k", 2), PLACE), 0),), (KNIT,)]
    assert [step.after for step in work(rows, 20, VOCABULARY)] == [20, 20, 20]
    assert [step.after for step in trace(rows, 20, VOCABULARY).steps] == [20, 20, 20]


def test_stitches_that_surely_lie_before_a_marker_are_worked_at_any_count() -> None:
    """Two at least lie before it, and two are asked for, before the rest."""
    rows = [(Work("k", 2), TO_LAST_4, PLACE, Work("k", 4)), (Work("p", 2), KNIT)]
    assert count(rows, VOCABULARY, ("round", "round")).starts == (Progression(1, 0, 6),)


def test_a_marker_already_slipped_is_given_up_with_those_to_come() -> None:
    """A repeat that places markers loses sight of the next one, and of the one behind it too."""
    rows = [(Work("k", 3), PLACE, Work("k", 4), PLACE, KNIT), (TO_MARKER, SLIP, OpenRepeat((Work("k", 2), PLACE)))]
    step = work(rows, 11, VOCABULARY, ["round", "round"])[1]
    assert (step.after, step.segments) == (11, ())
