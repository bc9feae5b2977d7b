"""Rows put together side by side read as a knitter would write them."""

from __future__ import annotations

import pytest

from counterpane.craft.constructions.joining import (
    CannotJoin,
    closed,
    head,
    joined,
    refuse_loose,
    stitch_by_stitch,
    tail,
    walk,
)
from counterpane.craft.rows.read import read_row
from counterpane.craft.rows.say import say_row
from counterpane.craft.rows.tree import Node, OpenRepeat, Work
from counterpane.craft.stitches import Vocabulary


def parts(text: str, vocabulary: Vocabulary) -> tuple[Node, ...]:
    """Read one row."""
    return read_row(text, vocabulary).parts


@pytest.mark.parametrize(
    ("middle", "whole"),
    [
        ("knit", "knit"),
        ("purl", "k3, p to last 3 sts, k3"),
        ("k2, *p2, k2; rep from * to end", "k5, *p2, k2; rep from * to last 3 sts, k3"),
        ("*k3, p3; rep from * to last 3 sts, k3", "k3, *k3, p3; rep from * to last 6 sts, k6"),
        ("k to last 2 sts, p2", "k to last 5 sts, p2, k3"),
        ("k4, p5", "k7, p5, k3"),
    ],
)
def test_a_knit_edge_joins_a_row(middle: str, whole: str, vocabulary: Vocabulary) -> None:
    """Like stitches become one number, and stops move by what the end uses."""
    edge = (Work("k", 3),)
    assert say_row(joined(edge, parts(middle, vocabulary), edge, vocabulary), vocabulary) == whole


def test_the_beginning_of_a_row_of_no_more_is_the_row(vocabulary: Vocabulary) -> None:
    """All of its stitches are taken, and what uses none behind them."""
    row = parts("k2, [p1, k1] twice, k2tog, yo", vocabulary)
    assert say_row(head(row, 8, vocabulary), vocabulary) == "k2, p1, k1, p1, k1, k2tog, yo"
    assert say_row(tail(row, 8, vocabulary), vocabulary) == "k2, p1, k1, p1, k1, k2tog, yo"


def test_a_repeat_without_a_printed_stop_gets_one(vocabulary: Vocabulary) -> None:
    """What follows the repeat decides where it stops, edge and all."""
    row = joined((), parts("*p2, k2; rep from *, end p2", vocabulary), (Work("k", 3),), vocabulary)
    assert say_row(row, vocabulary) == "*p2, k2; rep from * to last 5 sts, p2, k3"


def test_two_repeats_keep_their_order(vocabulary: Vocabulary) -> None:
    """Both stops count the stitches of the end."""
    middle = parts("*k2, p2; rep from * to last 10 sts, *k3, p2; rep from * to end", vocabulary)
    row = joined((), middle, (Work("k", 1),), vocabulary)
    assert say_row(row, vocabulary) == "*k2, p2; rep from * to last 11 sts, *k3, p2; rep from * to last st, k1"


def test_a_row_is_closed_at_a_count(vocabulary: Vocabulary) -> None:
    """The open repeat becomes so many workings."""
    row = closed(parts("k1, *p1, k1; rep from * to end", vocabulary), 9, vocabulary)
    assert [work.stitch for work in stitch_by_stitch(row, vocabulary)] == list("kpkpkpkpk")


@pytest.mark.parametrize(("width", "first", "last"), [(1, "k", "k"), (4, "kpkp", "pkpk"), (5, "kpkpk", "kpkpk")])
def test_the_ends_of_a_row_are_cut_off(width: int, first: str, last: str, vocabulary: Vocabulary) -> None:
    """They are its first and its last stitches, at any width of the row."""
    row = closed(parts("k1, *p1, k1; rep from * to end", vocabulary), 10**12 + 1, vocabulary)
    ends = [stitch_by_stitch(cut(row, width, vocabulary), vocabulary) for cut in (head, tail)]
    assert ["".join(work.stitch for work in end) for end in ends] == [first, last]


def test_no_stitch_is_cut_through(vocabulary: Vocabulary) -> None:
    """A decrease that would be split is refused."""
    with pytest.raises(CannotJoin, match="inside a stitch"):
        head(parts("k1, k2tog, k4", vocabulary), 2, vocabulary)


@pytest.mark.parametrize("row", ["k5, turn", "k to marker, sm, k3", "bind off all sts"])
def test_a_row_that_does_not_go_from_edge_to_edge_is_refused(row: str, vocabulary: Vocabulary) -> None:
    """Turns, markers and a whole bind-off have no place beside another part."""
    with pytest.raises(CannotJoin):
        refuse_loose(parts(row, vocabulary))


def test_a_last_repeat_that_differs_is_walked_with_the_row(vocabulary: Vocabulary) -> None:
    """What the last repeat holds is held by the row."""
    row = read_row("*k1, p1; rep from * to end, ending last rep k2", vocabulary).parts
    assert [node.times for node in walk(row) if isinstance(node, Work)] == [1, 1, 2]


def test_two_repeats_without_a_stop_between_them_are_not_worked_out(vocabulary: Vocabulary) -> None:
    """Nobody knows where the first one ends."""
    row = (OpenRepeat((Work("k"),), None), OpenRepeat((Work("p"),), None))
    with pytest.raises(CannotJoin, match="no stop between them"):
        closed(row, 10, vocabulary)
