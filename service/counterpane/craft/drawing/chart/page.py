"""A chart on paper: cells with their symbols, row numbers where the rows begin, the repeat framed, and the legend."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from textwrap import wrap
from xml.etree.ElementTree import Element, SubElement

from counterpane.craft.drawing import paper
from counterpane.craft.drawing.chart import Cell, Chart, Nodes
from counterpane.craft.drawing.chart.symbols import SIDE, Symbol, symbol_of
from counterpane.craft.drawing.chart.words import rows_of
from counterpane.craft.rows.say import say_line, say_row
from counterpane.craft.rows.turning import rs_view
from counterpane.craft.stitches import Terms, Vocabulary

MARGIN = 40
"""Units on either side of the cells, for row numbers."""
LINE = 16
"""Units from one line of words to the next."""
LEAST = 360
"""Units across at least, so that the legend can be read; house figure."""
LETTERS = 6
"""Units of a letter, about; house figure."""
_ONE = re.compile(r"\b([kp])1\b")
"""A single plain stitch, which a key calls by its letter."""
STYLE = (
    ".cell{stroke:#8a8a8a;stroke-width:0.5;fill:none}.sign{stroke:#1a1a1a;stroke-width:1.6;fill:none;"
    "stroke-linecap:round;stroke-linejoin:round}.front{fill:#ffffff;stroke:#1a1a1a;stroke-width:1.4}"
    ".frame{stroke:#1a1a1a;stroke-width:2.4;fill:none}.none{fill:#8a8a8a;stroke:none}"
)


@dataclass(frozen=True, slots=True)
class Sign:
    """A symbol of a chart by its name on the page, with the number that tells it from one that looks alike."""

    name: str
    symbol: Symbol
    wide: int
    number: int


@dataclass(frozen=True, slots=True)
class Named:
    """A chart with its heading and what is said under it."""

    heading: str
    chart: Chart
    note: str = ""


@dataclass(frozen=True, slots=True)
class Key:
    """The charts of a page and the signs in them."""

    charts: Sequence[Chart]
    signs: Mapping[Cell, Sign]


def draw(on: Element, named: Named, top: int, signs: Mapping[Cell, Sign], *, mirrored: bool = False) -> int:
    """Draw a chart from this height on and return the height under it; mirrored it begins at its left edge."""
    chart = named.chart
    paper.text(on, (12, top + 14), named.heading, "strong")
    head = top + 26
    for place, row in enumerate(reversed(chart.rows)):
        y = head + place * SIDE
        _draw_row(on, chart, row.cells, y, signs, mirrored=mirrored)
        side = (MARGIN - 6, "end") if (row.side == "WS") != mirrored else (MARGIN + chart.columns * SIDE + 6, "")
        paper.text(on, (side[0], y + 14), row.label, f"small {side[1]}".strip())
    foot = head + len(chart.rows) * SIDE
    if chart.box is not None:
        left = chart.box.first if mirrored else chart.columns - chart.box.end
        corner = (MARGIN + left * SIDE, head)
        paper.box(on, corner, (chart.box.wide * SIDE, foot - head), "frame")
    for line in wrap(named.note, max(LEAST, chart.columns * SIDE) // LETTERS):
        foot += LINE
        paper.text(on, (MARGIN, foot), line, "small")
    return foot + LINE


def _draw_row(
    on: Element, chart: Chart, cells: Sequence[Cell], y: int, signs: Mapping[Cell, Sign], *, mirrored: bool
) -> None:
    done = 0
    for cell in cells:
        at = MARGIN + (done if mirrored else chart.columns - done - cell.wide) * SIDE
        done += cell.wide
        if not cell.nodes:
            paper.box(on, (at, y), (SIDE, SIDE), "none")
            continue
        paper.box(on, (at, y), (cell.wide * SIDE, SIDE), "cell")
        SubElement(on, "use", {"href": f"#{signs[cell].name}", "x": str(at), "y": str(y)})


def signs_of(charts: Sequence[Chart], vocabulary: Vocabulary) -> dict[Cell, Sign]:
    """Return a sign for each working of the charts; those that would look alike are numbered."""
    cells = dict.fromkeys(cell for chart in charts for row in chart.rows for cell in row.cells if cell.nodes)
    found: dict[Cell, Sign] = {}
    alike: dict[tuple[Symbol, int], int] = {}
    for place, cell in enumerate(cells):
        symbol = symbol_of(cell.nodes, cell.wide, vocabulary)
        before = alike.get((symbol, cell.wide), 0)
        alike[symbol, cell.wide] = before + 1
        found[cell] = Sign(f"sign-{place}", symbol, cell.wide, before + (0 if symbol.known else 1))
    return found


def define(on: Element, signs: Mapping[Cell, Sign], *, mirrored: bool = False) -> None:
    """Draw each sign once, to be used in the cells; mirrored it leans the other way, and its number stays readable."""
    defined = SubElement(on, "defs")
    for sign in signs.values():
        drawn = SubElement(defined, "g", {"id": sign.name})
        turned = {"transform": f"translate({sign.wide * SIDE} 0) scale(-1 1)"} if mirrored else {}
        for stroke in sign.symbol.strokes:
            SubElement(drawn, "path", {"class": "sign", "d": stroke, **turned})
        if sign.symbol.front:
            SubElement(drawn, "path", {"class": "front", "d": sign.symbol.front, **turned})
        if sign.number:
            place = (sign.wide * SIDE - 2, 8) if sign.symbol.known else (sign.wide * SIDE // 2 + 3, 14)
            paper.text(drawn, place, str(sign.number), "small end")


def legend(on: Element, key: Key, top: int, vocabulary: Vocabulary, terms: Terms) -> int:
    """Draw each sign with what it says on the sides on which it is worked; return the height under them."""
    paper.text(on, (12, top + 14), "Key", "strong")
    y = top + 22
    for cell, sign in key.signs.items():
        paper.box(on, (MARGIN, y), (cell.wide * SIDE, SIDE), "cell")
        SubElement(on, "use", {"href": f"#{sign.name}", "x": str(MARGIN), "y": str(y)})
        words = meaning(cell.nodes, sides_of(key.charts, cell), vocabulary, terms)
        paper.text(on, (MARGIN + cell.wide * SIDE + 10, y + 14), words)
        y += SIDE + 4
    if any(not cell.nodes for chart in key.charts for row in chart.rows for cell in row.cells):
        paper.box(on, (MARGIN, y), (SIDE, SIDE), "none")
        paper.text(on, (MARGIN + SIDE + 10, y + 14), "no stitch in this row: go on to the next cell")
        y += SIDE + 4
    return y


def sides_of(charts: Sequence[Chart], cell: Cell) -> tuple[str, ...]:
    """Return the sides on which a working is met."""
    return tuple(dict.fromkeys(row.side for chart in charts for row in chart.rows if cell in row.cells))


def meaning(nodes: Nodes, sides: Sequence[str], vocabulary: Vocabulary, terms: Terms) -> str:
    """Say a working on each side on which it is met: "k1 on RS rows, p1 on WS rows"."""
    said = []
    for side, where in (("RS", "on RS rows"), ("round", "in rounds"), ("WS", "on WS rows")):
        if side in sides:
            words = say_row(rs_view(nodes, vocabulary) if side == "WS" else nodes, vocabulary, terms)
            said.append(" ".join((_ONE.sub(r"\1", words), where)))
    return ", ".join(said)


def in_words(named: Named, vocabulary: Vocabulary, terms: Terms) -> Iterator[str]:
    """Give the rows of a chart in words, as they are worked."""
    yield f"{named.heading}."
    for row in rows_of(named.chart, vocabulary):
        yield say_line(row, vocabulary, terms)
