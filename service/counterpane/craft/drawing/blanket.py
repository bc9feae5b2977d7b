"""The fabric of a whole blanket and one corner close up: every loop of the trace, at the proportions of its gauge.

A repeat of rows is traced at the count of its section and drawn once; the blanket uses it again as often as the section
works it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal
from xml.etree.ElementTree import Element, SubElement

from counterpane.craft.constructions import Plan, Section
from counterpane.craft.drawing import paper
from counterpane.craft.drawing.loops import CELL, depth, shapes, uncrossed
from counterpane.craft.drawing.paper import said
from counterpane.craft.fabric import marked
from counterpane.craft.fabric.marks import Mark
from counterpane.craft.measures import shown
from counterpane.craft.pattern.figures import both, counted
from counterpane.craft.pattern.parts import section_name, texture_name
from counterpane.craft.stitches import Terms, Vocabulary
from counterpane.craft.trace import trace

Face = Literal["RS", "WS"]
Marks = tuple[Mark, ...]

MOST_STITCHES = 60_000
"""Stitches that are drawn one by one; house figure that bounds size and time."""
WHOLE, CORNER = 460, 380
"""Units of the longer side of the blanket, and of a side of the close-up; house figures."""
CLOSE_UP_CM = 10
"""Centimetres of the corner that the close-up shows; house figure."""
GAP, TOP = 20, 56
"""Units between the pictures and above them; house figures."""
SHADOW, YARN, EDGE = "#6f675a", "#efe8da", "#57503f"
_STYLE = f".loop{{fill:{YARN};fill-rule:evenodd;stroke:{EDGE};stroke-width:.5}}"


class CannotDraw(Exception):
    """A plan of which no picture of the fabric is made: the message says why."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """A section with the marks of one repeat of its rows, each from the left edge as this face shows it."""

    section: Section
    rows: tuple[Marks, ...]


def fabric(plan: Plan, vocabulary: Vocabulary, title: str, terms: Terms = "us", face: Face = "RS") -> str:
    """Return the fabric of a plan from one side as SVG; CannotDraw for more stitches than are drawn."""
    stretches = _stretches(plan, vocabulary, face)
    widest = max(section.cm_width for section in plan.sections)
    units = WHOLE / max(widest, plan.length_cm)
    wide, high = widest * units, plan.length_cm * units
    tall = max(high, Fraction(CORNER))
    words = _words(plan, terms, face)
    sheet = paper.sheet(f"{title}: fabric", " ".join(words), wide + CORNER + 3 * GAP, TOP + tall + GAP, _STYLE)
    _define(sheet, stretches, vocabulary)
    paper.text(sheet, (GAP, 24), title, "strong")
    paper.text(sheet, (GAP, 40), words[0], "small")
    whole = SubElement(
        sheet, "svg", _window((GAP, TOP), (wide, high), (Fraction(0), Fraction(0), widest, plan.length_cm))
    )
    _lay(SubElement(whole, "g", {"id": "whole"}), plan, stretches, widest)
    near = min(Fraction(CLOSE_UP_CM), widest, plan.length_cm)
    seen = ((widest - plan.sections[0].cm_width) / 2, plan.length_cm - near, near, near)
    at = wide + 2 * GAP
    corner = SubElement(sheet, "svg", _window((at, TOP), (CORNER, CORNER), seen))
    SubElement(corner, "use", {"href": "#whole"})
    paper.text(sheet, (at, TOP + CORNER + 16), f"The lower left corner, {both(near)} each way.", "small")
    return paper.finished(sheet)


def _stretches(plan: Plan, vocabulary: Vocabulary, face: Face) -> list[Stretch]:
    stitches = sum(section.before * len(section.cycle) for section in plan.sections)
    if stitches > MOST_STITCHES:
        raise CannotDraw(f"One repeat of each section is {stitches:,} stitches; {MOST_STITCHES:,} are drawn at most.")
    return [Stretch(section, _marks(section, vocabulary, face)) for section in plan.sections]


def _marks(section: Section, vocabulary: Vocabulary, face: Face) -> tuple[Marks, ...]:
    rows = section.cycle
    traced = trace([row.parts for row in rows], section.before, vocabulary, [row.side for row in rows])
    found = marked(traced, section.before, vocabulary)
    seen = tuple(tuple(uncrossed(mark, vocabulary) for mark in row) for row in found)
    if face == "WS":
        return tuple(tuple(mark.from_behind(vocabulary) for mark in row) for row in seen)
    return tuple(row[::-1] for row in seen)


def _define(on: Element, stretches: Sequence[Stretch], vocabulary: Vocabulary) -> None:
    """Draw each mark once, and of them each row of each repeat."""
    defined = SubElement(on, "defs")
    marks = dict.fromkeys(mark for stretch in stretches for row in stretch.rows for mark in row)
    names = {mark: f"m{number}" for number, mark in enumerate(marks)}
    for mark, name in names.items():
        drawn = SubElement(defined, "g", {"id": name, "class": "loop"})
        for shape in shapes(mark, vocabulary):
            SubElement(drawn, "path", {"d": shape})
    for place, stretch in enumerate(stretches):
        for number, row in enumerate(stretch.rows):
            group = SubElement(defined, "g", {"id": f"s{place}r{number}"})
            for at, mark in sorted(enumerate(row), key=lambda pair: depth(pair[1])):
                SubElement(group, "use", {"href": f"#{names[mark]}", "x": str(at * CELL)})


def _lay(on: Element, plan: Plan, stretches: Sequence[Stretch], widest: Fraction) -> None:
    """Lay the sections on one another, in centimetres from the upper left corner."""
    foot = plan.length_cm
    for place, stretch in enumerate(stretches):
        section = stretch.section
        left, top = (widest - section.cm_width) / 2, foot - section.cm_length
        paper.box(on, (left, top), (section.cm_width, section.cm_length), "ground", SHADOW)
        _lay_rows(on, place, stretch, left, foot)
        foot = top


def _lay_rows(on: Element, place: int, stretch: Stretch, left: Fraction, foot: Fraction) -> None:
    section = stretch.section
    high = section.cm_length / section.rows
    for number in range(section.rows):
        row = number % len(stretch.rows)
        wide = section.cm_width / len(stretch.rows[row])
        moved = f"translate({_fine(left)} {_fine(foot - (number + 1) * high)})"
        scaled = f"scale({_fine(wide / CELL)} {_fine(high / CELL)})"
        SubElement(on, "use", {"href": f"#s{place}r{row}", "transform": f"{moved} {scaled}"})


def _fine(number: Fraction) -> str:
    """Write a length in centimetres to a hundred-thousandth, half up."""
    return shown(number, 5)


def _window(
    corner: paper.Point, size: paper.Point, seen: tuple[Fraction, Fraction, Fraction, Fraction]
) -> dict[str, str]:
    """Return the attributes of a part of the page through which a part of the blanket is seen."""
    place = {"x": said(corner[0]), "y": said(corner[1]), "width": said(size[0]), "height": said(size[1])}
    return place | {"viewBox": " ".join(map(_fine, seen)), "preserveAspectRatio": "none"}


def _words(plan: Plan, terms: Terms, face: Face) -> tuple[str, ...]:
    """Say what is shown, from the cast-on up."""
    side = "right" if face == "RS" else "wrong"
    parts = (
        f"{section_name(section)}: {texture_name(plan, section.texture, terms)}, {counted(section.rows, 'row')}."
        for section in plan.sections
    )
    return f"The fabric from its {side} side, at the proportions of its gauge.", *parts
