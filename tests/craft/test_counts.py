"""The closed form: what rows take and leave at every count, and what is told where they fail."""

from __future__ import annotations

from fractions import Fraction

import pytest

from counterpane.craft.counts import (
    Misfit,
    Progression,
    count,
    judge,
    work,
)
from counterpane.craft.rows.read import read_row
from counterpane.craft.rows.tree import (
    BindOff,
    CastOn,
    Group,
    Hold,
    IntoOne,
    Node,
    OpenRepeat,
    Place,
    Turn,
    Work,
)
from counterpane.craft.stitches import Vocabulary

from .handmade import KNIT, misfit_of, rows_of
from .small_vocabulary import VOCABULARY


def test_a_progression_admits_its_class_from_the_least_on() -> None:
    """6n+3 from 9 admits 9 and 15, not 3 and not 10."""
    assert [n for n in range(20) if Progression(6, 3, 9).admits(n)] == [9, 15]


def test_a_single_count_admits_itself_alone() -> None:
    """A fixed count has no other members."""
    assert [n for n in range(30) if Progression.only(24).admits(n)] == [24]


@pytest.mark.parametrize(("near", "below", "above"), [(8, None, 9), (9, 9, 9), (14, 9, 15), (15, 15, 15)])
def test_neighbours_lie_on_both_sides(near: int, below: int | None, above: int | None) -> None:
    """The nearest members are at or below, and at or above; none below the least."""
    six = Progression(6, 3, 9)
    assert (six.below(near), six.above(near)) == (below, above)


def test_a_single_count_has_no_neighbour_above() -> None:
    """Past the one count there is nothing."""
    one = Progression.only(24)
    assert (one.below(30), one.above(30), one.above(20)) == (24, None, 24)


@pytest.mark.parametrize("stated", [(0, 24), (24, 0)])
def test_no_multiple_is_right_where_one_count_works(stated: tuple[int, int]) -> None:
    """A stated multiple promises more than one count."""
    assert judge(*stated, Progression.only(24)) == "wrong"


def test_any_count_may_be_stated_as_a_multiple_of_one() -> None:
    """A multiple of 1 promises every count, which is right where every count works."""
    assert judge(1, 0, Progression(1, 0, 1)) == "right"


def test_the_first_stitch_that_fails_is_named(vocabulary: Vocabulary) -> None:
    """A row of 2 and 6 and 4 stitches over 6 stops inside the group, in its second round."""
    misfit = misfit_of([read_row("k2, (k1, p2) twice, k4", vocabulary).parts], 6, vocabulary)
    assert (misfit.slug, misfit.place, misfit.asked, misfit.left) == ("row-runs-short", Place(1, 10), 2, 0)


def test_stitches_that_are_left_are_counted(vocabulary: Vocabulary) -> None:
    """A fixed row of 5 leaves 3 of 8, at its last stitch."""
    misfit = misfit_of([read_row("k3, p2", vocabulary).parts], 8, vocabulary)
    assert (misfit.slug, misfit.place, misfit.left) == ("row-leaves-stitches", Place(1, 5), 3)
    assert (misfit.has, misfit.needs, misfit.multiple, misfit.below, misfit.above) == (8, 5, 0, 5, None)


def test_what_a_row_would_take_is_left_out_where_nobody_is_told(vocabulary: Vocabulary) -> None:
    """Of a fixed row of 5 over 8, only what happens on the needle is said."""
    (step,) = work(rows_of("k3, p2", vocabulary), 8, vocabulary, told=False)
    assert step.misfit == Misfit("row-leaves-stitches", 0, Place(1, 5), left=3)


def test_rows_after_a_misfit_have_no_counts(vocabulary: Vocabulary) -> None:
    """The row that stops has its true count before; what follows has none."""
    steps = work(rows_of("knit / *k2, p2; rep from * to end / knit", vocabulary), 10, vocabulary)
    assert [(step.before, step.after) for step in steps] == [(10, 10), (10, None), (None, None)]


def test_a_repeat_that_lacks_stitches_tells_what_it_asks(vocabulary: Vocabulary) -> None:
    """A repeat of 6 that keeps 3 asks for 9; 8 are there."""
    misfit = misfit_of(rows_of("*k3, p3; rep from * to last 3 sts, k3", vocabulary), 8, vocabulary)
    assert (misfit.slug, misfit.asked, misfit.left) == ("row-runs-short", 9, 8)


def test_rows_that_do_not_join_show_the_two_classes(vocabulary: Vocabulary) -> None:
    """The rows before leave 0 more than a multiple of 2, this one takes 1 more: no count is both."""
    text = "*k3, p1; rep from * to end / *k5, p1; rep from * to last st, k1"
    misfit = count(rows_of(text, vocabulary), vocabulary).misfit
    assert misfit is not None
    assert (misfit.slug, misfit.row) == ("rows-do-not-join", 1)
    assert (misfit.modulus, misfit.residue, misfit.wanted) == (2, 0, 1)


