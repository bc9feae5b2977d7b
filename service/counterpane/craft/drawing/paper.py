"""The paper of a picture: an SVG element with its title, its words and its style, and the few shapes drawn on it.

Lengths are user units; they are written to a hundredth, half up, so that the same picture has the same bytes.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from xml.etree.ElementTree import Element, SubElement, tostring

from counterpane.craft.measures import shown

Number = int | Fraction
Point = tuple[Number, Number]

INK = "#1a1a1a"
PAPER = "#ffffff"
_STYLE = (
    f"text{{font:12px sans-serif,'Libertinus Serif';fill:{INK}}}.small{{font-size:10px}}.middle{{text-anchor:middle}}"
    f".end{{text-anchor:end}}.strong{{font-weight:600}}.line{{stroke:{INK};stroke-width:1;fill:none}}"
    f".thin{{stroke:{INK};stroke-width:0.5;fill:none}}"
)


def said(number: Number) -> str:
    """Write a length of a picture: no more decimals than it has, two at most."""
    written = shown(Fraction(number), 2).rstrip("0").rstrip(".")
    return "0" if written in ("-0", "") else written


def sheet(title: str, words: str, width: Number, height: Number, style: str = "") -> Element:
    """Return an empty picture on white paper; `words` say what it shows to those who do not see it."""
    size = {"width": said(width), "height": said(height)}
    box = f"0 0 {size['width']} {size['height']}"
    names = {"xmlns": "http://www.w3.org/2000/svg", "viewBox": box, **size, "role": "img"}
    paper = Element("svg", names)
    SubElement(paper, "title").text = title
    SubElement(paper, "desc").text = words
    SubElement(paper, "style").text = _STYLE + style
    SubElement(paper, "rect", {**size, "fill": PAPER})
    return paper


def group(on: Element, title: str) -> Element:
    """Add a group, with a title for those who point at it."""
    made = SubElement(on, "g")
    SubElement(made, "title").text = title
    return made


def text(on: Element, at: Point, words: str, kind: str = "", **attributes: str) -> None:
    """Write words that begin at a point, or stand about it where `kind` holds "middle" or "end"."""
    place = {"x": said(at[0]), "y": said(at[1])}
    SubElement(on, "text", place | ({"class": kind} if kind else {}) | attributes).text = words


def box(on: Element, corner: Point, size: Point, kind: str = "line", fill: str = "none") -> None:
    """Draw a rectangle of a width and a height from its upper left corner."""
    place = {"x": said(corner[0]), "y": said(corner[1]), "width": said(size[0]), "height": said(size[1])}
    SubElement(on, "rect", {**place, "class": kind, "style": f"fill:{fill}"})


def path(on: Element, points: Sequence[Point], kind: str = "line", **attributes: str) -> None:
    """Draw a line through points."""
    through = "L".join(f"{said(x)} {said(y)}" for x, y in points)
    SubElement(on, "path", {"class": kind, "d": f"M{through}", **attributes})


def hatching(on: Element, name: str, drawn: str, every: int = 6) -> str:
    """Define a ground of lines `drawn` in a tile `every` units wide, and return how a fill names it."""
    tile = {"id": name, "width": str(every), "height": str(every), "patternUnits": "userSpaceOnUse"}
    ground = SubElement(SubElement(on, "defs"), "pattern", tile)
    SubElement(ground, "rect", {"width": str(every), "height": str(every), "fill": PAPER})
    SubElement(ground, "path", {"d": drawn, "stroke": "#8a8a8a", "stroke-width": "0.6", "fill": "none"})
    return f"url(#{name})"


def finished(paper: Element) -> str:
    """Return the picture as a text."""
    return tostring(paper, encoding="unicode") + "\n"
