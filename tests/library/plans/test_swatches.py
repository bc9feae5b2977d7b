"""Swatches of a plan in words, in a plan, and in a pattern."""

from __future__ import annotations

from typing import Any

import pytest

from counterpane.craft.erratum.lines import lines_of
from counterpane.library.patterns.patterns import recheck
from counterpane.library.plans import planning
from counterpane.library.plans.bench import bench_of
from counterpane.library.plans.swatches import write_swatches
from counterpane.library.services import Services
from counterpane.library.texts.checks import check_text
from counterpane.press.text import as_text
from counterpane.wiring import open_library

REQUEST: dict[str, Any] = {
    "parts": {"body": "waffle", "selvedge": "slipped-selvedge"},
    "gauge": {"in": "waffle", "stitches": 22, "rows": 30, "over_cm": 10},
    "size": {"width_cm": 70, "length_cm": 90},
}


@pytest.fixture(scope="module")
def library() -> Services:
    """Return a library with the starters."""
    return open_library()


@pytest.mark.parametrize("terms", ["us", "uk"])
def test_the_text_of_a_swatch_checks_clean(library: Services, terms: str) -> None:
    """In the terms that it is written in."""
    for swatch in write_swatches(REQUEST | {"terms": terms}, bench_of(library, REQUEST))["swatches"]:
        checked = check_text(swatch["text"], library.vocabulary, terms=terms)
        assert (checked["cast_on"], checked["findings"]) == (swatch["cast_on"], [])


def test_a_swatch_is_asked_everything_before_a_blanket_is_begun(library: Services) -> None:
    """Weighed, counted, washed, counted again, hung, tried with a rod, stretched."""
    steps = " ".join(write_swatches(REQUEST, bench_of(library, REQUEST))["swatches"][1]["steps"])
    for word in (
        "weigh it",
        "Count stitches and rows",
        "Wash it as the blanket",
        "Hang it",
        "rods of 5 and 7 mm",
        "bind-off:",
    ):
        assert word in steps


def test_uk_words_are_used_throughout(library: Services) -> None:
    """Nothing is bound off there."""
    steps = " ".join(write_swatches(REQUEST | {"terms": "uk"}, bench_of(library, REQUEST))["swatches"][0]["steps"])
    assert "cast-off" in steps.lower()
    assert "bind" not in steps.lower()


def test_a_plan_names_the_counts_of_its_swatches(library: Services) -> None:
    """Those of the swatches themselves."""
    short = planning.plan(library, REQUEST)["swatches"]
    whole = write_swatches(REQUEST, bench_of(library, REQUEST))["swatches"]
    assert [(each["in"], each["cast_on"], each["rows"]) for each in short][1] == ("waffle", 33, 48)
    assert all(each.items() <= other.items() for each, other in zip(short, whole, strict=True))


@pytest.mark.parametrize("body", ["waffle", "basket-weave", "eyelet-rows", "fan"])
def test_a_pattern_with_its_swatches_still_checks_clean(library: Services, body: str) -> None:
    """No row of a swatch is read as one of the blanket."""
    request = REQUEST | {"parts": {"body": body}}
    plan = planning.made(library, request)
    pattern = planning.pattern_of(plan, request, library.known)
    assert [each.where for each in pattern.swatches] == ["bottom border, side borders, top border", "body"]
    assert recheck(pattern, as_text(pattern), library.vocabulary) == ()


NARROW = REQUEST | {
    "parts": {
        "body": "waffle",
        "cast_on": "cable-cast-on",
        "sides": {"text": "Row 1 (RS): k1.\nRow 2 (WS): p1."},
    }
}
"""A side border of one stitch, and a cast-on that begins with two."""


def test_a_part_without_a_swatch_is_told_in_every_answer(library: Services) -> None:
    """The plan, the swatches and the pattern say for which part there is none, why, and what to do instead."""
    (short,) = planning.plan(library, NARROW)["no_swatch"]
    (whole,) = write_swatches(NARROW, bench_of(library, NARROW))["no_swatch"]
    assert short == whole
    assert (whole["in"], whole["places"]) == (None, ["sides"])
    assert whole["steps"][0] == "It has no swatch: alone it has too few stitches for the cast-on."
    assert "over 15.0 cm (6 in) or more, and measure it there" in whole["steps"][1]


def test_the_page_says_of_which_part_there_is_no_swatch(library: Services) -> None:
    """Under the swatches, in words that the check of the page does not take for rows."""
    pattern = planning.pattern_of(planning.made(library, NARROW), NARROW, library.known)
    page = as_text(pattern)
    assert "It has no swatch: alone it has too few stitches for the cast-on." in " ".join(page.split())
    assert [each.where for each in pattern.no_swatches] == ["side borders"]
    assert recheck(pattern, page, library.vocabulary) == ()
    assert any("It has no swatch" in line.text for line in lines_of(pattern))
