"""A row written out for one count is fixed and does the same as the row, by both roads."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from counterpane.craft.counts import Misfit, work
from counterpane.craft.counts.wellformed import within
from counterpane.craft.counts.writing_out import WrittenOut, stitch_by_stitch, write_out
from counterpane.craft.rows.read import read_row
from counterpane.craft.rows.say import say_row
from counterpane.craft.rows.tree import NOWHERE, BindOff, Group, IntoOne, Marker, Node, OpenRepeat, Place, Work
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.trace import trace
from counterpane.craft.trace.loops import Worked
from craft.random_rows import marker_rows, rows
from craft.random_rows import set_ups as marked_rows

Nodes = tuple[Node, ...]


def in_words(row: str, count: int, vocabulary: Vocabulary, earlier: WrittenOut | None = None) -> str:
    """Return a row in words, written out for a count."""
    out = write_out(read_row(row, vocabulary).parts, count, vocabulary, None, earlier)
    assert out.parts is not None
    return say_row(out.parts, vocabulary)


@pytest.mark.parametrize(
    ("row", "count", "written"),
    [
        ("k2, *p3, k2; rep from * to last st, k1", 133, "k2, [p3, k2] 26 times, k1"),
        ("*k2tog, yo; rep from * to last st, k1", 3, "k2tog, yo, k1"),
        ("knit", 133, "k133"),
        ("k3, p to last 3 sts, k3", 6, "k3, k3"),
        ("*k1; rep from * to end", 7, "k7"),
        ("*[k1, p1] twice; rep from * to end", 12, "[k1, p1] 6 times"),
        ("*k2, p2; rep from * to end, ending last rep k2", 14, "[k2, p2] 3 times, k2"),
        ("*k2, yo, k2tog; rep from * 3 times, k4", 20, "[k2, yo, k2tog] 4 times, k4"),
        ("bind off all sts", 9, "bind off all sts"),
        ("k2, pm, *k1, p1; rep from * to last 2 sts, k2", 10, "k2, pm, [k1, p1] 3 times, k2"),
    ],
)
def test_every_repeat_has_its_number(row: str, count: int, written: str, vocabulary: Vocabulary) -> None:
    """A beginner reads how often each repeat is worked; one that is worked once or not at all is no repeat."""
    assert in_words(row, count, vocabulary) == written


def test_a_repeat_to_a_marker_takes_the_stitches_of_its_section(vocabulary: Vocabulary) -> None:
    """Between markers that an earlier row placed, each section has a number of its own."""
    row = "[k to marker, sm] twice, p to end"
    for placed, count, written in (
        ("k6, pm, k10, pm, k to end", 20, "k4, sm, k10, sm, p6"),
        ("k6, pm, k4, pm, k to end", 14, "[k4, sm] twice, p6"),
    ):
        earlier = write_out(read_row(placed, vocabulary).parts, count, vocabulary)
        assert in_words(row, count, vocabulary, earlier) == written


def test_a_round_meets_the_markers_in_the_order_in_which_they_were_placed(vocabulary: Vocabulary) -> None:
    """Six, ten and four stitches lie before, between and behind the markers, round after round."""
    earlier = write_out(read_row("k6, pm, k10, pm, k to end", vocabulary).parts, 20, vocabulary, "round")
    again = write_out(read_row("[k to marker, sm] twice, p to end", vocabulary).parts, 20, vocabulary, "round", earlier)
    assert again.parts is not None
    assert say_row(again.parts, vocabulary) == "k6, sm, k10, sm, p4"


def test_a_row_after_a_turn_takes_the_stitches_worked_before_it(vocabulary: Vocabulary) -> None:
    """What a turn leaves on the other needle is not worked on the way back."""
    earlier = write_out(read_row("k12, turn", vocabulary).parts, 20, vocabulary)
    assert in_words("sl 1, p to end", 20, vocabulary, earlier) == "sl 1, p11"


def test_a_row_that_cannot_be_worked_names_the_nearest_counts(vocabulary: Vocabulary) -> None:
    """Nothing is written out; the misfit says which counts would do."""
    out = write_out(read_row("k2, *p3, k2; rep from * to end", vocabulary).parts, 133, vocabulary)
    assert out.parts is None and out.misfit is not None
    assert (out.misfit.slug, out.misfit.below, out.misfit.above) == ("repeat-does-not-fit", 132, 137)


def test_a_short_row_is_told_stitch_by_stitch(vocabulary: Vocabulary) -> None:
    """Groups are written out, and the same stitches side by side are counted together; a long row is not."""
    out = write_out(read_row("k2, *p3, k2; rep from * to last st, k1", vocabulary).parts, 13, vocabulary)
    single = stitch_by_stitch(out.parts or ())
    assert single is not None and say_row(single, vocabulary) == "k2, p3, k2, p3, k3"
    assert stitch_by_stitch(out.parts or (), most=3) is None


def test_it_is_told_how_often_each_repeat_is_worked(vocabulary: Vocabulary) -> None:
    """Over 13 the first repeat is worked twice, and the second over what it keeps of the row, three times."""
    parts = read_row("*k2, p1; rep from * to last 7 sts, k1, *p2; rep from * to end", vocabulary).parts
    assert write_out(parts, 13, vocabulary).times == (2, 3)


@pytest.mark.parametrize(("most", "told"), [(5, False), (6, True)])
def test_a_row_is_as_long_as_its_stitches_and_numbers(most: int, told: bool, vocabulary: Vocabulary) -> None:
    """Two stitches, a pair worked twice and one stitch are six to count along."""
    parts = read_row("k2, (p3, k2) twice, k1", vocabulary).parts
    assert (stitch_by_stitch(parts, most=most) is not None) is told


def test_a_row_that_fails_behind_a_marker_tells_where_and_with_what(vocabulary: Vocabulary) -> None:
    """The marker hangs after three of six: five of the three behind it cannot be worked."""
    marked = write_out(read_row("k3, pm, k3", vocabulary).parts, 6, vocabulary, "RS")
    failed = write_out(read_row("p to marker, sm, p5", vocabulary).parts, 6, vocabulary, "WS", marked)
    assert failed.misfit == Misfit("row-runs-short", 0, Place(1, 18), asked=5, left=3, has=6)


def worked(parts: Nodes, count: int, vocabulary: Vocabulary) -> list[tuple[Worked, ...]]:
    """Return all that is worked, stitch by stitch, without the places."""
    traced = trace([parts], count, vocabulary)
    return [tuple(replace(one, place=NOWHERE) for one in row.worked) for row in traced.rows]


@settings(max_examples=400, deadline=None)
@given(row=st.one_of(rows, marked_rows, marker_rows), count=st.integers(1, 40))
def test_a_row_written_out_works_the_same_stitches(row: Nodes, count: int, vocabulary: Vocabulary) -> None:
    """It has no open repeat, leaves the same count in closed form, and is the same stitch by stitch."""
    out = write_out(row, count, vocabulary)
    if out.parts is None:
        assert out.misfit is not None
        return
    assert not any(isinstance(node, OpenRepeat) for node in within(out.parts))
    assert work([out.parts], count, vocabulary)[0].after == out.after == work([row], count, vocabulary)[0].after
    single = stitch_by_stitch(out.parts)
    for fixed in (out.parts, single or out.parts):
        assert worked(fixed, count, vocabulary) == worked(row, count, vocabulary)


def test_a_repeat_becomes_a_group_at_the_place_of_its_first_part(vocabulary: Vocabulary) -> None:
    """Brackets inside it, whose number was in doubt, are certain when the row comes out."""
    rib = Group((Work("k"), Work("p")), 2, doubtful=True)
    out = write_out((OpenRepeat((Work("k", place=Place(1, 4)), rib)),), 10, vocabulary)
    assert out.parts is not None
    (found,) = out.parts
    assert isinstance(found, Group)
    assert (found.times, found.place, found.parts[1]) == (2, Place(1, 4), replace(rib, doubtful=False))


def test_a_group_that_is_worked_no_time_leaves_nothing(vocabulary: Vocabulary) -> None:
    """What it would have done at a marker is not written."""
    to_marker = OpenRepeat((Work("k"),), 0, plain=True, marker=True)
    out = write_out((Work("k", 8), Group((to_marker, Marker("slip")), 0)), 8, vocabulary)
    assert out.parts == (Work("k", 8),)


def test_a_group_of_nothing_is_told_at_once() -> None:
    """However often it is worked, nothing is."""
    assert stitch_by_stitch((Work("k"), Group((), 10**18), Work("k"))) == (Work("k", 2),)


def test_a_bind_off_of_all_stays_and_is_counted(vocabulary: Vocabulary) -> None:
    """Two of nine stitches are knitted first; that seven are bound off is told beside the row."""
    row = (Work("k", 2), BindOff(None))
    out = write_out(row, 9, vocabulary)
    assert (out.parts, out.times, out.all_off) == (row, (7,), (7,))


def test_brackets_in_brackets_or_in_one_stitch_are_certain_too(vocabulary: Vocabulary) -> None:
    """At whatever depth their number was in doubt."""
    inner = Group((Work("p"), Work("k")), 2, doubtful=True)
    sure = replace(inner, doubtful=False)
    out = write_out((IntoOne((Work("k"), inner)), Group((Work("k"), inner), 1)), 6, vocabulary)
    assert out.parts == (IntoOne((Work("k"), sure)), Group((Work("k"), sure), 1))
