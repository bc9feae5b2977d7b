"""How often rows can be worked again, and where repeats may stop."""

from __future__ import annotations

from fractions import Fraction

import pytest

from counterpane.craft.counts import (
    Chain,
    Progression,
    can_repeat,
    count,
    cuts,
    judge,
    passes_from,
    passes_until,
    ways,
)
from counterpane.craft.counts.needle import MOST_STITCHES
from counterpane.craft.rows.tree import (
    BindOff,
    Group,
    IntoOne,
    Node,
    OpenRepeat,
    Work,
)
from counterpane.craft.stitches import Vocabulary

from .handmade import KNIT, rows_of
from .small_vocabulary import VOCABULARY


def test_rows_without_drift_can_be_worked_for_ever(vocabulary: Vocabulary) -> None:
    """The count returns to its start."""
    chain = count(rows_of("*k2, p2; rep from * to end", vocabulary), vocabulary)
    assert can_repeat(chain)
    assert passes_from(chain, 8) is None
    assert passes_from(chain, 9) == 0


def test_a_single_count_repeats_only_without_drift(vocabulary: Vocabulary) -> None:
    """24 stitches that stay 24 repeat; that become 25 do not."""
    same, more = (count(rows_of(text, vocabulary), vocabulary) for text in ("k24", "k24, yo"))
    assert (can_repeat(same), can_repeat(more)) == (True, False)
    assert (passes_from(same, 24), passes_from(more, 24)) == (None, 1)


def test_rows_that_nothing_works_cannot_be_repeated() -> None:
    """Without a start there is no pass."""
    assert not can_repeat(Chain(()))


def test_a_pass_that_falls_short_is_not_counted(vocabulary: Vocabulary) -> None:
    """Two stitches less at each pass and four needed: from seven, five remain, then three, over which none is left."""
    chain = count(rows_of("k2tog, k to last 2 sts, k2tog", vocabulary), vocabulary)
    assert [passes_from(chain, start) for start in (6, 7, 8)] == [2, 2, 3]


def test_a_drift_is_reckoned_and_not_worked_out(vocabulary: Vocabulary) -> None:
    """Half a billion billion passes are told at once, to the last one."""
    fewer = count(rows_of("k2tog, k to last 2 sts, k2tog", vocabulary), vocabulary)
    assert passes_from(fewer, 10**18) == 5 * 10**17 - 1
    assert passes_until(fewer, 10**17 + 1, 3) == 5 * 10**16 - 1


def test_a_stitch_more_at_each_pass_goes_on_for_ever(vocabulary: Vocabulary) -> None:
    """Where any count works, so does the next one."""
    chain = count(rows_of("yo, k to end", vocabulary), vocabulary)
    assert can_repeat(chain)
    assert passes_from(chain, 5) is None


def test_counts_one_by_one_are_not_said_to_repeat() -> None:
    """Of two single counts it would have to be said which is meant."""
    two = (Progression.only(4), Progression.only(6))
    assert not can_repeat(Chain(two, 0, Fraction(1), ends=(4, 6)))


@pytest.mark.parametrize(
    ("text", "again", "start", "passes"),
    [
        ("*kfb; rep from * to end", True, 3, None),
        ("*k1, kfb; rep from * to end", False, 8, 3),
        ("*k2tog; rep from * to end", False, 24, 3),
        ("k1, *kfb; rep from * to end", True, 2, None),
        ("k1, *kfb, kfb, kfb; rep from * to end", True, 4, None),
        ("yo, *k2tog; rep from * to end", False, 4, 1),
    ],
)
def test_a_ratio_is_followed_pass_by_pass(
    text: str, again: bool, start: int, passes: int | None, vocabulary: Vocabulary
) -> None:
    """Doubling goes on; a gain of a half needs another factor of 2 each time."""
    chain = count(rows_of(text, vocabulary), vocabulary)
    assert (can_repeat(chain), passes_from(chain, start)) == (again, passes)


def test_a_count_that_a_ratio_leaves_alone_repeats_for_ever() -> None:
    """Three stitches dropped and the rest doubled: 6 stay 6."""
    row = (BindOff(3, joined=True), OpenRepeat((Work("kfb"),)))
    chain = count([row], VOCABULARY)
    assert passes_from(chain, 6) is None
    assert passes_from(chain, 5) == 2
    assert passes_until(chain, 6, 4) is None


