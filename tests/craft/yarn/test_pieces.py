"""Yarns of stripes: how often each is cut, against the stripes gone through row by row."""

from __future__ import annotations

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from counterpane.craft.stitches import Vocabulary
from counterpane.craft.yarn import Yarn, estimate

from .asking import Starters, planned

SIZE = {"width_cm": 24, "length_cm": 30}


def striped(rows: tuple[int, ...], every: int) -> list[Yarn]:
    """Return a main yarn, and one for some rows of the body."""
    return [Yarn(colour="MC"), Yarn(colour="A", parts=("body",), rows=rows, every=every)]


@pytest.mark.parametrize(
    ("rows", "every", "cut"),
    [
        ((1, 2), 4, False),  # two and two: both are carried up the side
        ((1, 2), 6, False),  # A waits over four rows
        ((1, 2), 8, True),  # six rows are too many to carry A over
        ((1, 2, 3, 4, 5, 6), 12, True),
        ((1,), 2, True),  # after one row the other yarn lies at the far edge
    ],
)
def test_a_yarn_is_carried_over_few_rows_that_bring_it_back(
    rows: tuple[int, ...], every: int, cut: bool, starters: Starters, vocabulary: Vocabulary
) -> None:
    """Common practice carries the yarn of narrow stripes of an even number of rows up the side."""
    plan = planned(starters, vocabulary, "stocking-stitch", size=SIZE)
    other = estimate(plan, striped(rows, every), vocabulary).colours[1]
    assert (other.pieces > 1) is cut
    assert other.ends == 2 * other.pieces


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    stripes=st.integers(2, 14).flatmap(
        lambda every: st.tuples(st.sets(st.integers(1, every), min_size=1), st.just(every))
    )
)
def test_pieces_are_those_of_the_stripes_gone_through(
    stripes: tuple[set[int], int], starters: Starters, vocabulary: Vocabulary
) -> None:
    """The yarn of each row is written down; a new piece begins where the same yarn lay too long or at the far edge."""
    rows, every = stripes
    plan = planned(starters, vocabulary, "stocking-stitch", size=SIZE)
    works = ["MC"]
    for section in plan.sections:
        in_body = section.name == "body"
        works += ["A" if in_body and row % every + 1 in rows else "MC" for row in range(section.rows)]
    works.append("MC")
    pieces, last = {"MC": 0, "A": 0}, {"MC": -99, "A": -99}
    for row, colour in enumerate(works):
        waited = row - last[colour] - 1
        pieces[colour] += waited > 4 or waited % 2 == 1
        last[colour] = row
    found = estimate(plan, striped(tuple(sorted(rows)), every), vocabulary).colours
    assert {str(each.yarn.colour): each.pieces for each in found} == {key: n for key, n in pieces.items() if n}
