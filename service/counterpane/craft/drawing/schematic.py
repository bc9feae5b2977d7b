"""The schematic: the finished blanket to scale, with its measures, its parts in the order of work, and its seams."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from textwrap import wrap
from xml.etree.ElementTree import Element

from counterpane.craft.constructions import Plan
from counterpane.craft.constructions.zones import Zone, widest_cm, zones
from counterpane.craft.drawing import paper
from counterpane.craft.drawing.paper import Number, Point
from counterpane.craft.measures import Units
from counterpane.craft.pattern.figures import both, counted
from counterpane.craft.pattern.parts import called, section_name, texture_name
from counterpane.craft.pattern.terms import in_terms
from counterpane.craft.pattern.units import in_units
from counterpane.craft.stitches import Terms, Vocabulary

LONGEST = 420
"""Units of the longer side of the blanket on the paper; house figure."""
LEFT, RIGHT, TOP = 270, 150, 70
"""Units around the blanket for names and measures; house figures."""
LINE = 15
"""Units from one line of words to the next; house figure."""
LETTERS = 42
"""Letters in a line of the names on the left; house figure."""
_HATCHED = {"end": "M0 6 6 0", "side": "M0 3H6", "selvedge": "M3 0V6"}
_EDGE = re.compile(r"(?<=Cast) (?=on|off)|(?<=Bind) (?=off)")
"""The space in the name of an edge, where a sentence that begins with it would read as an order to work it."""
_GROUND = {"body": paper.PAPER}


@dataclass(frozen=True, slots=True)
class Label:
    """Words on the left, and the height on the blanket at which their line points."""

    lines: tuple[str, ...]
    at: Number

    @property
    def height(self) -> int:
        """Units that the words take, with the space under them."""
        return LINE * len(self.lines) + LINE // 2


@dataclass(frozen=True, slots=True)
class Frame:
    """Where the blanket lies on the paper: units to a centimetre, and its upper left corner."""

    units: Fraction
    left: Fraction
    top: Fraction
    width: Fraction
    length: Fraction

    @property
    def foot(self) -> Fraction:
        """The height of the cast-on edge."""
        return self.top + self.length

    @property
    def right(self) -> Fraction:
        """Where the widest section ends."""
        return self.left + self.width


def schematic(plan: Plan, vocabulary: Vocabulary, title: str, terms: Terms = "us", lengths: Units = "both") -> str:
    """Return the schematic of a plan as SVG, widths and lengths at one scale."""
    parts = zones(plan, vocabulary)
    widest = widest_cm(plan)
    units = LONGEST / max(widest, plan.length_cm)
    labels = _spread(_labels(plan, terms, lengths, units))
    spare = max(0, -min(label.at for label, _ in labels), -min(top for _, top in labels))
    frame = Frame(units, Fraction(LEFT), Fraction(TOP + spare), widest * units, plan.length_cm * units)
    notes = tuple(_notes(plan, parts, terms, lengths))
    words = " ".join(in_words(plan, vocabulary, terms, lengths))
    page = paper.sheet(f"{title}: schematic", words, frame.right + RIGHT, frame.foot + (4 + len(notes)) * LINE)
    paper.text(page, (12, 24), title, "strong")
    paper.text(page, (12, 24 + LINE), in_terms("To scale, each part at its own gauge.", terms), "small")
    grounds = _GROUND | {role: paper.hatching(page, f"ground-{role}", drawn) for role, drawn in _HATCHED.items()}
    for zone in parts:
        _draw_zone(page, frame, zone, grounds[zone.role], lengths)
    _draw_labels(page, frame, labels)
    _draw_measures(page, frame, plan, lengths)
    _draw_direction(page, frame, parts, terms)
    for number, line in enumerate(notes):
        paper.text(page, (frame.left, frame.foot + (4 + number) * LINE - 4), line, "small")
    return paper.finished(page)


def in_words(plan: Plan, vocabulary: Vocabulary, terms: Terms, lengths: Units = "both") -> tuple[str, ...]:
    """Say what the schematic shows, in the order of work, for those who do not see it."""
    wide, long = _said(plan.width_cm, lengths), _said(plan.length_cm, lengths)
    told = enumerate(_steps(plan, terms, lengths), 1)
    return (
        f"A blanket {wide} wide and {long} long, worked upwards.",
        *(f"{number}. {_EDGE.sub('-', heading)}: {words}." for number, (heading, words, _) in told),
        *(f"{note}." for note in _notes(plan, zones(plan, vocabulary), terms, lengths)),
    )


def _said(cm: Fraction, lengths: Units) -> str:
    return in_units(both(cm), lengths)


def _labels(plan: Plan, terms: Terms, lengths: Units, units: Fraction) -> tuple[Label, ...]:
    """Return the steps of the work from the cast-on up, each pointing at the middle of its part."""
    return tuple(
        Label((f"{number}. {heading}", *wrap(words, LETTERS)), (plan.length_cm - up) * units)
        for number, (heading, words, up) in enumerate(_steps(plan, terms, lengths), start=1)
    )


def _steps(plan: Plan, terms: Terms, lengths: Units) -> Iterator[tuple[str, str, Fraction]]:
    """Give each step: its heading, what is said of it, and how far up it lies in centimetres."""
    request, foot = plan.request, Fraction(0)
    yield "Cast on", f"{called(request.cast_on.component, terms)}, {counted(plan.counts.cast_on, 'st')}", foot
    for section in plan.sections:
        measure = f"{counted(section.rows, 'row')}, {_said(section.cm_length, lengths)}"
        middle = foot + section.cm_length / 2
        yield section_name(section), f"{texture_name(plan, section.texture, terms)}, {measure}", middle
        foot += section.cm_length
    last = counted(plan.sections[-1].after, "st")
    yield in_terms("Bind off", terms), f"{called(request.bind_off.component, terms)}, {last}", foot
    for edge in plan.picked:
        border = edge.border
        told = f"{texture_name(plan, border.texture, terms)}, {counted(edge.picks, 'st')} picked up, "
        yield (
            section_name(border),
            f"{told}{counted(border.rows, 'row')} outwards, {_said(border.cm_length, lengths)}",
            foot,
        )


def _spread(labels: Sequence[Label]) -> tuple[tuple[Label, Number], ...]:
    """Return each label with the height of its first line, from the cast-on up, so that none lies over another."""
    placed: list[tuple[Label, Number]] = []
    for label in labels:
        wanted = label.at - Fraction(label.height, 2)
        top = min(wanted, placed[-1][1] - label.height) if placed else wanted
        placed.append((label, top))
    return tuple(placed)


def _draw_zone(page: Element, frame: Frame, zone: Zone, ground: str, lengths: Units) -> None:
    corner = (
        frame.left + zone.left_cm * frame.units,
        frame.foot - (zone.foot_cm + zone.length_cm) * frame.units,
    )
    size = f"{_said(zone.width_cm, lengths)} by {_said(zone.length_cm, lengths)}"
    on = paper.group(page, f"{zone.name}: {counted(zone.stitches, 'stitch', 'stitches')}, {size}")
    paper.box(on, corner, (zone.width_cm * frame.units, zone.length_cm * frame.units), fill=ground)


def _draw_labels(page: Element, frame: Frame, labels: Sequence[tuple[Label, Number]]) -> None:
    for label, top in labels:
        first = frame.top + top + LINE
        paper.text(page, (12, first), label.lines[0], "strong")
        for number, line in enumerate(label.lines[1:], start=1):
            paper.text(page, (12, first + number * LINE), line, "small")
        height = frame.top + label.at
        paper.path(page, ((LEFT - 34, first - 4), (LEFT - 12, height), (LEFT - 4, height)), "thin")


def _draw_measures(page: Element, frame: Frame, plan: Plan, lengths: Units) -> None:
    """Draw the finished width under the blanket and its length on the right, with what the swatches leave open."""
    middle = frame.left + frame.width / 2
    half = plan.width_cm * frame.units / 2
    _draw_span(page, (middle - half, frame.foot + 16), (middle + half, frame.foot + 16))
    paper.text(page, (middle, frame.foot + 34), _said(plan.width_cm, lengths), "middle")
    _draw_span(page, (frame.right + 16, frame.top), (frame.right + 16, frame.foot))
    beside = (frame.right + 28, frame.top + frame.length / 2)
    paper.text(page, beside, _said(plan.length_cm, lengths))


def _draw_span(page: Element, start: Point, end: Point) -> None:
    """Draw a measured line with a short stroke across each end."""
    across = (0, 4) if start[1] == end[1] else (4, 0)
    paper.path(page, (start, end))
    for x, y in (start, end):
        paper.path(page, ((x - across[0], y - across[1]), (x + across[0], y + across[1])))


def _draw_direction(page: Element, frame: Frame, parts: Sequence[Zone], terms: Terms) -> None:
    """Draw an arrow up the tallest part of the body."""
    body = max((zone for zone in parts if zone.role == "body"), key=lambda zone: zone.length_cm)
    x = frame.left + (body.left_cm + body.width_cm / 2) * frame.units
    foot = frame.foot - body.foot_cm * frame.units
    length = body.length_cm * frame.units
    low, high = foot - length / 4, foot - 3 * length / 4
    on = paper.group(page, in_terms("worked upwards, from the cast-on to the bind-off", terms))
    paper.path(on, ((x, low), (x, high)))
    paper.path(on, ((x - 6, high + 10), (x, high), (x + 6, high + 10)))


def _notes(plan: Plan, parts: Sequence[Zone], terms: Terms, lengths: Units) -> Iterator[str]:
    """Give what runs up the sides, the sections that are wider or narrower than the body, and the seams."""
    edges = {(zone.role, zone.slug, zone.stitches): zone for zone in parts if zone.role in ("side", "selvedge")}
    for zone in edges.values():
        name = texture_name(plan, zone.slug, terms)
        yield f"Up the sides: {name}, {counted(zone.stitches, 'st')}, {_said(zone.width_cm, lengths)}"
    body_cm = plan.width_cm - sum((edge.border.cm_length for edge in plan.picked), Fraction(0))
    for section in plan.sections:
        if section.cm_width != body_cm:
            own = in_terms("at its own gauge", terms)
            yield f"{section_name(section)} {own}: {_said(section.cm_width, lengths)} wide"
    yield "Seams: none"
