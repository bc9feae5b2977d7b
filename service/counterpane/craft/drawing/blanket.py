"""The fabric of a whole blanket and one corner close up: every loop of the trace, at the proportions of its gauge.

A repeat of rows is traced at the count of its section and drawn once; the blanket uses it again as often as the section
works it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from math import ceil
from typing import Literal
from xml.etree.ElementTree import Element, SubElement

from counterpane.craft.constructions import Plan, Section
from counterpane.craft.constructions.zones import lies_cm, widest_cm
from counterpane.craft.drawing import paper
from counterpane.craft.drawing.loops import CELL, depth, drawn_across, shapes, uncrossed
from counterpane.craft.drawing.paper import said
from counterpane.craft.fabric import marked
from counterpane.craft.fabric.marks import Mark
from counterpane.craft.measures import Units, shown
from counterpane.craft.pattern.figures import both, counted
from counterpane.craft.pattern.parts import section_name, texture_name
from counterpane.craft.pattern.units import in_units
from counterpane.craft.stitches import Terms, Vocabulary
from counterpane.craft.trace import trace

Face = Literal["RS", "WS"]
Marks = tuple[Mark, ...]

MOST_ROWS = 10_000
"""Rows that a picture lays out one by one; house figure that bounds time."""
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
    """A section with the marks of one repeat of its rows, each from the left edge as this face shows it.

    `wide_cm` is how wide it lies; `placed` moves and turns it from its lower left corner to where it lies. `counts` are
    the stitches of each row, of which `rows` may hold the first alone.
    """

    section: Section
    wide_cm: Fraction
    placed: str
    counts: tuple[int, ...]
    rows: tuple[Marks, ...]


def fabric(
    plan: Plan,
    vocabulary: Vocabulary,
    title: str,
    terms: Terms = "us",
    face: Face = "RS",
    *,
    lengths: Units = "both",
    mirrored: bool = False,
) -> str:
    """Return the fabric of a plan from one side as SVG, whole and a corner close up.

    Mirrored it is the fabric of left-handers who work mirrored, and the corner is the lower right one.
    CannotDraw for more stitches or rows than are drawn.
    """
    stretches = _stretches(plan, vocabulary, face)
    widest = widest_cm(plan)
    units = WHOLE / max(widest, plan.length_cm)
    wide, high = widest * units, plan.length_cm * units
    words = _words(plan, terms, face, mirrored=mirrored)
    size = (wide + CORNER + 3 * GAP, TOP + max(high, Fraction(CORNER)) + GAP)
    sheet = _sheet(title, words, size)
    _define(sheet, stretches, vocabulary)
    seen = (Fraction(0), Fraction(0), widest, plan.length_cm)
    whole = SubElement(sheet, "svg", _window((GAP, TOP), (wide, high), seen))
    turned = {"transform": f"translate({_fine(widest)} 0) scale(-1 1)"} if mirrored else {}
    _lay(SubElement(whole, "g", {"id": "whole", **turned}), stretches)
    at = wide + 2 * GAP
    SubElement(_close_up(sheet, plan, at, lengths, mirrored=mirrored), "use", {"href": "#whole"})
    return paper.finished(sheet)


def corner(
    plan: Plan, vocabulary: Vocabulary, title: str, terms: Terms = "us", face: Face = "RS", *, lengths: Units = "both"
) -> str:
    """Return the corner alone, of which no more is drawn than is seen."""
    stretches = [_cut(stretch, plan) for stretch in _stretches(plan, vocabulary, face)]
    sheet = _sheet(title, _words(plan, terms, face), (CORNER + 2 * GAP, TOP + CORNER + GAP))
    _define(sheet, stretches, vocabulary)
    _lay(_close_up(sheet, plan, GAP, lengths), stretches)
    return paper.finished(sheet)


def _near(plan: Plan) -> Fraction:
    """Return how much of each edge the close-up shows."""
    return min(Fraction(CLOSE_UP_CM), widest_cm(plan), plan.length_cm)


def _sheet(title: str, words: Sequence[str], size: tuple[Fraction | int, Fraction | int]) -> Element:
    sheet = paper.sheet(f"{title}: fabric", " ".join(words), *size, _STYLE)
    paper.text(sheet, (GAP, 24), title, "strong")
    paper.text(sheet, (GAP, 40), words[0], "small")
    return sheet


def _close_up(on: Element, plan: Plan, at: Fraction | int, lengths: Units, *, mirrored: bool = False) -> Element:
    """Open a window on the lower left corner, mirrored the lower right one, and say what it shows."""
    near = _near(plan)
    left = Fraction(0) if plan.picked else (widest_cm(plan) - plan.sections[0].cm_width) / 2
    side = "right" if mirrored else "left"
    seen = (widest_cm(plan) - left - near if mirrored else left, plan.length_cm - near, near, near)
    said = f"The lower {side} corner, {in_units(both(near), lengths)} each way."
    paper.text(on, (at, TOP + CORNER + 16), said, "small")
    return SubElement(on, "svg", _window((at, TOP), (CORNER, CORNER), seen))


def _cut(stretch: Stretch, plan: Plan) -> Stretch:
    """Return a stretch with the stitches alone that may lie in the corner; its rows are few enough to be left."""
    near = _near(plan) + widest_cm(plan) - min(section.cm_width for section in plan.sections)
    first = (ceil(near * count / stretch.wide_cm) + 1 for count in stretch.counts)
    return replace(stretch, rows=tuple(row[:most] for row, most in zip(stretch.rows, first, strict=True)))


def _stretches(plan: Plan, vocabulary: Vocabulary, face: Face) -> list[Stretch]:
    stitches = sum(section.before * len(section.cycle) for section in plan.every_section)
    if stitches > MOST_STITCHES:
        raise CannotDraw(f"One repeat of each section is {stitches:,} stitches; {MOST_STITCHES:,} are drawn at most.")
    in_all = sum(section.rows for section in plan.every_section)
    if in_all > MOST_ROWS:
        raise CannotDraw(f"The blanket has {in_all:,} rows; {MOST_ROWS:,} are drawn at most.")
    made = []
    for section, wide, placed in _placed(plan):
        rows = _marks(section, vocabulary, face)
        made.append(Stretch(section, wide, placed, tuple(map(len, rows)), rows))
    return made


def _placed(plan: Plan) -> Iterator[tuple[Section, Fraction, str]]:
    """Give each section with its width and where it lies: the middle upright, what is picked up turned outwards."""
    widest, foot = widest_cm(plan), plan.length_cm
    for section in plan.sections:
        wide = lies_cm(plan, section)
        left = (widest - wide) / 2
        yield section, wide, f"translate({_fine(left)} {_fine(foot)})"
        foot -= section.cm_length
    for edge in plan.picked:
        out = edge.border.cm_length
        turned = (
            f"0 -1 1 0 {_fine(out)} {_fine(plan.length_cm)}"
            if edge.edge == "left"
            else f"0 1 -1 0 {_fine(widest - out)} 0"
        )
        yield edge.border, plan.length_cm, f"matrix({turned})"


def _marks(section: Section, vocabulary: Vocabulary, face: Face) -> tuple[Marks, ...]:
    rows = section.cycle
    traced = trace([row.parts for row in rows], section.before, vocabulary, [row.side for row in rows])
    below, seen = section.before, []
    for row in marked(traced, section.before, vocabulary):
        alone = tuple(uncrossed(mark, vocabulary) for mark in row)
        seen.append(tuple(drawn_across(mark, at, len(row), below) for at, mark in enumerate(alone)))
        below = len(row)
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


def _lay(on: Element, stretches: Sequence[Stretch]) -> None:
    """Lay the sections in their places, in centimetres from the upper left corner of the blanket."""
    for place, stretch in enumerate(stretches):
        section = stretch.section
        group = SubElement(on, "g", {"transform": stretch.placed})
        paper.box(group, (0, -section.cm_length), (stretch.wide_cm, section.cm_length), "ground", SHADOW)
        row_cm = section.cm_length / section.rows
        for number in range(section.rows):
            row = number % len(stretch.rows)
            moved = f"translate(0 {_fine(-(number + 1) * row_cm)})"
            scaled = f"scale({_fine(stretch.wide_cm / stretch.counts[row] / CELL)} {_fine(row_cm / CELL)})"
            SubElement(group, "use", {"href": f"#s{place}r{row}", "transform": f"{moved} {scaled}"})


def _fine(number: Fraction) -> str:
    """Write a length in centimetres to a hundred-thousandth, half up."""
    return shown(number, 5)


def _window(
    corner: paper.Point, size: paper.Point, seen: tuple[Fraction, Fraction, Fraction, Fraction]
) -> dict[str, str]:
    """Return the attributes of a part of the page through which a part of the blanket is seen."""
    place = {"x": said(corner[0]), "y": said(corner[1]), "width": said(size[0]), "height": said(size[1])}
    return place | {"viewBox": " ".join(map(_fine, seen)), "preserveAspectRatio": "none"}


def _words(plan: Plan, terms: Terms, face: Face, *, mirrored: bool = False) -> tuple[str, ...]:
    """Say what is shown, from the cast-on up."""
    side = "right" if face == "RS" else "wrong"
    parts = (
        f"{section_name(section)}: {texture_name(plan, section.texture, terms)}, {counted(section.rows, 'row')} "
        f"of {counted(section.before, 'stitch', 'stitches')}."
        for section in plan.every_section
    )
    image = ", mirrored as left-handers work it" if mirrored else ""
    how = "A V is a knit stitch, a bump a purl stitch, a gap an opening. From the lower edge up:"
    return f"The fabric from its {side} side{image}, at the proportions of its gauge.", how, *parts
