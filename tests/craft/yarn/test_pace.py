"""Hours by a pace."""

from __future__ import annotations

from fractions import Fraction

from counterpane.craft.stitches import Vocabulary
from counterpane.craft.yarn.pace import hours, hours_at

from .asking import Starters, planned


def test_30624_stitches_at_20_a_minute() -> None:
    """E10 of the vectors that an independent script computed: 25.52 hours."""
    assert hours_at(30_624, Fraction(20)) == Fraction("25.52")


def test_lace_and_cables_are_slower_and_plain_rows_are_not(starters: Starters, vocabulary: Vocabulary) -> None:
    """Only the part that has yarn-overs or crossings."""
    for body, slow in (("stocking-stitch", ()), ("eyelet-dots", ("body",)), ("rope-cable", ("body",))):
        assert hours(planned(starters, vocabulary, body), vocabulary).slow_parts == slow


def test_at_a_pace_of_ones_own_only_the_turns_differ(starters: Starters, vocabulary: Vocabulary) -> None:
    """240 rows at 3 and at 5 seconds are 8 minutes apart."""
    found = hours(planned(starters, vocabulary, "stocking-stitch"), vocabulary, Fraction(20))
    assert found.slow - found.quick == Fraction(240 * 2, 3600)


def test_twice_the_pace_takes_half_as_long_but_for_the_turns(starters: Starters, vocabulary: Vocabulary) -> None:
    """Also where some parts are slower."""
    plan = planned(starters, vocabulary, "old-shale")
    turns = Fraction(sum(section.rows for section in plan.sections) * 3, 3600)
    slow, quick = (hours(plan, vocabulary, Fraction(pace)).quick - turns for pace in (12, 24))
    assert slow == 2 * quick