def test_rows_that_do_not_join_at_one_count_show_the_neighbours(vocabulary: Vocabulary) -> None:
    """24 stitches under a repeat of 5 lie between 20 and 25."""
    misfit = count(rows_of("k24 / *k3, p2; rep from * to end", vocabulary), vocabulary).misfit
    assert misfit is not None
    assert (misfit.has, misfit.below, misfit.above) == (24, 20, 25)


def test_a_count_that_is_always_too_large_does_not_join(vocabulary: Vocabulary) -> None:
    """10 stitches or more never become a row of 4: no classes differ, the count does."""
    misfit = count(rows_of("k to last 10 sts, k10 / k4", vocabulary), vocabulary).misfit
    assert misfit is not None
    assert (misfit.slug, misfit.has, misfit.needs, misfit.modulus) == ("rows-do-not-join", 10, 4, None)


def test_a_row_impossible_alone_keeps_its_own_fault(vocabulary: Vocabulary) -> None:
    """A later row that no count allows is not blamed on the rows before it."""
    chain = count(rows_of("knit / *k3; rep from * to last 5 sts, k4", vocabulary), vocabulary)
    misfit = chain.misfit
    assert misfit is not None
    assert (chain.starts, misfit.slug, misfit.row) == ((), "row-leaves-stitches", 1)


def test_a_row_over_no_stitch_fails_by_itself() -> None:
    """A yarn-over alone needs an empty needle, which no piece has."""
    chain = count([(Work("yo"),)], VOCABULARY)
    assert chain.starts == ()
    assert chain.misfit is not None
    assert chain.misfit.slug == "row-leaves-stitches"


def test_an_empty_row_leaves_every_stitch() -> None:
    """A row of no words works nothing."""
    assert misfit_of([()], 3).slug == "row-leaves-stitches"


@pytest.mark.parametrize(
    ("parts", "start", "drift"),
    [
        ((BindOff(3), KNIT), (1, 0, 4), -3),
        ((BindOff(3, joined=True), KNIT), (1, 0, 3), -3),
        ((CastOn(5), KNIT), (1, 0, 1), 5),
        ((OpenRepeat((Work("k", 3), Work("p", 3)), None, last=(Work("k", 3),)),), (6, 3, 3), 0),
        ((OpenRepeat((Work("k", 2),), None), Work("p", 3)), (2, 1, 5), 0),
        ((Hold(2), Work("k", 2), Work("k", 2, held=True), KNIT), (1, 0, 4), 0),
        ((OpenRepeat((Work("sl"), Work("k"), Work("psso"), Work("yo"))),), (2, 0, 2), 0),
        ((OpenRepeat((IntoOne((Work("p"), Work("k")), 2), Work("k"))),), (3, 0, 3), 0),
        ((Group((Group((Work("k"),), 0),), 0), KNIT), (1, 0, 1), 0),
    ],
)
def test_a_row_tells_its_counts(parts: tuple[Node, ...], start: tuple[int, int, int], drift: int) -> None:
    """Multiple, least count and drift follow from what the stitches use and make."""
    chain = count([parts], VOCABULARY)
    assert (chain.starts, chain.drift) == ((Progression(*start),), drift)


def test_binding_off_all_leaves_nothing() -> None:
    """Any count is bound off to none; what follows finds no stitch."""
    chain = count([(BindOff(None),)], VOCABULARY)
    assert (chain.starts, chain.after(7)) == ((Progression(1, 0, 1),), 0)
    assert misfit_of([(BindOff(None), Work("k"))], 7).slug == "row-runs-short"


def test_nothing_is_bound_off_of_no_stitch() -> None:
    """After all stitches are knitted none is left to be bound off, there where it is asked."""
    misfit = misfit_of([(KNIT, BindOff(None, place=Place(1, 9)))], 7)
    assert (misfit.slug, misfit.place, misfit.asked, misfit.left) == ("row-runs-short", Place(1, 9), 1, 0)


def test_a_pass_over_needs_two_stitches_behind_it() -> None:
    """At the beginning of a row there is nothing to pass over."""
    misfit = misfit_of([(Work("psso", place=Place(1, 1)), KNIT)], 8)
    assert (misfit.slug, misfit.asked, misfit.left) == ("row-runs-short", 2, 0)


def test_a_repeat_that_begins_with_a_pass_over_runs_short_at_once() -> None:
    """One stitch lies behind the first of two workings; what each of them adds comes too late."""
    misfit = misfit_of([(Work("k"), OpenRepeat((Work("psso", place=Place(1, 4)), Work("k", 2))))], 5)
    assert (misfit.slug, misfit.place, misfit.asked, misfit.left) == ("row-runs-short", Place(1, 4), 2, 1)


