"""How far a piece is, and the way back from a row."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from math import ceil

import pytest

from counterpane.craft.component import Component
from counterpane.craft.helping.back import way_back
from counterpane.craft.helping.progress import progress
from counterpane.craft.helping.rows import worked_rows
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.trace import trace
from craft.constructions.asking import planned

Starters = Mapping[str, Component]


@pytest.mark.parametrize("body", ["waffle", "old-shale", "eyelet-dots"])
def test_the_share_is_that_of_the_loops_on_a_real_needle(starters: Starters, vocabulary: Vocabulary, body: str) -> None:
    """Each row leaves so many loops; the bind-off takes those of the last row once more."""
    plan = planned(starters, vocabulary, body, 30, 30)
    rows = worked_rows(plan, 1, 10**6, vocabulary)
    traced = trace([row.row.parts for row in rows], rows[0].before, vocabulary, [row.row.side for row in rows])
    loops = [step.after or 0 for step in traced.steps]
    assert [row.after for row in rows] == loops
    for done in (1, 7, len(rows) // 2, len(rows)):
        found = progress(plan, done, vocabulary)
        assert found.share == Fraction(sum(loops[:done]), sum(loops) + loops[-1])


def test_the_way_back_by_hand(starters: Starters, vocabulary: Vocabulary) -> None:
    """Two rows, undone and knitted again, at 25 and 15 stitches a minute; with them four turns of 3 and 5 seconds."""
    plan = planned(starters, vocabulary, "waffle", cast_on="long-tail")
    rows = worked_rows(plan, 1, 40, vocabulary)
    way = way_back(rows, rows[-2].number)
    stitches = rows[-1].after + rows[-2].after
    assert (way.undone, way.again, way.onto) == (stitches, stitches, None)
    quick, slow = Fraction(2 * stitches, 25) + Fraction(4 * 3, 60), Fraction(2 * stitches, 15) + Fraction(4 * 5, 60)
    assert way.minutes() == (ceil(quick), ceil(slow))
    assert way.minutes(Fraction(20)) == (
        ceil(Fraction(2 * stitches, 20) + Fraction(4 * 3, 60)),
        ceil(Fraction(2 * stitches, 20) + Fraction(4 * 5, 60)),
    )


def test_a_way_back_through_lace_takes_longer(starters: Starters, vocabulary: Vocabulary) -> None:
    """By hand: one row, undone and knitted again at 0.7 of 25 and 15 stitches a minute, and two turns."""
    plan = planned(starters, vocabulary, "eyelet-dots", 61, 70)
    rows = worked_rows(plan, 1, 47, vocabulary)
    way = way_back(rows, 47)
    quick, slow = (Fraction(2 * rows[-1].after) / (Fraction(7, 10) * pace) for pace in (25, 15))
    assert way.minutes() == (ceil(quick + Fraction(2 * 3, 60)), ceil(slow + Fraction(2 * 5, 60)))


def test_far_back_the_needle_takes_up_a_plain_row(starters: Starters, vocabulary: Vocabulary) -> None:
    """Its loops are easily caught; all rows above it are knitted again."""
    plan = planned(starters, vocabulary, "waffle")
    begin = plan.sections[0].rows if len(plan.sections) > 1 else 0
    rows = worked_rows(plan, 1, begin + 11, vocabulary)
    way = way_back(rows, begin + 6)
    assert (way.undone, way.onto) == (0, begin + 4)
    assert way.again == sum(row.after for row in rows if row.number > begin + 4)
