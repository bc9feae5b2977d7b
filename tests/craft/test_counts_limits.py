"""Rows without a single meaning, and bad input to the closed form in bounded time."""

from __future__ import annotations

import pytest

from counterpane.craft.counts import (
    UNPROVED,
    Misfit,
    Progression,
    Slug,
    can_repeat,
    count,
    malformed,
    work,
)
from counterpane.craft.counts.effects import effect
from counterpane.craft.counts.walking import LONGEST_SUM
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

from .handmade import HUGE, KNIT, PLACE, SLIP, TO_MARKER, misfit_of, slug_of
from .small_vocabulary import VOCABULARY


@pytest.mark.parametrize(
    ("parts", "slug"),
    [
        ((OpenRepeat((Work("yo"),)),), "repeat-uses-nothing"),
        ((Group((KNIT,), 2),), "repeat-inside-repeat"),
        ((Group((BindOff(None),), 2),), "repeat-inside-repeat"),
        ((OpenRepeat((Work("k"), KNIT)),), "repeat-inside-repeat"),
        ((OpenRepeat((Work("k"),), last=(KNIT,)),), "repeat-inside-repeat"),
        ((OpenRepeat((Work("k"),), None), KNIT), "two-open-repeats"),
        ((OpenRepeat((Work("k"),), None), BindOff(None)), "two-open-repeats"),
        ((OpenRepeat((Work("k"),), None), PLACE, KNIT), "two-open-repeats"),
        ((IntoOne((Work("k2tog"), Work("k"))),), "group-uses-several"),
        ((IntoOne((Work("k"), Work("k2tog"))),), "group-uses-several"),
        ((IntoOne((Work("yo"), Work("k"))),), "group-uses-several"),
        ((IntoOne((CastOn(1), Work("k"))),), "group-uses-several"),
        ((IntoOne(()),), "group-uses-several"),
        ((IntoOne((Group((), 2),)),), "group-uses-several"),
        ((IntoOne((Hold(1),)),), "group-uses-several"),
        ((IntoOne((Work("k"), Work("k", held=True))),), "group-uses-several"),
        ((IntoOne((IntoOne((Work("k"),), 2),)),), "group-uses-several"),
        ((Group((IntoOne((Marker("place"),)),), 2),), "group-uses-several"),
        ((OpenRepeat((Hold(1), Work("k"))),), "row-leaves-stitches"),
        ((OpenRepeat((Work("k"), Work("k", held=True))),), "row-runs-short"),
        ((OpenRepeat((Work("k"), Turn())),), UNPROVED),
        ((OpenRepeat((Work("k"), SLIP)),), UNPROVED),
        ((OpenRepeat((Work("k"), PLACE), marker=True),), UNPROVED),
        ((OpenRepeat((Work("k"), TO_MARKER)),), UNPROVED),
    ],
)
def test_a_row_without_a_meaning_is_named(parts: tuple[Node, ...], slug: str) -> None:
    """Each such row has its slug, and no count works."""
    assert slug_of(*parts) == slug
    assert count([parts], VOCABULARY).starts == ()


AT = Place(1, 9)


@pytest.mark.parametrize(
    ("parts", "slug"),
    [
        ((Work("k", 3), OpenRepeat((Work("yo"),), place=AT)), "repeat-uses-nothing"),
        ((Work("k", 3), Group((OpenRepeat((Work("k"),), place=AT),), 2)), "repeat-inside-repeat"),
        ((Work("k", 3), IntoOne((Work("k2tog"), Work("k")), place=AT)), "group-uses-several"),
        ((Work("k", 3), OpenRepeat((Work("k"),), None, place=AT), OpenRepeat((Work("p"),), None)), "two-open-repeats"),
        ((OpenRepeat((Work("k"), Marker("slip", place=AT))),), UNPROVED),
    ],
)
def test_a_row_without_a_meaning_says_where(parts: tuple[Node, ...], slug: Slug) -> None:
    """The repeat, group or marker that is at fault stands there; a row by itself has the number 0."""
    assert malformed(parts, VOCABULARY) == Misfit(slug, 0, AT)


