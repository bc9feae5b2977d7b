"""What narrows an unknown count down: classes, bounds, single counts, and the stitches that wait meanwhile."""

from __future__ import annotations

import pytest

from counterpane.craft.counts import Progression, count
from counterpane.craft.counts.needle import MOST_STITCHES, Amount, Needle
from counterpane.craft.rows.tree import Hold, Node, OpenRepeat, Place, Turn, Work

from .handmade import KNIT, PLACE, SLIP
from .small_vocabulary import VOCABULARY

# Each working leaves one stitch less than there was, so that the stitches before it end it.
SHRINKING = OpenRepeat((Work("k"), Work("psso"), Work("psso")))
PAIRS = OpenRepeat((Work("k", 2),))
FIVE_TO_ONE = (Work("k", 6), SHRINKING)  # Takes 7 to 11 stitches and leaves 5 to 1.


def only(*counts: int) -> tuple[Progression, ...]:
    """Return single counts."""
    return tuple(map(Progression.only, counts))


def test_what_falls_is_least_at_the_end() -> None:
    """Ten less t is least where t is most; what rises is least where t is least."""
    needle = Needle((Amount(10, -1),), low=2, high=4)
    assert (needle.least(Amount(10, -1)), needle.least(Amount(10, 3)), needle.least(Amount(7))) == (6, 16, 7)


def test_pairs_and_fives_meet_in_tens() -> None:
    """An even number of stitches is one more than a multiple of five at 6, 16 and 26."""
    assert count([(PAIRS,), (OpenRepeat((Work("k", 5),), 1), Work("k"))], VOCABULARY).starts == (Progression(10, 6, 6),)


@pytest.mark.parametrize(
    ("later", "starts", "ends"),
    [
        ((PAIRS,), (8, 10), (4, 2)),
        ((OpenRepeat((Work("k", 5),)),), (7,), (5,)),
        ((OpenRepeat((Work("k", 3),)),), (9,), (3,)),
        ((Work("k"),), (11,), (1,)),
        ((Work("k", 5),), (7,), (5,)),
        ((KNIT,), (7, 8, 9, 10, 11), (5, 4, 3, 2, 1)),
        ((Work("k", 3), KNIT), (7, 8, 9), (5, 4, 3)),
    ],
)
def test_of_few_counts_a_later_row_leaves_fewer(
    later: tuple[Node, ...], starts: tuple[int, ...], ends: tuple[int, ...]
) -> None:
    """Of 5 to 1 stitches some are pairs, one is five, one is three, and the first and the last can be asked for."""
    chain = count([FIVE_TO_ONE, later], VOCABULARY)
    assert (chain.starts, chain.ends) == (only(*starts), ends)


def test_what_falls_and_rises_again_has_an_end_still() -> None:
    """Of 13 to 23 stitches 11 to 1 are left, of which the next row takes 7 to 11 and leaves 5 to 1, here in pairs."""
    chain = count([(Work("k", 12), SHRINKING), FIVE_TO_ONE, (PAIRS,)], VOCABULARY)
    assert (chain.starts, chain.ends) == (only(14, 16), (2, 4))


def test_sixty_four_single_counts_are_listed_and_no_more() -> None:
    """Over so many stitches as can be passed over, less one; a number that no computer counts to is not listed."""
    assert count([(Work("k", 65), SHRINKING)], VOCABULARY).starts == only(*range(66, 130))
    assert count([(Work("k", 66), SHRINKING)], VOCABULARY).proved_at_count_only
    assert count([(Work("m1", 10**25), SHRINKING)], VOCABULARY).proved_at_count_only


def test_the_most_stitches_that_are_looked_at_are_told() -> None:
    """A row of one stitch more is proved at a count only."""
    assert count([(Work("k", MOST_STITCHES),)], VOCABULARY).starts == only(MOST_STITCHES)
    assert count([(Work("k", MOST_STITCHES + 1),)], VOCABULARY).proved_at_count_only


def test_stitches_that_wait_behind_a_turn_are_settled_with_the_count() -> None:
    """Three less t are worked back, of which two are purled: t is one, and none waits at the end."""
    rows = [
        (Work("k", 3), OpenRepeat((Work("k"), Work("psso"), Work("psso")), 4), Turn(), Work("p", 2), Turn()),
        (KNIT,),
    ]
    chain = count(rows, VOCABULARY)
    assert (chain.starts, chain.ends) == (only(8), (6,))


def test_a_cable_needle_waits_while_a_repeat_is_worked() -> None:
    """Two stitches are held, all others knitted, and the two at last."""
    chain = count([(Hold(2), KNIT, Work("k", 2, held=True))], VOCABULARY)
    assert (chain.starts, chain.drift) == ((Progression(1, 0, 2),), 0)


def test_a_round_meets_the_markers_where_it_placed_them() -> None:
    """Four stitches to the marker are met first in the round; a row that is turned begins with all the others."""
    rows = [(Work("k", 4), PLACE, KNIT), (OpenRepeat((Work("k", 2), Work("p", 2)), 0, marker=True), SLIP, KNIT)]
    assert count(rows, VOCABULARY, ("round", "round")).starts == (Progression(1, 0, 4),)
    assert count(rows, VOCABULARY).starts == (Progression(4, 0, 8),)


def test_a_repeat_is_weighed_to_the_last_working() -> None:
    """Stitch by stitch a row works one and a hundred million billion times what the next row works once."""
    wide = OpenRepeat((Work("k", 10**17 + 1),))
    assert count([(OpenRepeat((Work("k"),)),), (wide,)], VOCABULARY).weights == (10**17 + 1, 1)


def test_threes_with_one_left_never_become_threes_with_two() -> None:
    """One row takes a multiple of 3 and 1 more, the next 2 more: told with the classes and the place of the repeat."""
    first = (OpenRepeat((Work("k", 3),), 1), Work("k"))
    second = (OpenRepeat((Work("k", 3),), 2, place=Place(2, 1)), Work("k", 2))
    misfit = count([first, second], VOCABULARY).misfit
    assert misfit is not None
    assert (misfit.place, misfit.modulus, misfit.residue, misfit.wanted) == (Place(2, 1), 3, 1, 2)
