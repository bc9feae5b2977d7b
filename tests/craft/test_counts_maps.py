"""Rows held as maps: the same counts as rows walked node by node."""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.counts import UNPROVED, Maps, count, work
from counterpane.craft.counts.maps import RowMap
from counterpane.craft.counts.needle import MOST_STITCHES, Amount, Needle
from counterpane.craft.counts.stuck import Stuck
from counterpane.craft.counts.walking import LONGEST_SUM, walk_row
from counterpane.craft.counts.wellformed import MOST_NESTED, malformed
from counterpane.craft.rows.tree import BindOff, Group, Hold, Node, OpenRepeat, Turn, Work

from .handmade import KNIT, PLACE, SLIP
from .random_rows import chains
from .small_vocabulary import VOCABULARY

W = 10**17 + 1  # A repeat too wide to be counted in fractions.
RIB = (OpenRepeat((Work("k", 2), Work("p", 2)), stop=2), Work("k", 2))


def walked(rows: Sequence[Sequence[Node]]) -> list[object]:
    """Return what is on the needle after each row walked node by node, and where it stops."""
    out: list[object] = []
    needle = Needle.any_count()
    for parts in rows:
        try:
            needle = walk_row(needle, parts, VOCABULARY)
        except Stuck as stuck:
            return [*out, (stuck.slug, stuck.place)]
        out.append((needle.start, needle.left, needle.low, needle.high, weight(needle)))
    return out


def mapped(rows: Sequence[Sequence[Node]]) -> list[object]:
    """Return the same by way of maps."""
    out: list[object] = []
    maps, needle = Maps(VOCABULARY), Needle.any_count()
    for parts in rows:
        try:
            needle = maps.needle_after(needle, parts, False)
        except Stuck as stuck:
            return [*out, (stuck.slug, stuck.place)]
        out.append((needle.start, needle.left, needle.low, needle.high, weight(needle)))
    return out


