"""A swatch of each fabric of a plan: large enough, whole, with the edges of the blanket, and worked as written."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from counterpane.craft.component import Component
from counterpane.craft.constructions.swatching import LEAST_CM, swatches
from counterpane.craft.pattern.swatches import no_swatch_words, swatch_words
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
    for swatch in swatches(plan, vocabulary).made:
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
    for swatch in swatches(planned(starters, vocabulary, body), vocabulary).made:
        checked = check_text("\n".join(lines_of(swatch.piece, vocabulary)), vocabulary)
        assert checked["findings"] == []
        assert {row["after"] for row in checked["rows"]} == {swatch.piece.counts.cast_on}


def test_parts_of_the_same_rows_share_a_swatch(starters: Starters, vocabulary: Vocabulary) -> None:
    """Garter at the borders and in the body is one fabric; a band of another is its own."""
    one = swatches(planned(starters, vocabulary, "garter"), vocabulary).made
    assert [swatch.places for swatch in one] == [("bottom", "sides", "body", "top")]
    two = swatches(planned(starters, vocabulary, ["garter", "waffle"]), vocabulary).made
    assert [swatch.places for swatch in two] == [("bottom", "sides", "body 1", "top"), ("body 2",)]


def test_each_swatch_is_reckoned_by_its_own_gauge(starters: Starters, vocabulary: Vocabulary) -> None:
    """Where there is none, the counts are a guess and say so."""
    gauge = [
        {"in": "waffle", "stitches": 22, "rows": 30, "over_cm": 10},
        {"in": "garter-border", "stitches": 16, "rows": 32, "over_cm": 10},
    ]
    known = {
        swatch.places[0]: swatch
        for swatch in swatches(planned(starters, vocabulary, "waffle", gauge=gauge), vocabulary).made
    }
    assert (known["bottom"].piece.counts.cast_on, known["bottom"].borrowed) == (24, False)
    guessed = swatches(planned(starters, vocabulary, "waffle"), vocabulary).made
    assert [swatch.borrowed for swatch in guessed] == [True, False]


def test_a_fabric_of_one_count_is_narrow_and_is_said_to_be(starters: Starters, vocabulary: Vocabulary) -> None:
    """A strip of twelve stitches cannot be made wider."""
    strip = {"text": "Row 1 (RS): k12.\nRow 2 (WS): p12."}
    plan = planned(starters, vocabulary, strip, width="5.5", sides=None, bottom=None, top=None)
    swatch = swatches(plan, vocabulary).made[0]
    assert (swatch.piece.counts.cast_on, swatch.narrow) == (12, True)
    said = " ".join(swatch_words(swatch, vocabulary, "us").making)
    assert "It is narrower than the 15.0 cm (6 in) that tell a size: this fabric has no wider count." in said


def test_a_border_too_narrow_for_the_cast_on_has_no_swatch(starters: Starters, vocabulary: Vocabulary) -> None:
    """A cable cast-on begins with two stitches: a side border of one is worked beside a body, and never alone."""
    single = {"text": "Row 1 (RS): k1.\nRow 2 (WS): p1."}
    plan = planned(starters, vocabulary, "waffle", sides=single, cast_on="cable-cast-on")
    found = swatches(plan, vocabulary)
    assert [swatch.places for swatch in found.made] == [("bottom", "top"), ("body",)]
    assert [missing.places for missing in found.missing] == [("sides",)]
    words = no_swatch_words(found.missing[0], "uk")
    assert words.where == "side borders"
    assert words.steps[0] == "It has no swatch: alone it has too few stitches for the cast-on."


def test_a_part_that_begins_alone_in_the_middle_of_its_edge_has_no_swatch(
    starters: Starters, vocabulary: Vocabulary
) -> None:
    """In the blanket its first row, on the WS, meets row 4 of the selvedge; alone it would meet row 2, of one more."""
    edge = {"text": "Row 1 (RS): k1, yo, k1.\nRow 2: k3.\nRow 3: k1, k2tog.\nRow 4: k2."}
    parts = {"bottom": {"text": "Row 1: knit.", "rows": 7}, "top": None, "sides": None, "selvedge": edge}
    plan = planned(starters, vocabulary, {"text": "Row 1 (WS): *k1, p1; rep from * to end.", "rows": 101}, **parts)
    found = swatches(plan, vocabulary)
    assert ([each.places for each in found.made], [each.places for each in found.missing]) == (
        [("bottom",)],
        [("body",)],
    )
    said = " ".join(no_swatch_words(found.missing[0], "us").steps)
    assert "its rows cannot be worked alone with the edges of the blanket" in said


def test_a_border_that_meets_the_selvedge_anew_too_late_has_a_swatch_of_its_own_repeats(
    starters: Starters, vocabulary: Vocabulary
) -> None:
    """Rows of 53 beside an edge of 47 begin again together after 2491; two of the 53 are fifteen centimetres."""
    border = "\n".join(f"Row {number}: {'knit' if number % 5 else 'purl'}." for number in range(1, 54))
    edge = "\n".join(f"Row {number}: {'k1' if number % 3 else 'p1'}." for number in range(1, 48))
    plan = planned(
        starters, vocabulary, "garter", bottom={"text": border, "rows": 12}, top=None, selvedge={"text": edge}
    )
    found = swatches(plan, vocabulary)
    assert (found.made[0].places, found.made[0].piece.sections[0].rows) == (("bottom",), 53)
    assert found.missing == ()