@pytest.mark.parametrize(
    "parts",
    [
        (IntoOne((Work("k"), Work("yo"), Work("k"))),),
        (IntoOne((Group((Work("k"), Work("p")), 2), CastOn(1))),),
        (IntoOne((Group((Work("k"), Work("yo")), 2), Work("k"))),),
        (IntoOne((IntoOne((Work("k"), Work("yo"))), Work("k"))),),
        (IntoOne((Work("p"), Work("k")), 2),),
        (OpenRepeat((Work("k"),), 4), OpenRepeat((Work("p"),), None), Work("k")),
        (OpenRepeat((Work("k"),), None, marker=True), SLIP, KNIT),
    ],
)
def test_a_row_with_a_meaning_is_not_refused(parts: tuple[Node, ...]) -> None:
    """What can be worked has no fault."""
    assert slug_of(*parts) is None


def test_an_open_repeat_has_no_effect_by_itself() -> None:
    """What it takes depends on the count."""
    with pytest.raises(TypeError):
        effect(KNIT, VOCABULARY)


def test_a_row_that_passes_over_more_than_it_works_has_few_counts() -> None:
    """Each repeat passes one stitch more than it works, so the four stitches before it end it."""
    row = (Work("k", 4), OpenRepeat((Work("k"), Work("psso"), Work("psso"))))
    chain = count([row], VOCABULARY)
    assert chain.starts == tuple(Progression.only(n) for n in (5, 6, 7))
    assert [chain.after(n) for n in (5, 6, 7)] == [3, 2, 1]
    assert misfit_of([row], 8).slug == "row-runs-short"
    assert not can_repeat(chain)


def test_a_row_that_takes_one_count_has_a_drift() -> None:
    """Of two stitches and a repeat that passes over one more than it works, three leave one: two are lost."""
    chain = count([(Work("k", 2), OpenRepeat((Work("k"), Work("psso"), Work("psso"))))], VOCABULARY)
    assert (chain.starts, chain.drift) == ((Progression.only(3),), -2)


def test_of_few_counts_a_later_repeat_may_take_one_which_has_a_drift() -> None:
    """Of three, two or one stitch left of five, six or seven, pairs can be made of two alone: four are lost of six."""
    row = (Work("k", 4), OpenRepeat((Work("k"), Work("psso"), Work("psso"))))
    chain = count([row, (OpenRepeat((Work("p", 2),)),)], VOCABULARY)
    assert (chain.starts, chain.drift) == ((Progression.only(6),), -4)


def test_a_repeat_without_a_stop_leaves_what_is_worked_before_the_turn() -> None:
    """Knit one, repeat, purl two, turn: of ten stitches seven are worked by the repeat, which doubles them."""
    row = (Work("k"), OpenRepeat((Work("kfb"),), None), Work("p", 2), Turn())
    assert work([row], 10, VOCABULARY)[0].after == 1 + 2 * 7 + 2


def test_a_repeat_without_a_stop_looks_no_further_than_the_next_turn() -> None:
    """It keeps what comes after an earlier turn, and nothing of what comes after the turn behind it."""
    row = (Work("k", 5), Turn(), OpenRepeat((Work("p"),), None), Work("k", 2))
    assert work([(*row, Turn(), KNIT)], 9, VOCABULARY)[0].after == 9
    assert work([(OpenRepeat((Work("k2tog"),), None), Turn(), Work("p", 4))], 8, VOCABULARY)[0].after == 4


@pytest.mark.parametrize("after", [(Work("k", 9),), (OpenRepeat((Work("k", 10),), 0, plain=True),)])
def test_few_counts_that_a_later_row_refuses_do_not_join(after: tuple[Node, ...]) -> None:
    """Of the counts 3, 2 and 1 that are left, none is 9 and none a multiple of 10."""
    row = (Work("k", 4), OpenRepeat((Work("k"), Work("psso"), Work("psso"))))
    misfit = count([row, after], VOCABULARY).misfit
    assert misfit is not None
    assert misfit.slug == "rows-do-not-join"


def test_too_many_single_counts_are_not_listed() -> None:
    """A thousand single counts are proved one at a time only."""
    chain = count([(Work("k", 999), OpenRepeat((Work("k"), Work("psso"), Work("psso"))))], VOCABULARY)
    assert (chain.starts, chain.proved_at_count_only) == ((), True)


def test_a_pass_over_that_may_not_happen_is_proved_at_a_count_only() -> None:
    """A repeat that may be none, with a pass-over that needs a stitch before it, has no single condition."""
    row = (OpenRepeat((Work("psso"), Work("k", 2)), 3, plain=True), Work("k", 3))
    assert count([row], VOCABULARY).proved_at_count_only
    assert work([row], 3, VOCABULARY)[0].after == 3
    assert misfit_of([row], 5).slug == "row-runs-short"


