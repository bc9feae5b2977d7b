"""Notes of a pattern about its seams: in words that can be worked, beside rows whose counts stay as they are."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest

from counterpane.craft.component import Component
from counterpane.craft.pattern import Pattern
from counterpane.craft.stitches import Terms, Vocabulary
from counterpane.library.patterns.patterns import recheck, write_pattern
from counterpane.library.plans.plans import make_plan, plan_request_of
from counterpane.press.markdown import as_markdown
from counterpane.press.text import as_text

Starters = Mapping[str, Component]
GARTER = {"stitches": 20.5, "rows": 42, "over_cm": 10, "in": "garter-border"}


def written(
    starters: Starters, vocabulary: Vocabulary, terms: Terms = "us", body: str = "waffle", known: bool = True
) -> Pattern:
    """Write a blanket with garter borders, whose gauge is known or not."""
    gauges: list[dict[str, Any]] = [{"stitches": 22, "rows": 30, "over_cm": 10, "in": body}]
    content = {
        "parts": {"body": body, "selvedge": "slipped-selvedge"},
        "gauge": [*gauges, GARTER] if known else gauges,
        "size": {"width_cm": 70, "length_cm": 90},
    }
    return write_pattern(
        make_plan(plan_request_of(content, starters.__getitem__, vocabulary), vocabulary), vocabulary, terms
    )


def notes(pattern: Pattern) -> str:
    """Return all notes as one text."""
    return "\n".join(pattern.notes)


@pytest.mark.parametrize("terms", ["us", "uk"])
@pytest.mark.parametrize("body", ["waffle", "stocking-stitch", "basket-weave", "eyelet-dots"])
def test_a_pattern_with_its_seam_notes_checks_clean(
    terms: Terms, body: str, starters: Starters, vocabulary: Vocabulary
) -> None:
    """The words of the notes are not taken for rows of the pattern, in either form."""
    pattern = written(starters, vocabulary, terms, body)
    assert "k2tog" in notes(pattern) and "turn" in notes(pattern)
    for press in (as_text, as_markdown):
        assert recheck(pattern, press(pattern), vocabulary) == ()


def test_extra_rows_are_told_with_their_words_and_how_many(starters: Starters, vocabulary: Vocabulary) -> None:
    """About 50 pairs by the gauges, at the right and at the left edge, the slipped edge stitch worked too."""
    said = notes(written(starters, vocabulary))
    assert "about 50 extra pairs of border rows" in said and "by the gauges given" in said
    assert said.count("turn; then work the row") == 2


def test_what_the_notes_abbreviate_is_explained(starters: Starters, vocabulary: Vocabulary) -> None:
    """The list of abbreviations has the increase and the decrease that stand in the notes alone."""
    names = {entry.name for entry in written(starters, vocabulary).abbreviations}
    assert {"m1", "k2tog", "rep"} <= names


def test_without_swatches_the_row_that_changes_the_count_is_left_to_them(
    starters: Starters, vocabulary: Vocabulary
) -> None:
    """A figure from memory gives the extra rows as a range, and no row written to the stitch."""
    said = notes(written(starters, vocabulary, body="stocking-stitch", known=False))
    assert "from memory" in said and "extra pairs" in said
    assert "k2tog" not in said and "m1" not in said


def test_fabrics_that_lie_level_have_no_notes_about_seams(starters: Starters, vocabulary: Vocabulary) -> None:
    """Garter round garter needs nothing."""
    assert "as you like" not in notes(written(starters, vocabulary, body="garter", known=False))