def test_a_repeat_that_passes_over_too_much_tells_where() -> None:
    """Four stitches lie before it, each of four workings leaves one fewer: the last pass-over finds a single one."""
    body = (Work("k", place=Place(1, 4)), Work("psso", place=Place(1, 8)), Work("psso", place=Place(1, 12)))
    misfit = misfit_of([(Work("k", 4), OpenRepeat(body))], 8)
    assert (misfit.place, misfit.asked, misfit.left) == (Place(1, 12), 2, 1)


def test_a_last_working_that_passes_over_too_much_tells_where() -> None:
    """One stitch knitted by the repeat is not passed over itself."""
    misfit = misfit_of([(OpenRepeat((Work("k"),), last=(Work("psso", place=Place(1, 4)),)),)], 1)
    assert (misfit.slug, misfit.place, misfit.asked, misfit.left) == ("row-runs-short", Place(1, 4), 2, 1)


def test_a_pass_over_inside_one_stitch_needs_two_as_well() -> None:
    """Worked into the first stitch, one loop alone has none to be passed over it; its own place is told."""
    misfit = misfit_of([(IntoOne((Work("k"), Work("psso", place=Place(1, 6)))), KNIT)], 4)
    assert (misfit.slug, misfit.place, misfit.left) == ("row-runs-short", Place(1, 6), 1)


def test_a_cable_needle_must_be_worked_off() -> None:
    """Stitches left on it are left; stitches taken from an empty one run short."""
    here = Place(1, 5)
    left = [misfit_of([row], 4) for row in ((Hold(2), Work("k", 2, place=here)), (Hold(2), Turn(place=here), KNIT))]
    assert [(misfit.slug, misfit.place, misfit.left) for misfit in left] == [("row-leaves-stitches", here, 2)] * 2
    assert misfit_of([(Hold(1), Work("k", 2, held=True), KNIT)], 4).slug == "row-runs-short"


def test_what_waits_on_the_cable_needle_is_not_what_lacks() -> None:
    """The two held stitches are worked after all others; three more are not there."""
    misfit = misfit_of([(Hold(2), KNIT, Work("k", 2, held=True), Work("k", 3, place=Place(1, 9)))], 8)
    assert (misfit.slug, misfit.place, misfit.left) == ("row-runs-short", Place(1, 9), 0)


def test_a_row_that_empties_the_cable_needle_is_told_the_first_stitch_too_many() -> None:
    """Two were put there and two worked from it: a third is not there, though four wait on the left needle."""
    row = (Hold(2), Work("k", 2), Work("k", 2, held=True), Work("k", held=True, place=Place(1, 30)), KNIT)
    misfit = misfit_of([row], 8)
    assert (misfit.slug, misfit.place, misfit.asked, misfit.left) == ("row-runs-short", Place(1, 30), 1, 0)


def test_a_group_empties_the_cable_needle_in_a_later_working() -> None:
    """Three stitches are there for five workings; the fourth finds none, and no fewer than none."""
    misfit = misfit_of([(Hold(3), Group((Work("k", held=True, place=Place(1, 20)),), 5), KNIT)], 8)
    assert (misfit.slug, misfit.place, misfit.asked, misfit.left) == ("row-runs-short", Place(1, 20), 1, 0)


def test_a_row_that_begins_from_an_empty_cable_needle_lacks_a_stitch_there() -> None:
    """Nothing is on the right needle either, and nothing is asked of it."""
    misfit = misfit_of([(Work("k", held=True, place=Place(1, 1)), KNIT)], 8)
    assert (misfit.slug, misfit.place, misfit.asked, misfit.left) == ("row-runs-short", Place(1, 1), 1, 0)


def test_a_fixed_row_after_increases_fixes_the_start(vocabulary: Vocabulary) -> None:
    """Doubling to 10 begins with 5."""
    chain = count(rows_of("*kfb; rep from * to end / k10", vocabulary), vocabulary)
    assert (chain.starts, chain.drift) == ((Progression.only(5),), 5)


def test_the_count_after_a_pass_is_told_for_counts_that_work(vocabulary: Vocabulary) -> None:
    """6 stitches become 9 by an increase in every second; 7 do not fit."""
    chain = count(rows_of("*k1, kfb; rep from * to end", vocabulary), vocabulary)
    assert chain.after(6) == 9
    with pytest.raises(ValueError, match="7 stitches"):
        chain.after(7)


def test_the_weights_tell_only_of_repeats_that_depend_on_the_start(vocabulary: Vocabulary) -> None:
    """A fixed row has no weight, and a fixed piece raises no suspicion."""
    chain = count(rows_of("k24 / *k2, p2; rep from * to end", vocabulary), vocabulary)
    assert (chain.weights, chain.suspicious, chain.ratio) == ((None, None), False, Fraction(1))
