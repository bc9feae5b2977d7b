"""A pattern in the order in which it is read, as blocks that each press lays out in its own way."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from counterpane.craft.drawing import Picture
from counterpane.craft.pattern import (
    Edge,
    Entry,
    Pattern,
    Size,
    TextureGauge,
    WrittenBorder,
    WrittenSection,
)
from counterpane.craft.pattern.figures import both
from counterpane.craft.pattern.terms import in_terms
from counterpane.craft.pattern.units import in_units
from counterpane.press.blocks import Block, Entries, Figure, Heading, Instructions, Items, Orders, Paragraph
from counterpane.press.cautions import cautions_blocks

_NUMBERS = "Each part counts its rows from 1 again; where a row of the whole blanket is meant, that is said."
_NOT_NAMED = "not named"
_DRAWN_ELSEWHERE = "the fabric is drawn in this pattern's HTML and PDF forms."
_EITHER_WAY = "from reading the swatch alone; hands and washing add to it"


def page(pattern: Pattern, pictures: Sequence[Picture] = ()) -> Iterator[Block]:
    """Give the blocks of a pattern in reading order, each picture in its place."""
    yield Heading(pattern.title, 1)
    if pattern.edition:
        yield Paragraph(f"{pattern.edition}.")
    if pattern.asks:
        yield Paragraph(pattern.asks)
    yield Paragraph(pattern.summary)
    yield from _head(pattern, pictures)
    if pattern.cautions.says_stop:
        yield Paragraph("Safety says stop: read the cautions at the end before you begin.")
    yield from _preparation(pattern)
    yield Heading("Notes")
    yield Items((_NUMBERS, *pattern.notes))
    if pattern.sampler:
        yield Heading("Sampler")
        yield Items(pattern.sampler)
    yield from _edge("Cast-on", pattern.cast_on, first=True)
    for section in pattern.sections:
        yield from _section(section)
    yield from _edge(in_terms("Bind-off", pattern.terms), pattern.bind_off, first=False)
    for border in pattern.borders:
        yield from _border(border)
    yield from _drawn(pictures)
    yield from _end(pattern)


def _head(pattern: Pattern, pictures: Sequence[Picture]) -> Iterator[Block]:
    """Give who designed it, how demanding it is, and what the fabric looks like."""
    fabric = [picture for picture in pictures if picture.kind == "fabric"]
    level = f"{pattern.level.reason}. {pattern.level.source}."
    told = (Entry("Designer", pattern.designer or _NOT_NAMED), Entry("Level", level))
    elsewhere = (Entry("Picture", _DRAWN_ELSEWHERE),) if pictures and not fabric else ()
    yield Entries((*told, *elsewhere))
    yield from map(Figure, fabric)


def _drawn(pictures: Sequence[Picture]) -> Iterator[Block]:
    """Give chart and schematic."""
    for kind, heading in (("chart", "Chart"), ("schematic", "Schematic")):
        shown = [picture for picture in pictures if picture.kind == kind]
        if shown:
            yield Heading(heading)
            yield from map(Figure, shown)


def _preparation(pattern: Pattern) -> Iterator[Block]:
    yield Heading("Finished size")
    yield Items(tuple(in_units(text, pattern.units) for text in _size(pattern.size)))
    yield Heading(in_terms("Gauge", pattern.terms))
    yield from _gauges(pattern.gauges)
    if pattern.swatches or pattern.no_swatches:
        yield from _swatches(pattern)
    yield Heading("Materials")
    yield Entries(pattern.materials)
    yield Heading("Abbreviations")
    yield Entries(pattern.abbreviations)
    if pattern.specials:
        yield Heading("Special stitches")
        yield Entries(tuple(Entry(special.name, " ".join(special.steps)) for special in pattern.specials))


def _swatches(pattern: Pattern) -> Iterator[Block]:
    """Give how each swatch is made, of which fabric there is none, and once what is done with all of them."""
    yield Heading("Swatches")
    for swatch in pattern.swatches:
        yield Heading(f"{swatch.name} ({swatch.where})", 3)
        yield Items(swatch.making)
    for missing in pattern.no_swatches:
        yield Heading(f"{missing.name} ({missing.where})", 3)
        yield Items(missing.steps)
    for swatch in pattern.swatches[:1]:
        yield Heading("With each swatch", 3)
        yield Items(swatch.asking)


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
        f"Width {both(size.width_cm)} after washing and blocking, give or take {both(size.width_tolerance_cm)}.",
        f"Length {both(size.length_cm)} after washing and blocking, give or take {both(size.length_tolerance_cm)}.",
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
    rows = tuple(row.text for row in section.rows)
    of_the_blanket = (section.first_row, section.last_row) if heading else (0, 0)
    yield Instructions(rows, section.name, *of_the_blanket)
    if section.repeats:
        yield Orders(tuple(repeat.text for repeat in section.repeats))
    yield Items(section.lifelines)
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
    yield Heading("Cautions")
    yield from cautions_blocks(pattern.cautions)
    yield Heading("Credits")
    credits = (f"{credit.name}: {credit.text}; licence {credit.licence}." for credit in pattern.credits)
    yield Items((f"Design: {pattern.designer or _NOT_NAMED}.", *credits))
    yield Paragraph(pattern.sharing)
