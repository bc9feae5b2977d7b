"""The simulation: loops on needles, and where the working stops."""

from __future__ import annotations

from itertools import takewhile

import pytest
from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.rows.tree import (
    BindOff,
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
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.trace import CAST_ON, Halt, Loop, trace
from counterpane.craft.trace.loops import Needles

from .handmade import HUGE, KNIT, PLACE, SLIP, TO_MARKER, rows_of
from .small_vocabulary import VOCABULARY

LOOP = Loop(1, 0, "k", ())


def halt_of(rows: list[tuple[Node, ...]], before: int) -> Halt:
    """Return where the working stops."""
    (halt,) = (step.misfit for step in trace(rows, before, VOCABULARY).steps if step.misfit)
    return halt


@given(st.lists(st.sampled_from((LOOP, None)), max_size=12), st.integers(0, 14))
def test_loops_behind_the_last_marker_are_counted_one_by_one(right: list[Loop | None], many: int) -> None:
    """A needle holds so many to pass over as are met from its tip before a marker; one without an end holds any."""
    met = list(takewhile(lambda loop: loop is not None, reversed(right)))
    assert Needles(right=right).holds_behind(many) == (len(met) >= many)
    assert Needles(right=right, endless=True).holds_behind(many)


def test_loops_remember_the_stitch_and_the_loops_they_came_from(vocabulary: Vocabulary) -> None:
    """A decrease is drawn through two loops of the cast-on, a yarn-over through none."""
    traced = trace(rows_of("k2tog, yo, k1", vocabulary), 3, vocabulary)
    made = [(loop.stitch, loop.row, len(loop.parents)) for loop in reversed(traced.rows[0].loops)]
    assert made == [("k2tog", 0, 2), ("yo", 0, 0), ("k", 0, 1)]
    assert {loop.stitch for worked in traced.rows[0].worked for loop in worked.takes} == {CAST_ON}


def test_a_slipped_stitch_stays_the_loop_it_was(vocabulary: Vocabulary) -> None:
    """Slipped, a loop is moved and not made anew."""
    (worked,) = trace(rows_of("sl 1 wyif", vocabulary), 1, vocabulary).rows[0].worked
    assert (worked.takes, worked.manner) == (worked.leaves, ("wyif",))


def test_the_next_row_meets_the_last_stitch_first_unless_it_goes_round(vocabulary: Vocabulary) -> None:
    """Turned, the work is met from its last stitch; in the round from its first."""
    rows = rows_of("k1, p1, k tbl", vocabulary)
    flat, round_ = (trace(rows, 3, vocabulary, [side]).rows[0] for side in ("RS", "round"))
    assert [loop.stitch for loop in flat.loops] == ["k tbl", "p", "k"]
    assert [loop.stitch for loop in round_.loops] == ["k", "p", "k tbl"]


def test_sides_alternate_and_a_stated_side_is_kept(vocabulary: Vocabulary) -> None:
    """Row 1 is a RS row; a row stated as WS is worked so, and the next one turns from it."""
    rows = rows_of("knit / knit / knit", vocabulary)
    assert [row.side for row in trace(rows, 3, vocabulary).rows] == ["RS", "WS", "RS"]
    assert [row.side for row in trace(rows, 3, vocabulary, ["WS", None, None]).rows] == ["WS", "RS", "WS"]


def test_a_turn_changes_the_side_within_the_row(vocabulary: Vocabulary) -> None:
    """What is worked after a turn is worked on the other side."""
    (row,) = trace(rows_of("k2, turn, p2", vocabulary), 5, vocabulary).rows
    assert [worked.side for worked in row.worked] == ["RS", "RS", "WS", "WS"]


def test_a_pass_over_takes_the_stitch_behind_the_last(vocabulary: Vocabulary) -> None:
    """The slipped stitch goes, the decrease stays."""
    traced = trace(rows_of("sl 1, k2tog, psso", vocabulary), 3, vocabulary)
    *_, over = traced.rows[0].worked
    assert over.takes == traced.rows[0].worked[0].leaves
    assert [loop.stitch for loop in traced.rows[0].loops] == ["k2tog"]


def test_stitches_worked_into_one_take_it_once(vocabulary: Vocabulary) -> None:
    """The first stitch of the group takes the loop, all are drawn through it."""
    traced = trace(rows_of("(k1, yo, k1) in next st", vocabulary), 1, vocabulary)
    assert [(len(worked.takes), worked.into) for worked in traced.rows[0].worked] == [(1, 1), (0, 1), (0, 1)]
    assert [loop.parents for loop in traced.rows[0].loops] == [(-1,), (), (-1,)]


@pytest.mark.parametrize(
    ("parts", "before", "after"),
    [
        ((IntoOne((Work("k"), Group((Work("yo"), Work("k")), 2))),), 1, 5),
        ((IntoOne((IntoOne((Work("k"), Work("yo"))), CastOn(2))),), 1, 4),
        ((Hold(1, "front"), Work("k", 2), Work("p", held=True)), 3, 3),
        ((BindOff(2), KNIT), 6, 4),
        ((BindOff(None),), 6, 0),
        ((OpenRepeat((Work("k", 2), PLACE)),), 6, 6),
        ((OpenRepeat((Work("sl"), Work("k"), Work("psso"))),), 6, 3),
    ],
)
def test_every_kind_of_working_is_worked(parts: tuple[Node, ...], before: int, after: int) -> None:
    """Groups, cables, bind-offs and marked repeats leave the loops they should."""
    assert trace([parts], before, VOCABULARY).steps[0].after == after


@pytest.mark.parametrize(
    ("parts", "before", "slug"),
    [
        ((Work("k", 4),), 3, "row-runs-short"),
        ((Work("k", 4),), 5, "row-leaves-stitches"),
        ((OpenRepeat((Work("k", 3),)),), 2, "row-runs-short"),
        ((OpenRepeat((Work("k", 3),)),), 7, "repeat-does-not-fit"),
        ((BindOff(None),), 0, "row-runs-short"),
        ((Work("psso"), KNIT), 4, "row-runs-short"),
        ((Hold(2), Work("k", 2)), 4, "row-leaves-stitches"),
        ((Work("k", held=True),), 4, "row-runs-short"),
        ((Hold(1), Turn()), 4, "row-leaves-stitches"),
        ((IntoOne((Work("k"), Hold(1))),), 4, "group-uses-several"),
        ((Group((IntoOne(()),), 2),), 4, "group-uses-several"),
        ((OpenRepeat((Hold(1),)),), 4, "row-leaves-stitches"),
        ((OpenRepeat((Work("yo"),)),), 4, "repeat-uses-nothing"),
        ((OpenRepeat((Work("k"),), None), KNIT), 4, "two-open-repeats"),
        ((Group((KNIT,), 2),), 4, "repeat-inside-repeat"),
        ((OpenRepeat((Work("k"), Turn())),), 4, "unproved"),
        ((TO_MARKER,), 4, "unproved"),
        ((Work("k", 2), SLIP, Work("k", 2)), 4, "unproved"),
        ((CastOn(HUGE),), 0, "unproved"),
        ((Group((), HUGE),), 0, "unproved"),
        ((Group((Work("k", 0), PLACE), HUGE),), 0, "unproved"),
        ((*([Work("k"), PLACE] * 1100),), 1100, "unproved"),
    ],
)
def test_a_working_stops_with_the_slug_of_its_fault(parts: tuple[Node, ...], before: int, slug: str) -> None:
    """What cannot be worked is named as the checker names it; what is too large is not proved."""
    assert halt_of([parts], before).slug == slug


def test_the_place_is_that_of_the_first_stitch_that_fails(vocabulary: Vocabulary) -> None:
    """Inside a group it is the stitch in the group."""
    (step,) = trace(rows_of("k2, (k1, p2) twice, k4", vocabulary), 6, vocabulary).steps
    assert step.misfit == Halt("row-runs-short", 0, Place(1, 10))


def test_rows_after_a_stop_have_no_counts(vocabulary: Vocabulary) -> None:
    """Only the rows up to the stop were worked."""
    traced = trace(rows_of("knit / k3 / knit", vocabulary), 4, vocabulary)
    assert [(step.before, step.after) for step in traced.steps] == [(4, 4), (4, None), (None, None)]
    assert len(traced.rows) == 1


@pytest.mark.parametrize("rows", [[(KNIT,)], [()], []])
def test_a_piece_too_wide_is_not_simulated(rows: list[tuple[Node, ...]]) -> None:
    """A count of 10^18 is for the closed form; no loop is made for it."""
    steps = trace(rows, HUGE, VOCABULARY).steps
    assert [step.misfit.slug for step in steps if step.misfit] == ["unproved"] * len(rows)


def test_ten_thousand_nested_groups_stop_the_simulation() -> None:
    """A tree too deep is not followed, whether or not a stitch lies at its end."""
    node: Node = Work("k", 0)
    for _ in range(10_000):
        node = Group((node,), 2)
    assert halt_of([(node,)], 4).slug == "unproved"


def test_a_marker_in_the_way_of_a_named_stitch_stops_the_row() -> None:
    """A row that names markers does not slip others unasked."""
    first = (Work("k", 3), PLACE, KNIT)
    assert halt_of([first, (Work("k", 8), PLACE)], 8).slug == "row-runs-short"
    assert halt_of([first, (OpenRepeat((Work("k"), Work("kfb"))), PLACE)], 11).slug == "unproved"
    assert halt_of([first, (BindOff(None), PLACE)], 11).slug == "unproved"
    assert halt_of([first, (Work("k", 2), SLIP, KNIT)], 11).slug == "row-leaves-stitches"


def test_markers_are_lost_by_rows_that_move_stitches() -> None:
    """Whoever slips or counts to a marker afterwards is not followed; a new one changes nothing."""
    rows = [(Work("k", 3), PLACE, KNIT), (OpenRepeat((Work("kfb"),)),)]
    assert halt_of([*rows, (Work("k", 6), SLIP, KNIT)], 8).slug == "unproved"
    assert trace([*rows, (PLACE, KNIT)], 8, VOCABULARY).steps[-1].segments == ()


def test_a_marker_taken_off_is_gone() -> None:
    """Removed, it no longer cuts the stitches; slipped, it does."""
    rows = [(Work("k", 3), PLACE, KNIT), (TO_MARKER, Marker("remove"), KNIT)]
    assert [step.segments for step in trace(rows, 8, VOCABULARY).steps] == [(5, 3), ()]
    kept = [rows[0], (TO_MARKER, SLIP, OpenRepeat((Work("k"),), 0, plain=True, last=(Work("k"),)))]
    assert trace(kept, 8, VOCABULARY).steps[-1].segments == (3, 5)
