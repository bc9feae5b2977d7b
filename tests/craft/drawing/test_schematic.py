"""The schematic, measured in what was drawn."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from itertools import pairwise
from xml.etree import ElementTree

import pytest

from counterpane.craft.component import Component
from counterpane.craft.constructions.zones import zones
from counterpane.craft.drawing.schematic import schematic
from counterpane.craft.pattern.figures import both
from counterpane.craft.stitches import Vocabulary
from craft.constructions.asking import planned

Starters = Mapping[str, Component]
SVG = "{http://www.w3.org/2000/svg}"
GAUGES = [
    {"stitches": 22, "rows": 30, "over_cm": 10, "in": "waffle"},
    {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter-border"},
]


def _drawn(starters: Starters, vocabulary: Vocabulary, *body: str, **rest: object) -> ElementTree.Element:
    plan = planned(starters, vocabulary, list(body) or "waffle", **{"gauge": GAUGES, **rest})
    return ElementTree.fromstring(schematic(plan, vocabulary, "Rime & thaw"))


def _texts(picture: ElementTree.Element) -> list[str]:
    return [element.text or "" for element in picture.iter(f"{SVG}text")]


def test_each_part_is_drawn_to_scale(starters: Starters, vocabulary: Vocabulary) -> None:
    """One unit measures the same width and length in every part, to the hundredth that is written."""
    plan = planned(starters, vocabulary, "waffle", gauge=GAUGES)
    picture = ElementTree.fromstring(schematic(plan, vocabulary, "Rime"))
    drawn = [element for group in picture.iter(f"{SVG}g") for element in group.iter(f"{SVG}rect")]
    units = 420 / plan.length_cm
    sizes = [(Fraction(each.get("width", "")), Fraction(each.get("height", ""))) for each in drawn]
    meant = [(zone.width_cm * units, zone.length_cm * units) for zone in zones(plan, vocabulary)]
    assert len(meant) == len(sizes) == 5
    pairs = zip((x for size in meant for x in size), (x for size in sizes for x in size), strict=True)
    assert all(abs(mine - other) <= Fraction(1, 200) for mine, other in pairs)


def test_it_names_the_parts_in_the_order_of_work(starters: Starters, vocabulary: Vocabulary) -> None:
    """From the cast-on at the foot to the bind-off at the top."""
    told = [text for text in _texts(_drawn(starters, vocabulary)) if text[:2] in ("1.", "2.", "3.", "4.", "5.")]
    assert told == ["1. Cast on", "2. Bottom border", "3. Body", "4. Top border", "5. Bind off"]


def test_it_gives_both_measures_in_both_units(starters: Starters, vocabulary: Vocabulary) -> None:
    """Width and length of the finished piece, as the plan gives them."""
    plan = planned(starters, vocabulary, "waffle", width=70, length=90)
    told = _texts(ElementTree.fromstring(schematic(plan, vocabulary, "Rime")))
    assert both(plan.width_cm) in told
    assert both(plan.length_cm) in told


def test_it_says_in_words_what_it_shows(starters: Starters, vocabulary: Vocabulary) -> None:
    """A title, and a description with every part, its count and its measures."""
    picture = _drawn(starters, vocabulary)
    assert picture.findtext(f"{SVG}title") == "Rime & thaw: schematic"
    words = picture.findtext(f"{SVG}desc") or ""
    assert all(each in words for each in ("Cast-on", "Bottom border", "Body", "Top border", "Bind-off", "Seams: none"))


@pytest.mark.parametrize("bands", [1, 3, 12])
def test_no_name_lies_over_another(starters: Starters, vocabulary: Vocabulary, bands: int) -> None:
    """Also where the parts themselves are narrower than a line of words."""
    picture = _drawn(starters, vocabulary, *(["waffle", "garter"] * bands)[:bands])
    lines = [float(each.get("y", "")) for each in picture.iter(f"{SVG}text") if float(each.get("x", "")) == 12]
    assert all(other - one >= 14.9 for one, other in pairwise(sorted(lines)))
    assert min(lines) >= 12


def test_uk_terms_name_the_cast_off(starters: Starters, vocabulary: Vocabulary) -> None:
    """What is a bind-off in US terms."""
    plan = planned(starters, vocabulary, "waffle")
    told = _texts(ElementTree.fromstring(schematic(plan, vocabulary, "Rime", "uk")))
    assert "5. Cast off" in told