def weight(needle: Needle) -> int | None:
    """Return how often the repeat of the last row is worked per step of the count."""
    return needle.slope and (needle.slope[0] * (needle.scale // needle.slope[1]) or None)


@given(chains)
def test_a_chain_of_maps_is_the_chain_of_rows(rows: Sequence[Sequence[Node]]) -> None:
    """A map narrows the counts down, and weighs its repeat, as walking the row does."""
    assert mapped(rows) == walked(rows)


def test_a_map_tells_what_a_row_leaves() -> None:
    """Rib over a multiple of 4 and 2 more leaves what it takes, and takes nothing else."""
    found = Maps(VOCABULARY).of(RIB)
    assert found is not None
    assert [found.after(before) for before in (2, 6, 8, 10)] == [None, 6, None, 10]


@given(chains, st.integers(1, 40))
def test_a_row_is_refused_where_a_knitter_is_stuck(rows: Sequence[Sequence[Node]], before: int) -> None:
    """A row refused cannot be worked; one with a map is refused wherever it cannot be."""
    maps = Maps(VOCABULARY)
    for parts in rows:
        stuck = work([parts], before, VOCABULARY)[0].misfit
        if maps.refuses(parts, before):
            assert stuck is not None and stuck.slug != UNPROVED
        elif maps.of(parts) is not None:
            assert stuck is None


@pytest.mark.parametrize(
    ("row", "refused"),
    [
        (RIB, [1, 2, 3, 4, 5, 7, 8, 9]),
        ((*RIB, Work("k")), range(1, 10)),  # One stitch is kept too few for what follows,
        ((OpenRepeat((Work("k2tog"),), stop=3), Work("k", 2)), range(1, 10)),  # or too many,
        ((OpenRepeat((Work("k"),), stop=3), OpenRepeat((Work("k2tog"),), stop=0)), range(1, 10)),  # or does not fit.
        ((KNIT, PLACE), []),
    ],
)
def test_a_row_is_refused_at_these_counts(row: tuple[Node, ...], refused: Sequence[int]) -> None:
    """One whose repeat keeps another number than what follows works is refused at every count."""
    maps = Maps(VOCABULARY)
    assert [before for before in range(1, 10) if maps.refuses(row, before)] == list(refused)


@pytest.mark.parametrize(
    ("row", "found"),
    [
        ((OpenRepeat((Work("sl"), Work("k"), Work("psso"), Work("yo"))),), RowMap(2, 2, 2, 2, 1)),
        ((Hold(2), Work("k", 2), Work("k", 2, held=True)), RowMap(4, 0, 4, 0, 0)),
        ((Work("k", 5), Turn(), Work("k2tog"), KNIT), RowMap(5, 1, 4, 1, 0)),
        ((KNIT, SLIP), RowMap(1, 1, 1, 1, 1)),
        ((OpenRepeat((Work("k"),), 4), Turn(), OpenRepeat((Work("k", W),))), RowMap(4 + W, W, 4 + W, W, W)),
        ((BindOff(MOST_STITCHES, joined=True),), RowMap(MOST_STITCHES, 0, 0, 0, 0)),
        ((BindOff(MOST_STITCHES + 1, joined=True),), None),
        (
            (OpenRepeat((Work("k", 2),), 7), OpenRepeat((Work("kfb"),), 3), Work("k", 3)),
            RowMap(2 + 7, 2, 2 + 2 * 4 + 3, 2, 1),
        ),
        ((OpenRepeat((Work("k", 2),), 3), OpenRepeat((Work("kfb"),), 3), Work("k", 3)), None),
        ((OpenRepeat((Work("k"),), 4), OpenRepeat((Work("p", 3),), 2), Work("k", 2)), None),
        ((OpenRepeat((Work("k"),), 3), Work("k", 2), Work("yo")), None),
        ((KNIT,), RowMap(1, 1, 1, 1, 1)),
        ((Work("k", 4),), RowMap(4, 0, 4, 0, 0)),
        ((Work("k", MOST_STITCHES + 1),), None),
        ((Work("yo"),), None),
        ((), None),
        ((Work("k", 2), PLACE, KNIT), None),
        ((Work("k", 4), OpenRepeat((Work("k"), Work("psso"), Work("psso")))), None),
    ],
)
def test_a_row_is_a_map_where_it_takes_one_class_and_leaves_plain_stitches(
    row: tuple[Node, ...], found: RowMap | None
) -> None:
    """The least it takes, its repeat, what it leaves of both, and how often the repeat is worked for each step."""
    assert Maps(VOCABULARY).of(row) == found


@pytest.mark.parametrize("row", [RIB, (Work("k", 4),), (OpenRepeat((Work("k2tog"), Work("k"))),)])
def test_a_map_leaves_the_needle_that_a_walk_leaves(row: tuple[Node, ...]) -> None:
    """Of every count that there is and of every second one, with the repeat weighed as in a walk."""
    found = Maps(VOCABULARY).of(row)
    assert found is not None
    for needle in (Needle.any_count(), Needle((Amount(0, 2),), start=Amount(0, 2))):
        assert found.worked(needle) == walk_row(needle, row, VOCABULARY)


def test_a_map_tells_a_count_where_all_stitches_wait_on_one_needle() -> None:
    """Where a marker hangs between them the row is walked, as where it does not fit or leaves too many to be said."""
    maps = Maps(VOCABULARY)
    assert [maps.count_after(Needle.holding(before), RIB) for before in (2, 6, 8)] == [None, 6, None]
    assert maps.count_after(Needle((Amount(4), Amount(6))), RIB) is None
    most, more = ((Work("k"), Work("m1", LONGEST_SUM + one)) for one in (-1, 0))
    assert [maps.count_after(Needle.holding(1), row) for row in (most, more)] == [LONGEST_SUM, None]


def test_a_fault_is_told_once() -> None:
    """Whoever asks again about the same row is told the very same."""
    maps, row = Maps(VOCABULARY), (OpenRepeat((Work("yo"),)),)
    assert maps.malformed(row) == malformed(row, VOCABULARY) is not None
    assert maps.malformed(row) is maps.malformed(row)


def test_a_row_nested_deeper_than_is_followed_has_no_map() -> None:
    """Its count is not guessed at: the walk says that it proves nothing."""
    nested: Node = Work("k")
    for _ in range(101):
        nested = Group((nested,), 1)
    assert Maps(VOCABULARY).of((nested,)) is None
    assert count([(nested,)], VOCABULARY).proved_at_count_only


def test_an_equal_row_has_the_same_map() -> None:
    """A row written a second time is not walked again."""
    maps = Maps(VOCABULARY)
    assert maps.of(RIB) is maps.of((*RIB,)[:1] + RIB[1:])


def test_a_row_of_brackets_too_deep_is_judged_without_a_map() -> None:
    """What lies deeper than a row is followed has no map, and no other fault either."""
    node: Node = Work("k")
    for _ in range(MOST_NESTED + 1):
        node = Group((node,), 2)
    maps = Maps(VOCABULARY)
    assert maps.of((node,)) is None
    assert maps.malformed((node,)) == malformed((node,), VOCABULARY)
