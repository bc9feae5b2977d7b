"""A pattern in the order in which it is read, as blocks that each press lays out in its own way."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TypeAlias

from counterpane.craft.pattern import (
    Caution,
    Cautions,
    Edge,
    Entry,
    Pattern,
    Size,
    SwatchWords,
    TextureGauge,
    WrittenBorder,
    WrittenSection,
)
from counterpane.craft.pattern.figures import both
from counterpane.craft.pattern.terms import in_terms

_SEVERITIES = {"stop": "Stop", "warn": "Warning", "note": "Note"}
_NO_PASS = "What is not assessed was not looked at. That is no pass."
_NUMBERS = "Each part counts its rows from 1 again; where a row of the whole blanket is meant, that is said."
_EITHER_WAY = "from reading the swatch alone; hands and washing add to it"


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading; level 1 is the title."""

    text: str
    level: int = 2


@dataclass(frozen=True, slots=True)
class Paragraph:
    """A paragraph of prose."""

    text: str


@dataclass(frozen=True, slots=True)
class Items:
    """A list of sentences."""

    texts: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Entries:
    """Short words with what they stand for."""

    entries: tuple[Entry, ...]


@dataclass(frozen=True, slots=True)
class Instructions:
    """Rows to work from, each whole."""

    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Orders:
    """Short lines to work from beside the rows: a cast-on, repeat lines."""

    lines: tuple[str, ...]


Block: TypeAlias = Heading | Paragraph | Items | Entries | Instructions | Orders


def page(pattern: Pattern) -> Iterator[Block]:
    """Give the blocks of a pattern in reading order."""
    yield Heading(pattern.title, 1)
    if pattern.edition:
        yield Paragraph(f"{pattern.edition}.")
    yield Paragraph(pattern.summary)
    if pattern.cautions.says_stop:
        yield Paragraph("Safety says stop: read the cautions at the end before you begin.")
    yield from _preparation(pattern)
    yield Heading("Notes")
    yield Items((_NUMBERS, *pattern.notes))
    yield from _edge("Cast-on", pattern.cast_on, first=True)
    for section in pattern.sections:
        yield from _section(section)
    yield from _edge(in_terms("Bind-off", pattern.terms), pattern.bind_off, first=False)
    for border in pattern.borders:
        yield from _border(border)
    yield from _end(pattern)


def _preparation(pattern: Pattern) -> Iterator[Block]:
    yield Heading("Finished size")
    yield Items(_size(pattern.size))
    yield Heading(in_terms("Gauge", pattern.terms))
    yield from _gauges(pattern.gauges)
    if pattern.swatches:
        yield from _swatches(pattern.swatches)
    yield Heading("Materials")
    yield Entries(pattern.materials)
    yield Heading("Abbreviations")
    yield Entries(pattern.abbreviations)
    if pattern.specials:
        yield Heading("Special stitches")
        yield Entries(tuple(Entry(special.name, " ".join(special.steps)) for special in pattern.specials))


def _swatches(swatches: tuple[SwatchWords, ...]) -> Iterator[Block]:
    """Give how each swatch is made, and once what is done with all of them."""
    yield Heading("Swatches")
    for swatch in swatches:
        yield Heading(f"{swatch.name} ({swatch.where})", 3)
        yield Items(swatch.making)
    yield Heading("With each swatch", 3)
    yield Items(swatches[0].asking)


def _gauges(gauges: tuple[TextureGauge, ...]) -> Iterator[Block]:
    """Give the gauges that are known, and then in one line each what the others borrow."""
    stated = tuple(f"{gauge.texture}: {gauge.text}." for gauge in gauges if gauge.stated)
    borrowed: dict[str, list[str]] = {}
    for gauge in gauges:
        if not gauge.stated:
            borrowed.setdefault(gauge.text, []).append(gauge.texture)
    yield Items((*stated, *(f"{'; '.join(textures)}: {text}." for text, textures in borrowed.items())))


def _size(size: Size) -> tuple[str, ...]:
    return (
        f"Width {both(size.width_cm)}, give or take {both(size.width_tolerance_cm)}.",
        f"Length {both(size.length_cm)}, give or take {both(size.length_tolerance_cm)}.",
        f"The margins come {_EITHER_WAY}.",
    )


def _edge(heading: str, edge: Edge, first: bool) -> Iterator[Block]:
    yield Heading(f"{heading}: {edge.name}")
    yield Orders((edge.line,)) if first else Paragraph(edge.line)
    yield Items((*edge.steps, *edge.notes))


def _section(section: WrittenSection, heading: bool = True) -> Iterator[Block]:
    if heading:
        yield Heading(section.name)
        yield Paragraph(section.intro)
    yield Instructions(tuple(row.text for row in section.rows))
    if section.repeats:
        yield Orders(tuple(repeat.text for repeat in section.repeats))
    yield Items(tuple(f"Checkpoint: {checkpoint.text}" for checkpoint in section.checkpoints))
    yield Paragraph(section.stop)


def _border(border: WrittenBorder) -> Iterator[Block]:
    """Give a border that is picked up: the pick-up opens the piece, as a cast-on does."""
    yield Heading(border.section.name)
    yield Paragraph(border.section.intro)
    yield Orders((border.line,))
    yield Items(border.rates)
    yield from _section(border.section, heading=False)
    yield Paragraph(border.bind_off)


def _end(pattern: Pattern) -> Iterator[Block]:
    yield Heading("Finishing")
    yield Items(pattern.finishing)
    yield Heading("Care")
    yield Paragraph(pattern.care)
    if pattern.sampler:
        yield Heading("Sampler")
        yield Items(pattern.sampler)
    yield Heading("Cautions")
    yield from _cautions(pattern.cautions)
    yield Heading("Credits")
    yield Items(tuple(f"{credit.name}: {credit.text}; licence {credit.licence}." for credit in pattern.credits))


def _cautions(cautions: Cautions) -> Iterator[Block]:
    if cautions.findings:
        yield Heading("For this blanket", 3)
        if cautions.read_for:
            yield Paragraph(cautions.read_for)
        yield Items(tuple(map(_finding, cautions.findings)))
    if cautions.held:
        yield Heading(f"Held against: {cautions.held.name}", 3)
        yield Items(cautions.held.items)
    yield from _records(cautions)
    told = (
        ("Measured", cautions.measured),
        ("Where sources differ", cautions.conflicts),
        ("Measuring at home", cautions.home_check),
    )
    for heading, items in told:
        if items:
            yield Heading(heading, 3)
            yield Items(items)
    yield Heading("Always", 3)
    yield Items(cautions.standing)


def _finding(finding: Caution) -> str:
    severity = _SEVERITIES.get(finding.severity, finding.severity)
    return f"{severity} ({finding.reference}, {finding.basis}): {finding.message} Source: {finding.source}."


def _records(cautions: Cautions) -> Iterator[Block]:
    told = {
        "Not assessed for want of figures": "; ".join(cautions.not_assessed),
        "Looked at, and nothing found in the figures entered": "; ".join(cautions.assessed),
        "Concerns another age or use": "; ".join(cautions.not_applicable),
    }
    yield Heading("What was assessed and what was not", 3)
    yield Items((_NO_PASS, *(f"{what}: {rules}." for what, rules in told.items() if rules)))
    if cautions.parts or cautions.estimates:
        yield Heading("What the parts record", 3)
        yield Items(tuple(f"{part.name}: {part.text}" for part in cautions.parts))
        yield Items(cautions.estimates)
