"""Pictures are told apart without colour, and stand out from their ground.

Source: Web Content Accessibility Guidelines 2.2 (W3C, 2023), success criteria 1.4.1 (use of colour), 1.4.3 (contrast of
text) and 1.4.11 (contrast of what is no text), and its definition of contrast.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from xml.etree import ElementTree
from xml.etree.ElementTree import Element

import pytest

from counterpane.craft.component import Component
from counterpane.craft.drawing.blanket import fabric
from counterpane.craft.drawing.chart import Cell, Chart, ChartRow
from counterpane.craft.drawing.chart.page import signs_of
from counterpane.craft.drawing.charts import charts
from counterpane.craft.drawing.paper import PAPER
from counterpane.craft.drawing.schematic import schematic
from counterpane.craft.rows.tree import Work
from counterpane.craft.stitches import Vocabulary
from craft.drawing.test_pictures import small
from outside.test_contrast import contrast

Starters = Mapping[str, Component]
BODIES = ("eyelet-dots", "rope-cable", "waffle", "old-shale", "seed-stitch")
COLOUR = re.compile(r"(fill|stroke):?=?\"?(#[0-9a-f]{6})")
TEXT, LINE = 4.5, 3.0
"""Least contrast of text by 1.4.3, and of lines and shapes by 1.4.11."""


def picture(view: str, body: str, starters: Starters, vocabulary: Vocabulary) -> str:
    """Return a picture of a small piece."""
    drawing = {"chart": charts, "fabric": fabric, "schematic": schematic}[view]
    return drawing(small(starters, vocabulary, body), vocabulary, "Rime")  # type: ignore[operator]


def shape(drawn: Element) -> tuple[object, ...]:
    """Return what is drawn, without its colours and its name."""
    kept = {
        name: value for name, value in drawn.attrib.items() if name not in ("id", "class", "style", "fill", "stroke")
    }
    return drawn.tag, tuple(sorted(kept.items())), (drawn.text or "").strip(), tuple(shape(each) for each in drawn)


def test_every_stitch_of_the_vocabulary_has_a_sign_of_its_own_shape(vocabulary: Vocabulary) -> None:
    """Where two would be drawn alike in cells of a width, a number tells them apart."""
    cells = tuple(
        Cell((Work(key),), max(stitch.uses, stitch.makes, 1))
        for key, stitch in vocabulary.stitches.items()
        if max(stitch.uses, stitch.makes) > 0
    )
    row = ChartRow("1", "RS", cells)
    signs = signs_of([Chart((row,), sum(cell.wide for cell in cells), None)], vocabulary)
    shapes = [(sign.symbol.strokes, sign.symbol.front, sign.wide, sign.number) for sign in signs.values()]
    assert len(signs) == len(set(cells)) > 100
    assert len(set(shapes)) == len(shapes)


@pytest.mark.parametrize("body", BODIES)
def test_signs_of_a_chart_differ_in_shape(body: str, starters: Starters, vocabulary: Vocabulary) -> None:
    """No two are the same but for their colours."""
    drawn = ElementTree.fromstring(picture("chart", body, starters, vocabulary))
    shapes = [shape(each) for each in drawn.iter() if re.fullmatch(r"sign-\d+", each.get("id", ""))]
    assert len(shapes) >= 2
    assert len(set(shapes)) == len(shapes)


@pytest.mark.parametrize("body", BODIES)
def test_loops_of_a_fabric_differ_in_shape_alone(body: str, starters: Starters, vocabulary: Vocabulary) -> None:
    """All are of one colour, and there are several shapes of them; those drawn alike are alike in every colour."""
    drawn = ElementTree.fromstring(picture("fabric", body, starters, vocabulary))
    loops = [each for each in drawn.iter() if re.fullmatch(r"m\d+", each.get("id", ""))]
    assert {(each.get("class"), each.get("fill"), each.get("stroke")) for each in loops} == {("loop", None, None)}
    assert {name for loop in loops for part in loop for name in part.attrib} == {"d"}
    assert len({shape(each) for each in loops}) >= 2


@pytest.mark.parametrize("body", BODIES)
@pytest.mark.parametrize("view", ["chart", "fabric", "schematic"])
def test_lines_and_text_stand_out_from_the_paper(
    view: str, body: str, starters: Starters, vocabulary: Vocabulary
) -> None:
    """Each colour of a stroke, and that of the text, against the paper."""
    drawn = picture(view, body, starters, vocabulary)
    strokes = {colour for kind, colour in COLOUR.findall(drawn) if kind == "stroke"}
    (text,) = re.findall(r"text\{[^}]*fill:(#[0-9a-f]{6})", drawn)
    assert strokes
    assert [colour for colour in strokes if contrast(colour, PAPER) < LINE] == []
    assert contrast(text, PAPER) >= TEXT


def test_loops_stand_out_from_each_other(starters: Starters, vocabulary: Vocabulary) -> None:
    """Yarn is light; its outline is what tells loops apart."""
    fills = re.findall(
        r"\.loop\{fill:(#[0-9a-f]{6});[^}]*stroke:(#[0-9a-f]{6})", picture("fabric", "waffle", starters, vocabulary)
    )
    assert [contrast(*each) >= LINE for each in fills] == [True]


def test_a_cell_of_no_stitch_stands_out(starters: Starters, vocabulary: Vocabulary) -> None:
    """Its ground is all that tells it from a blank cell."""
    (ground,) = re.findall(r"\.none\{fill:(#[0-9a-f]{6})", picture("chart", "old-shale", starters, vocabulary))
    assert contrast(ground, PAPER) >= LINE


@pytest.mark.parametrize(
    ("view", "said"),
    [
        ("chart", ("charts of symbols.", "rows of", "Read from the lowest row up")),
        ("fabric", ("The fabric from its right side", "A V is a knit stitch", "stitches.")),
        ("schematic", ("cm", "Cast-on: Long-tail cast-on", "rows")),
    ],
)
def test_a_picture_says_what_it_shows_to_those_who_do_not_see_it(
    view: str, said: tuple[str, ...], starters: Starters, vocabulary: Vocabulary
) -> None:
    """In words: what it is, its stitches and rows, and how it is read (1.1.1); no slug stands in it."""
    drawn = ElementTree.fromstring(picture(view, "eyelet-dots", starters, vocabulary))
    words = next(each.text or "" for each in drawn if each.tag.endswith("desc"))
    assert [each for each in said if each not in words] == []
    assert "eyelet-dots" not in words and "garter-border" not in words
