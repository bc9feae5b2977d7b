"""Needles and notions of a pattern: those of the swatch, those of the council's classes, and what the rows ask for."""

from __future__ import annotations

from typing import Any

import pytest

from counterpane.library.patterns import pages
from counterpane.library.plans import planning
from counterpane.library.services import Services
from counterpane.wiring import open_library

SWATCH = {"in": "waffle", "stitches": 22, "rows": 30, "over_cm": 10}
REQUEST: dict[str, Any] = {
    "parts": {"body": "waffle"},
    "gauge": SWATCH,
    "size": {"width_cm": 70, "length_cm": 90},
}


@pytest.fixture(scope="module")
def library() -> Services:
    """Return a library with the starters."""
    return open_library()


def told(library: Services, **changed: Any) -> dict[str, str]:
    """Return the materials of a pattern by their names."""
    data = pages.pattern(library, REQUEST | changed, "json")["pattern"]
    return {entry["name"]: entry["text"] for entry in data["materials"]}


def test_the_needle_of_the_swatch_is_printed_with_its_us_size(library: Services) -> None:
    """4 mm are US 6 (five needle charts, second-hand); a plan tells it too."""
    gauge = SWATCH | {"needle_mm": 4}
    assert told(library, gauge=gauge)["Needles"].startswith("4 mm (US 6), on which the swatch was knitted")
    needles = planning.plan(library, REQUEST | {"gauge": gauge})["needles"]
    assert needles["knitted_on"] == [{"in": "waffle", "mm": 4.0, "us": "6"}]


def test_each_texture_keeps_its_own_needle(library: Services) -> None:
    """A border on a smaller needle lies flatter; 3.1 mm are in no US scale."""
    garter = {"in": "garter-border", "stitches": 21, "rows": 42, "over_cm": 10, "needle_mm": 3.1}
    needles = told(library, gauge=[SWATCH | {"needle_mm": 4}, garter])["Needles"]
    assert needles.startswith("4 mm (US 6) for waffle and 3.1 mm (no US size) for garter border")


def test_a_class_of_yarn_tells_needles_where_no_swatch_does(library: Services) -> None:
    """Double knitting is the council's class 3, on 3.75 to 4.5 mm, US 5 to 7 (Craft Yarn Council)."""
    materials = told(library, yarn={"weight": "double knitting"})
    assert "double knitting (Craft Yarn Council 3 Light)" in materials["Yarn"]
    assert materials["Needles"].startswith("begin with 3.75 to 4.5 mm (US 5 to 7)")
    assert planning.plan(library, REQUEST | {"yarn": {"weight": "double knitting"}})["needles"]["by"] == "yarn"


def test_swatches_on_two_needles_are_no_swatches_on_one(library: Services) -> None:
    """Counted together, they tell no needle."""
    gauges = [SWATCH | {"needle_mm": 4}, SWATCH | {"needle_mm": 4.5}]
    assert planning.plan(library, REQUEST | {"gauge": gauges})["needles"]["knitted_on"] == []


def test_notions_are_what_the_rows_ask_for(library: Services) -> None:
    """A cable needle and a thread for cables; neither for a waffle. Common practice, no source."""
    cables = told(library, parts={"body": "rope-cable"}, gauge=SWATCH | {"in": "rope-cable"})
    assert {"Cable needle", "Smooth thread"} <= set(cables)
    assert not {"Cable needle", "Smooth thread", "Rustproof pins"} & set(told(library))


def test_a_designer_is_printed_and_nobody_is_made_up(library: Services) -> None:
    """In text and data."""
    named = pages.pattern(library, REQUEST | {"designer": "Ines"}, "json")
    assert named["pattern"]["designer"] == "Ines" and "Designer  Ines\n" in named["text"]
    unnamed = pages.pattern(library, REQUEST, "json")
    assert unnamed["pattern"]["designer"] is None and "Designer  not named\n" in unnamed["text"]
