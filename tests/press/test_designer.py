"""The designer's sheet on paper and on a screen."""

from __future__ import annotations

import io
from collections.abc import Mapping

import pytest
from pypdf import PdfReader

from counterpane.craft.component import Component
from counterpane.craft.pattern.designing import DesignerSheet, designer_sheet
from counterpane.craft.pattern.units import pattern_in_units
from counterpane.craft.stitches import Terms
from counterpane.craft.yarn import Yarn, estimate
from counterpane.library.patterns.patterns import write_pattern
from counterpane.press.data import sheet_data
from counterpane.press.designer import as_sheet
from craft.constructions.asking import planned
from craft.pattern.plans import vocabulary

HEADINGS = ("Counts", "Why these numbers", "Counts near it", "Gauges", "Yarn", "Findings", "Safety", "Credits")


def sheet(starters: Mapping[str, Component], terms: Terms = "us", *, yarn: bool = True) -> DesignerSheet:
    """Return the sheet of an invented waffle."""
    plan = planned(starters, vocabulary(), "waffle")
    wool = estimate(plan, [Yarn("an invented wool", ball_g=50, ball_m=125)], vocabulary()) if yarn else None
    return designer_sheet(plan, write_pattern(plan, vocabulary(), terms), vocabulary(), wool)


def test_a_sheet_holds_counts_sums_yarn_and_findings(starters: Mapping[str, Component]) -> None:
    """In this order, as text."""
    text = as_sheet(sheet(starters), "text").decode()
    places = [text.index(f"\n{heading}\n") for heading in HEADINGS]
    assert places == sorted(places)
    assert all(finding.rule in text for finding in sheet(starters).plan.findings)


def test_markdown_has_its_tables(starters: Mapping[str, Component]) -> None:
    """A head, a rule, and a line for each part."""
    text = as_sheet(sheet(starters), "markdown").decode()
    assert "| Part | Rows | From row | Before | After | Stitches | Wide and long |\n| --- |" in text
    assert "| in all |" in text


@pytest.mark.parametrize("form", ["html", "pdf"])
def test_a_page_holds_the_sums(starters: Mapping[str, Component], form: str) -> None:
    """Minus and times are signs of their own."""
    made = as_sheet(sheet(starters), form)
    words = made.decode() if form == "html" else PdfReader(io.BytesIO(made)).pages[0].extract_text()
    assert "Why these numbers" in words and "×" in words and "÷" in words


def test_a_sheet_in_uk_terms_speaks_of_tension(starters: Mapping[str, Component]) -> None:
    """Not of gauge, and of casting off; the slugs of rules stand as they are."""
    text = as_sheet(sheet(starters, "uk"), "text").decode()
    assert "\nTensions\n" in text and "Cast-off: " in text
    assert "Bind-off: " not in text


def test_a_sum_stays_in_centimetres_where_lengths_are_in_inches(starters: Mapping[str, Component]) -> None:
    """Its gauges are over centimetres; what is no sum is said in inches."""
    found = sheet(starters)
    inches = designer_sheet(found.plan, pattern_in_units(found.pattern, "in"), vocabulary())
    text = as_sheet(inches, "text").decode()
    assert "cm × " in text and " in by " in text and " cm by " not in text


def test_without_yarn_the_sheet_says_so(starters: Mapping[str, Component]) -> None:
    """Nothing is made up."""
    assert "No yarn is told" in as_sheet(sheet(starters, yarn=False), "text").decode()


def test_the_data_name_each_number_with_its_unit(starters: Mapping[str, Component]) -> None:
    """For another program, lengths to 0.1 cm."""
    told = {each["name"]: (each["number"], each["unit"]) for each in sheet_data(sheet(starters))["derivations"]}
    plan = sheet(starters).plan
    assert told["Cast-on"] == (plan.counts.cast_on, "stitches")
    assert told["All stitches"] == (plan.stitches_total, "stitches")
