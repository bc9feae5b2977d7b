"""Rows seen from the other side, mirrored, and worked as rounds."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from counterpane.craft.counts import count, work
from counterpane.craft.fabric import from_rs
from counterpane.craft.rows.read import read_row
from counterpane.craft.rows.rounds import as_rounds
from counterpane.craft.rows.say import say_row
from counterpane.craft.rows.tree import CastOn, Group, IntoOne, Node, OpenRepeat, Place, Work
from counterpane.craft.rows.turning import CannotTurn, mirror, rs_view
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.trace import trace

from .small_vocabulary import VOCABULARY

TURNABLE = ("k", "p", "k tbl", "p tbl", "k2tog", "ssk", "p2tog", "ssp", "yo", "sl")
stitches = st.builds(
    Work, st.sampled_from(TURNABLE), st.integers(1, 3), st.sampled_from(((), ("pwise", "wyif"), ("wyib",)))
)
lists = st.lists(st.one_of(stitches, st.builds(Group, st.tuples(stitches, stitches), st.integers(1, 3))), max_size=3)
used = st.builds(Work, st.sampled_from(("k", "p", "k2tog", "ssk")), st.integers(1, 2))


def _uses(parts: list[Node]) -> int:
    (step,) = work([tuple(parts), ()], 10_000, VOCABULARY)[:1]
    return 10_000 - (step.misfit.left or 0) if step.misfit else 10_000


rows = st.builds(
    lambda before, body, first, after: (*before, OpenRepeat((first, *body), _uses(after)), *after),
    lists,
    lists,
    used,
    lists,
)


@settings(max_examples=60, deadline=None)
@given(rows)
def test_turning_and_mirroring_twice_give_the_row_back(row: tuple[Node, ...]) -> None:
    """Both are their own opposite."""
    assert rs_view(rs_view(row, VOCABULARY), VOCABULARY) == row
    assert mirror(mirror(row, VOCABULARY), VOCABULARY) == row


@settings(max_examples=60, deadline=None)
@given(rows)
def test_turning_and_mirroring_keep_the_counts(row: tuple[Node, ...]) -> None:
    """The same counts work, and they leave the same."""
    chain = count([row], VOCABULARY)
    for turned in (rs_view(row, VOCABULARY), mirror(row, VOCABULARY)):
        other = count([turned], VOCABULARY)
        assert (other.starts, other.drift, other.ratio) == (chain.starts, chain.drift, chain.ratio)


@settings(max_examples=40, deadline=None)
@given(rows)
def test_the_other_side_of_a_row_is_the_same_fabric(row: tuple[Node, ...]) -> None:
    """Worked on the wrong side or written for the right side, the right side shows the same faces."""
    (start,) = count([row], VOCABULARY).starts
    behind = trace([row], start.least, VOCABULARY, ["WS"])
    before = trace([rs_view(row, VOCABULARY)], start.least, VOCABULARY, ["RS"])
    assert from_rs(behind, VOCABULARY) == from_rs(before, VOCABULARY)


@pytest.mark.parametrize(
    ("row", "behind", "mirrored"),
    [
        ("sl 1 wyif, k to end", "p to last st, sl 1 wyib", "k to last st, sl 1 wyif"),
        ("sl 1, k2tog, psso, k2", "p2, sssp", "k2, k3tog"),
        ("sl 1, k1, psso, k2", "p2, ssp", "k2, k2tog"),
        ("(k1, yo, p1) in next st, k2", "p2, (k1, yo, p1) in next st", "k2, (p1, yo, k1) in next st"),
        ("c4f, p1", "k1, c4f", "p1, c4b"),
        (
            "sl next 1 st to cn and hold in front, k2, k1 from cn, p1",
            "k1, sl next 2 sts to cn and hold in front, p1, p2 from cn",
            "p1, sl next 2 sts to cn and hold at back, k1, k2 from cn",
        ),
        (
            "sl next 2 sts to cn and hold at back, k1, k2 from cn",
            "sl next 1 st to cn and hold at back, p2, p1 from cn",
            "sl next 1 st to cn and hold in front, k2, k1 from cn",
        ),
        ("cast on 2, k to end", "p to end, cast on 2", "k to end, cast on 2"),
        (
            "k2, sl m, k to 3 sts before marker, k2tog, k1, sl m, p2",
            "k2, sl m, p1, p2tog, p to marker, sl m, p2",
            "p2, sl m, k1, ssk, k to marker, sl m, k2",
        ),
        ("k2, pm, k to end", "p to last 2 sts, pm, p2", "k to last 2 sts, pm, k2"),
        ("*k2, p2; rep from *, k2", "p2, *k2, p2; rep from *", "k2, *p2, k2; rep from *"),
        (
            "k1, *k2, p2; rep from * to last 11 sts, k1, *k3, p2; rep from * to end",
            "[k2, p3] 2 times, p1, *k2, p2; rep from * to last st, p1",
            "[p2, k3] 2 times, k1, *p2, k2; rep from * to last st, k1",
        ),
        (
            "*k2; rep from * to last 4 sts, *p2; rep from * to last 4 sts, k4",
            "p4, *p2; rep from * to end",
            "k4, *k2; rep from * to end",
        ),
    ],
)
def test_a_row_is_turned_and_mirrored_as_a_knitter_would(
    row: str, behind: str, mirrored: str, vocabulary: Vocabulary
) -> None:
    """Each kind of working has its form read backwards."""
    parts = read_row(row, vocabulary).parts
    assert rs_view(parts, vocabulary) == read_row(behind, vocabulary).parts
    assert mirror(parts, vocabulary) == read_row(mirrored, vocabulary).parts


def test_yarn_brought_forward_is_taken_back_at_the_other_end() -> None:
    """Read backwards, what brought the yarn forward takes it back; from behind, front and back change places too."""
    row = (Work("wyif"), Work("sl"), Work("wyib"), Work("k", 3))
    assert mirror(row, VOCABULARY) == (Work("k", 3), Work("wyif"), Work("sl"), Work("wyib"))
    assert rs_view(row, VOCABULARY) == (Work("p", 3), Work("wyib"), Work("sl"), Work("wyif"))


@pytest.mark.parametrize(
    ("row", "column"),
    [
        ("k2, turn", 5),
        ("*k2, p2; rep from *, ending last rep k2", 1),
        ("k1, k2, psso", 9),
        ("k3, sl next 2 sts to cn and hold in front, k2", 5),
        ("k3, k2 from cn", 5),
    ],
)
def test_what_cannot_be_read_backwards_is_refused_at_its_place(row: str, column: int, vocabulary: Vocabulary) -> None:
    """Turns, differing last repeats, loose pass-overs and cables that are not worked off have no other form."""
    for turn in (rs_view, mirror):
        with pytest.raises(CannotTurn) as refused:
            turn(read_row(row, vocabulary).parts, vocabulary)
        assert refused.value.place == Place(1, column)


def test_a_stitch_without_another_side_or_lean_is_refused() -> None:
    """An increase in one stitch has no other side here, a three-stitch decrease no mirror."""
    with pytest.raises(CannotTurn, match="other side"):
        rs_view((Work("kfb"),), VOCABULARY)
    with pytest.raises(CannotTurn, match="leans"):
        mirror((Work("k3tog"),), VOCABULARY)
    assert mirror((Work("kfb"),), VOCABULARY) == (Work("kfb"),)


def test_rounds_begin_above_the_first_repeat(vocabulary: Vocabulary) -> None:
    """Repeats that begin later are cut so that all rounds are in line; edges are dropped."""
    flat = [
        ("k1, *k2, p4; rep from * to last 2 sts, k2", "RS"),
        ("*k4, p2; rep from * to last st, p1", "WS"),
        ("*k4, p2; rep from * to last 3 sts, p3", "WS"),
    ]
    rounds = as_rounds([(read_row(row, vocabulary).parts, side) for row, side in flat], vocabulary)  # type: ignore[misc]
    assert [say_row(row, vocabulary) for row in rounds] == [
        "*k2, p4; rep from * to end",
        "*k2, p4; rep from * to end",
        "*p2, k2, p2; rep from * to end",
    ]


def test_a_group_is_cut_between_its_stitches() -> None:
    """A round that begins in the middle of a group takes the group apart."""
    second = (Work("k"), OpenRepeat((Group((Work("k"), Work("p", 2)), 3),), 2), Work("k", 2))
    first = (Work("k", 6), OpenRepeat((Work("k", 9),)))
    third = (OpenRepeat((Work("yo"), Work("k2tog"), Work("k", 7))),)
    _, rounded, laced = as_rounds([(first, "RS"), (second, "RS"), ((Work("k", 6), *third), "RS")], VOCABULARY)
    group = (Work("k"), Work("p", 2))
    assert rounded == (OpenRepeat((Work("p"), Group(group, 1), Group(group, 1), Work("k"), Work("p"))),)
    assert laced == third


@pytest.mark.parametrize(
    "rows",
    [
        [((Work("k", 4),), "RS")],
        [((), "RS")],
        [((OpenRepeat((Work("yo"),)),), "RS")],
        [((OpenRepeat((Work("k"),)),), "RS"), ((OpenRepeat((Work("k"),), last=(Work("k"),)),), "RS")],
        [
            ((Work("k"), OpenRepeat((Work("k", 2),))), "RS"),
            ((OpenRepeat((Work("k2tog"), Work("yo"))),), "RS"),
        ],
        [((Work("k"), OpenRepeat((Work("k", 2),))), "RS"), ((OpenRepeat((IntoOne((Work("k"),), 2),)),), "RS")],
    ],
)
def test_rows_that_make_no_rounds_are_refused(rows: list[tuple[tuple[Node, ...], str]]) -> None:
    """A row needs one repeat, alike each time, that is not cut inside a stitch."""
    with pytest.raises(CannotTurn):
        as_rounds(rows, VOCABULARY)  # type: ignore[arg-type]


def test_no_rows_make_no_rounds() -> None:
    """Nothing comes of nothing, and what is cast on in a repeat stays where it is."""
    assert as_rounds([], VOCABULARY) == ()
    row = (OpenRepeat((Work("k"), CastOn(1))),)
    assert as_rounds([(row, "RS")], VOCABULARY) == (row,)