def test_counts_beyond_all_pieces_are_left_out() -> None:
    """A repeat of 10^18, or 10^10, and one narrower by a stitch share no count that a piece could have."""
    for width in (HUGE, 10**10):
        rows = [(OpenRepeat((Work("k", width),)),), (OpenRepeat((Work("k", width - 1),)),)]
        assert count(rows, VOCABULARY).proved_at_count_only


def test_one_count_below_the_limit_is_a_single_count() -> None:
    """Where the next count would be beyond all pieces, the least one is told alone."""
    rows = [(OpenRepeat((Work("k", 10**10 + 1),), 0, plain=True, last=(Work("k", 7),)),)]
    rows += [(OpenRepeat((Work("k", 10**10),), 0, last=(Work("k", 7),)),)]
    assert count(rows, VOCABULARY).starts == (Progression.only(7),)


def test_sums_without_end_are_not_followed() -> None:
    """Doubling 120 times outgrows every number that is worth printing."""
    steps = work([(OpenRepeat((Work("kfb"),)),)] * 120, 1, VOCABULARY)
    assert [step.misfit.slug for step in steps if step.misfit] == [UNPROVED]


def test_the_largest_sum_that_is_followed_is_followed_and_none_beyond() -> None:
    """A row that ends by placing a marker is walked; with one stitch more nothing is told, at that marker."""
    row = (KNIT, Marker("place", place=Place(1, 9)))
    (last,), (beyond,) = (work([row], stitches, VOCABULARY) for stitches in (LONGEST_SUM, LONGEST_SUM + 1))
    assert last.after == LONGEST_SUM
    assert beyond.misfit is not None
    assert (beyond.misfit.slug, beyond.misfit.place) == (UNPROVED, Place(1, 9))


def test_ten_to_the_eighteen_stitches_are_worked() -> None:
    """A large count costs what a small one costs."""
    row = (OpenRepeat((Work("k", 2), Work("p", 2)), 2), Work("k", 2))
    assert work([row], HUGE + 2, VOCABULARY)[0].after == HUGE + 2


@pytest.mark.parametrize("empty", [True, False])
def test_ten_thousand_nested_groups_are_not_followed(empty: bool) -> None:
    """A tree too deep to be walked is told as not proved, without running out of stack."""
    node: Node = Group((), 2) if empty else Work("k")
    for _ in range(10_000):
        node = Group((node,), 2, place=Place(1, 4))
    assert malformed((node,), VOCABULARY) == Misfit(UNPROVED, 0, Place(1, 4))
    assert slug_of(OpenRepeat((node,))) == slug_of(OpenRepeat((Work("k"),), last=(node,))) == UNPROVED


def test_a_group_of_markers_without_end_is_not_written_out() -> None:
    """So many markers lie on no needle."""
    assert slug_of(Group((Work("k"), PLACE), HUGE)) == UNPROVED
    assert misfit_of([(*([Work("k"), PLACE] * 1100), KNIT)], 3000).slug == UNPROVED


@pytest.mark.parametrize("row", [(Group((PLACE,), 2001),), (Work("k"), Group((PLACE,), 2001))])
def test_two_thousand_nodes_more_are_written_out(row: tuple[Node, ...]) -> None:
    """Two thousand and one instead of one group."""
    assert slug_of(*row) is None


@pytest.mark.parametrize(
    "row",
    [
        (Group((PLACE,), 2002, place=Place(1, 7)),),
        (Group((PLACE, Work("k")), 1001, place=Place(1, 7)),),
        (Work("k"), Group((PLACE,), 2002, place=Place(1, 7))),
        (Group((PLACE,), 2002, place=Place(1, 7)), Work("k")),
    ],
)
def test_one_node_more_is_not_written_out(row: tuple[Node, ...]) -> None:
    """What stands beside the group does not make room for it; its place is told."""
    assert malformed(row, VOCABULARY) == Misfit(UNPROVED, 0, Place(1, 7))


def test_a_wide_group_costs_nothing() -> None:
    """Groups of groups are multiplied, not worked."""
    assert count([(Group((Group((Work("k"),), 10**6),), 10**6),)], VOCABULARY).starts == (Progression.only(10**12),)