def test_the_least_count_may_be_the_one_that_stays() -> None:
    """One stitch dropped and the rest doubled: 2 stay 2, and rows that take 2 or more take what they leave."""
    chain = count([(BindOff(1, joined=True), OpenRepeat((Work("kfb"),)))], VOCABULARY)
    assert can_repeat(chain)
    assert passes_from(chain, 2) is None


def test_a_ratio_is_followed_from_the_most_stitches_that_are_counted(vocabulary: Vocabulary) -> None:
    """They are halved once for each of their factors of 2, and once more where twice as many were on the needle."""
    chain = count(rows_of("*k2tog; rep from * to end", vocabulary), vocabulary)
    halved = next(many for many in range(100) if MOST_STITCHES >> many & 1)
    assert passes_from(chain, 2 * MOST_STITCHES) == halved + 1
    assert passes_until(chain, MOST_STITCHES, MOST_STITCHES // 2) == 1


@pytest.mark.parametrize(
    ("text", "start", "remain", "passes"),
    [
        ("k1, ssk, k to end", 41, 41, 0),
        ("k1, ssk, k to end", 41, 3, 38),
        ("k1, ssk, k to end", 41, 40, 1),
        ("k1, ssk, k to end", 41, 1, None),
        ("k2tog, k to last 2 sts, k2tog", 7, 3, 2),
        ("sl 1, k2tog, psso, k to last 2 sts, k2tog", 11, 5, 2),
        ("sl 1, k2tog, psso, k to last 2 sts, k2tog", 10, 5, None),
        ("k1, ssk, k to end", 41, 45, None),
        ("knit", 41, 3, None),
        ("*k2tog; rep from * to end", 24, 3, 3),
        ("*k2tog; rep from * to end", 24, 5, None),
        ("*kfb; rep from * to end", 3, 96, 5),
    ],
)
def test_until_so_many_remain(text: str, start: int, remain: int, passes: int | None, vocabulary: Vocabulary) -> None:
    """The passes are whole, each can be worked, and the wanted count is met exactly."""
    assert passes == passes_until(count(rows_of(text, vocabulary), vocabulary), start, remain)


def test_groups_and_bind_offs_are_cut_between_their_stitches() -> None:
    """Each stitch of a group may be the last; a stitch into which several are worked is one."""
    parts = (Group((Work("k2tog"), Work("yo")), 2), IntoOne((Work("k"), Work("p"))), BindOff(2))
    assert cuts(parts, VOCABULARY) == (0, 2, 4, 5)


def test_what_uses_no_stitch_hides_none_behind_it() -> None:
    """After a yarn-over the next stitches are cut as before; a stitch alone, and as many as are listed, are cut too."""
    assert cuts((Work("yo"), Work("k2tog"), Work("k", 3)), VOCABULARY) == (0, 2, 3, 4)
    assert cuts((Work("k"),), VOCABULARY) == (0,)
    assert len(cuts((Work("k", 10_000),), VOCABULARY)) == 10_000


def test_a_class_of_counts_holds_its_own_and_no_other() -> None:
    """A multiple of 6 plus 2 from 8 on; and one count alone, which is the next from itself on."""
    sixes, four = Progression(6, 2, 8), Progression.only(4)
    assert [count for count in range(30) if sixes.admits(count)] == [8, 14, 20, 26]
    assert four == Progression(0, 4, 4)
    assert (four.above(4), four.above(5), sixes.above(8), sixes.above(9)) == (4, None, 8, 14)


@pytest.mark.parametrize(
    ("of", "plus", "verdict"),
    [(6, 2, "right"), (6, 8, "right"), (12, 2, "wasteful"), (12, 8, "wasteful"), (6, 3, "wrong"), (9, 2, "wrong"),
     (4, 2, "wrong"), (12, 3, "wrong"), (0, 2, "wrong"), (-6, 2, "wrong")],
)  # fmt: skip
def test_a_stated_multiple_is_wrong_if_one_of_its_counts_is(of: int, plus: int, verdict: str) -> None:
    """Rows take a multiple of 6 plus 2: 12 plus 2 leaves out some, 9 plus 2 promises 11, and 6 plus 3 promises 9."""
    assert judge(of, plus, Progression(6, 2, 8)) == verdict


def test_rows_that_do_not_join_tell_what_each_leaves_over() -> None:
    """A multiple of 6 plus 1 is left and a multiple of 4 plus 2 is taken: odd where it must be even."""
    sixes = (OpenRepeat((Work("k", 6),), 1), Work("k"))
    fours = (OpenRepeat((Work("k", 4),), 2), Work("k", 2))
    misfit = count([sixes, fours], VOCABULARY).misfit
    assert misfit is not None
    assert (misfit.needs, misfit.multiple, misfit.modulus, misfit.residue, misfit.wanted) == (6, 4, 2, 1, 0)
    assert type(misfit.residue) is int


@pytest.mark.parametrize("parts", [(Work("yo"),), (Work("k", 10_001),)])
def test_a_repeat_of_no_stitch_or_too_many_is_not_cut(parts: tuple[Node, ...]) -> None:
    """There is nothing to stop at, or too much to list."""
    with pytest.raises(ValueError, match="is not cut"):
        cuts(parts, VOCABULARY)


def test_ways_take_edges_and_empty_repeats_into_account() -> None:
    """Between two edge stitches of 11, nine are three threes, or three pairs and one three."""
    row = (Work("k"), OpenRepeat((Work("k", 2),), None, plain=True), OpenRepeat((Work("p", 3),), None), Work("k"))
    assert ways(row, 11, VOCABULARY) == ((0, 3), (3, 1))


def test_ways_share_out_twos_and_fives() -> None:
    """Nineteen are two twos and three fives, or seven twos and one five."""
    row = (OpenRepeat((Work("k", 2),), None), OpenRepeat((Work("p", 5),), None))
    assert ways(row, 19, VOCABULARY) == ((2, 3), (7, 1))


def test_a_repeat_that_ends_otherwise_may_be_left_out() -> None:
    """Its last working is worked once; over the other six stitches the second repeat alone comes out."""
    row = (OpenRepeat((Work("k", 2),), None, last=(Work("k"),)), OpenRepeat((Work("p", 3),), None))
    assert ways(row, 7, VOCABULARY) == ((0, 2),)


def test_no_way_is_told_where_the_stitches_never_divide() -> None:
    """Twos and fours make no odd number."""
    row = (OpenRepeat((Work("k", 2),), None), OpenRepeat((Work("p", 4),), None))
    assert ways(row, 9, VOCABULARY) == ()


def test_each_of_two_repeats_is_worked_once_at_least() -> None:
    """Twelve are three twos and two threes, and neither six twos nor four threes."""
    row = (OpenRepeat((Work("k", 2),), None), OpenRepeat((Work("p", 3),), None))
    assert ways(row, 12, VOCABULARY) == ((3, 2),)


def test_ways_are_told_to_the_last_stitch() -> None:
    """Over a hundred million billion stitches and one, the second repeat comes out as exactly as over nineteen."""
    row = (OpenRepeat((Work("k", 2),), None), OpenRepeat((Work("p", 5),), None))
    assert ways(row, 10**17 + 1, VOCABULARY)[0] == (3, 2 * 10**16 - 1)


@pytest.mark.parametrize("uses", [(Work("yo"), Work("p", 3)), (Work("p", 3), Work("yo"))])
def test_a_repeat_that_uses_no_stitch_has_no_way(uses: tuple[Node, Node]) -> None:
    """It could be worked for ever."""
    assert ways(tuple(OpenRepeat((node,), None) for node in uses), 9, VOCABULARY) == ()


def test_ways_are_for_two_repeats() -> None:
    """One repeat has one way, and what is bound off behind two of them is of any number as well."""
    with pytest.raises(ValueError, match="two open repeats"):
        ways((KNIT,), 9, VOCABULARY)
    with pytest.raises(ValueError, match="two open repeats"):
        ways((KNIT, OpenRepeat((Work("p", 5),), None), BindOff(None)), 9, VOCABULARY)


def test_many_ways_are_cut_short() -> None:
    """Nobody reads more than twenty."""
    row = (OpenRepeat((Work("k"),), None), OpenRepeat((Work("p"),), None))
    assert len(ways(row, 10**9, VOCABULARY)) == 20
