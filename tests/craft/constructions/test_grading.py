"""Borders in proportion: their share is kept as nearly as whole repeats allow, and their rows stay the same rows."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from counterpane.craft.component import Component
from counterpane.craft.constructions.grading import in_proportion
from counterpane.craft.stitches import Vocabulary
from craft.constructions.asking import asked, planned

Starters = Mapping[str, Component]
SEED = {"component": "seed-stitch-border", "stitches": 5}
SIDES = st.integers(20, 300)


@settings(max_examples=60, deadline=None)
@given(SIDES, SIDES)
def test_no_even_rows_and_no_stitches_are_nearer_the_share(
    starters: Starters, vocabulary: Vocabulary, width: int, length: int
) -> None:
    """Trying every number of them finds none nearer, of 12 rows and 6 stitches in a piece of 70 by 90."""
    sample = planned(starters, vocabulary, "waffle")
    found = in_proportion(
        replace(sample.request, width_cm=Fraction(width), length_cm=Fraction(length)), sample, vocabulary
    )
    assert found.bottom and found.sides and found.bottom.rows and found.sides.stitches
    rows, stitches = Fraction(12 * length, 90), Fraction(6 * width, 70)
    assert abs(found.bottom.rows - rows) == min(abs(each - rows) for each in range(2, 100, 2))
    assert abs(found.sides.stitches - stitches) == min(abs(each - stitches) for each in range(1, 100))
    assert found.top is not None
    assert found.top.rows == found.bottom.rows


@pytest.mark.parametrize("width", [30, 50, 70, 90, 140])
def test_a_moss_border_keeps_its_odd_number_of_stitches(starters: Starters, vocabulary: Vocabulary, width: int) -> None:
    """An even number would be worked in other rows."""
    sample = planned(starters, vocabulary, "garter", sides=SEED)
    found = in_proportion(replace(sample.request, width_cm=Fraction(width)), sample, vocabulary).sides
    assert found is not None
    assert (found.stitches or 0) % 2 == 1


def test_the_sample_keeps_its_own_borders(starters: Starters, vocabulary: Vocabulary) -> None:
    """Nothing changes in the size that they were meant for; usual numbers are written out."""
    sample = planned(starters, vocabulary, "waffle", sides=SEED)
    found = in_proportion(sample.request, sample, vocabulary)
    assert (found.bottom and found.bottom.rows, found.sides and found.sides.stitches) == (12, 5)


def test_sides_of_a_fixed_count_and_no_borders_stay(starters: Starters, vocabulary: Vocabulary) -> None:
    """A lace edge of seven stitches has no other width."""
    edge = {"text": "Row 1 (RS): k3, yo, k2tog, k2.\nRow 2 (WS): k7."}
    request = asked(starters, vocabulary, "garter", sides=edge, bottom=None, top=None)
    sample = planned(starters, vocabulary, "garter", sides=edge, bottom=None, top=None)
    wide = replace(request, width_cm=Fraction(140))
    assert in_proportion(wide, sample, vocabulary) == wide


def test_a_piece_without_side_borders_has_none_at_another_size(starters: Starters, vocabulary: Vocabulary) -> None:
    """Nothing is added to what was asked."""
    sample = planned(starters, vocabulary, "garter", sides=None)
    wide = replace(sample.request, width_cm=Fraction(140))
    assert in_proportion(wide, sample, vocabulary).sides is None


def test_a_border_grows_to_the_most_that_it_may_have(starters: Starters, vocabulary: Vocabulary) -> None:
    """Six stitches of a piece of 70 cm would be twelve of one of 140 cm; the border is worked over eight at most."""
    garter = starters["garter-border"]
    limits = tuple(replace(each, most=8) if each.name == "stitches" else each for each in garter.parameters)
    narrow = replace(garter, slug="narrow-garter", parameters=limits)
    sides = {"component": "narrow-garter", "stitches": 6}
    sample = planned({**starters, "narrow-garter": narrow}, vocabulary, "waffle", sides=sides)
    found = in_proportion(replace(sample.request, width_cm=Fraction(140)), sample, vocabulary).sides
    assert found is not None
    assert found.stitches == 8
