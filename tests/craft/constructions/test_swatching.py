"""A swatch of each fabric of a plan: large enough, whole, with the edges of the blanket, and worked as written."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from counterpane.craft.component import Component
from counterpane.craft.constructions.swatching import LEAST_CM, swatches
from counterpane.craft.pattern.swatches import swatch_words
from counterpane.craft.stitches import Vocabulary
from counterpane.library.plans.plan_proofs import lines_of
from counterpane.library.texts.checks import check_text
from craft.constructions.asking import planned

Starters = Mapping[str, Component]
BODIES = ("waffle", "basket-weave", "garter", "stocking-stitch", "seed-stitch", "eyelet-rows")


@pytest.mark.parametrize("body", BODIES)
@pytest.mark.parametrize("selvedge", [None, "slipped-selvedge"])
def test_a_swatch_is_the_least_whole_piece_of_fifteen_centimetres(
    starters: Starters, vocabulary: Vocabulary, body: str, selvedge: str | None
) -> None:
    """One repeat less across, or one less in height, would be too small: trying every count says the same."""
    plan = planned(starters, vocabulary, body, selvedge=selvedge)
    for swatch in swatches(plan, vocabulary):
        section, gauge = swatch.piece.sections[0], swatch.piece.request.gauges[0]
        assert swatch.piece.width_cm >= LEAST_CM
        assert swatch.piece.length_cm >= LEAST_CM
        edge = 2 * swatch.piece.counts.selvedge
        text = "\n".join(lines_of(swatch.piece, vocabulary)[1:])
        works = [n for n in range(1, section.before) if not check_text(text, vocabulary, cast_on=n)["findings"]]
        assert all(gauge.width(count) < LEAST_CM for count in works if count > edge)
        assert gauge.length(section.rows - len(section.cycle)) < LEAST_CM


@pytest.mark.parametrize("body", BODIES)
def test_the_rows_of_a_swatch_are_read_and_counted_clean(starters: Starters, vocabulary: Vocabulary, body: str) -> None:
    """The second road: its text, checked as a stranger would."""
    for swatch in swatches(planned(starters, vocabulary, body), vocabulary):
        checked = check_text("\n".join(lines_of(swatch.piece, vocabulary)), vocabulary)
        assert checked["findings"] == []
        assert {row["after"] for row in checked["rows"]} == {swatch.piece.counts.cast_on}


def test_parts_of_the_same_rows_share_a_swatch(starters: Starters, vocabulary: Vocabulary) -> None:
    """Garter at the borders and in the body is one fabric; a band of another is its own."""
    one = swatches(planned(starters, vocabulary, "garter"), vocabulary)
    assert [swatch.places for swatch in one] == [("bottom", "sides", "body", "top")]
    two = swatches(planned(starters, vocabulary, ["garter", "waffle"]), vocabulary)
    assert [swatch.places for swatch in two] == [("bottom", "sides", "body 1", "top"), ("body 2",)]


def test_each_swatch_is_reckoned_by_its_own_gauge(starters: Starters, vocabulary: Vocabulary) -> None:
    """Where there is none, the counts are a guess and say so."""
    gauge = [
        {"in": "waffle", "stitches": 22, "rows": 30, "over_cm": 10},
        {"in": "garter-border", "stitches": 16, "rows": 32, "over_cm": 10},
    ]
    known = {
        swatch.places[0]: swatch
        for swatch in swatches(planned(starters, vocabulary, "waffle", gauge=gauge), vocabulary)
    }
    assert (known["bottom"].piece.counts.cast_on, known["bottom"].borrowed) == (24, False)
    guessed = swatches(planned(starters, vocabulary, "waffle"), vocabulary)
    assert [swatch.borrowed for swatch in guessed] == [True, False]


def test_a_fabric_of_one_count_is_narrow_and_is_said_to_be(starters: Starters, vocabulary: Vocabulary) -> None:
    """A strip of twelve stitches cannot be made wider."""
    strip = {"text": "Row 1 (RS): k12.\nRow 2 (WS): p12."}
    plan = planned(starters, vocabulary, strip, width="5.5", sides=None, bottom=None, top=None)
    swatch = swatches(plan, vocabulary)[0]
    assert (swatch.piece.counts.cast_on, swatch.narrow) == (12, True)
    said = " ".join(swatch_words(swatch, vocabulary, "us").making)
    assert "It is narrower than the 15.0 cm (6 in) that tell a size: this fabric has no wider count." in said


def test_a_border_too_narrow_for_the_cast_on_has_no_swatch(starters: Starters, vocabulary: Vocabulary) -> None:
    """A cable cast-on begins with two stitches: a side border of one is worked beside a body, and never alone."""
    single = {"text": "Row 1 (RS): k1.\nRow 2 (WS): p1."}
    plan = planned(starters, vocabulary, "waffle", sides=single, cast_on="cable-cast-on")
    assert [swatch.places for swatch in swatches(plan, vocabulary)] == [("bottom", "top"), ("body",)]


def test_a_border_that_meets_the_selvedge_anew_too_late_has_no_swatch(
    starters: Starters, vocabulary: Vocabulary
) -> None:
    """Rows of 53 beside an edge of 47 begin again together after 2491: twelve are a border, and no repeat is whole."""
    border = "\n".join(f"Row {number}: {'knit' if number % 5 else 'purl'}." for number in range(1, 54))
    edge = "\n".join(f"Row {number}: {'k1' if number % 3 else 'p1'}." for number in range(1, 48))
    plan = planned(
        starters, vocabulary, "garter", bottom={"text": border, "rows": 12}, top=None, selvedge={"text": edge}
    )
    assert [swatch.places for swatch in swatches(plan, vocabulary)] == [("sides", "body")]
