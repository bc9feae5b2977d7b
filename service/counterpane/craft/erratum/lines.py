"""A pattern as lines, each with a key by which another writing of it is compared, in reading order."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import replace

from counterpane.craft.erratum import Line, Place, Sort
from counterpane.craft.pattern import Cautions, Edge, Entry, Pattern, WrittenBorder, WrittenSection
from counterpane.craft.pattern.brackets import shape
from counterpane.craft.pattern.figures import both


def lines_of(pattern: Pattern) -> tuple[Line, ...]:
    """Return all lines of a pattern but its title, its edition and its credits; no key stands twice."""
    return tuple(_unlike(_lines(pattern)))


def _lines(pattern: Pattern) -> Iterator[Line]:
    yield from _cautions(pattern.cautions)
    yield from _preparation(pattern)
    yield from _edge(pattern.cast_on, "Cast-on", "cast-on", 0)
    names: Counter[str] = Counter()
    for number, section in enumerate(pattern.sections, start=1):
        names[section.name] += 1
        times = names[section.name]
        name = section.name if times == 1 else f"{section.name} ({times})"
        yield Line(f"{name}/order", "order", Place(name, "its place"), f"Part {number}.", section.first_row)
        yield from _section(section, name)
    yield from _edge(pattern.bind_off, "Bind-off", "bind-off", pattern.last_row + 1)
    for border in pattern.borders:
        yield from _border(border)
    yield from _sentences("Finishing", pattern.finishing)
    yield from _sentences("Care", (pattern.care,))
    yield from _sentences("Sampler", pattern.sampler)


def _unlike(lines: Iterable[Line]) -> Iterator[Line]:
    """Give the lines with a number behind each key that stood before."""
    seen: Counter[str] = Counter()
    for line in lines:
        seen[line.key] += 1
        yield line if seen[line.key] == 1 else replace(line, key=f"{line.key} ({seen[line.key]})")


def _preparation(pattern: Pattern) -> Iterator[Line]:
    sizes = {"Width": pattern.size.width_cm, "Length": pattern.size.length_cm}
    yield from _entries("Finished size", (Entry(name, both(value)) for name, value in sizes.items()))
    yield from _entries("Gauge", (Entry(gauge.texture, gauge.text) for gauge in pattern.gauges))
    for swatch in pattern.swatches:
        yield from _sentences(f"Swatch: {swatch.name}", swatch.steps)
    for missing in pattern.no_swatches:
        yield from _sentences(f"Swatch: {missing.name}", missing.steps)
    yield from _entries("Materials", pattern.materials)
    yield from _entries("Abbreviations", pattern.abbreviations)
    yield from _entries("Special stitches", (Entry(each.name, " ".join(each.steps)) for each in pattern.specials))
    yield from _sentences("Notes", pattern.notes)


def _entries(section: str, entries: Iterable[Entry], sort: Sort = "told") -> Iterator[Line]:
    for entry in entries:
        yield Line(f"{section}/{entry.name}", sort, Place(section, entry.name), entry.text)


def _sentences(section: str, texts: Iterable[str], sort: Sort = "told") -> Iterator[Line]:
    """Give sentences that have no name: each is a line of its own by its words, whatever the numbers in it."""
    for text in texts:
        yield Line(f"{section}/{' '.join(shape(text))}", sort, Place(section), text)


def _cautions(cautions: Cautions) -> Iterator[Line]:
    for each in cautions.findings:
        text = f"{each.severity} ({each.reference}, {each.basis}): {each.message}"
        yield Line(f"Cautions/{each.rule}", "caution", Place("Cautions", each.rule), text)
    lists = (
        ("Looked at, and nothing found", cautions.assessed),
        ("Not assessed", cautions.not_assessed),
        ("Concerns another age or use", cautions.not_applicable),
        ("Estimates", cautions.estimates),
        ("Measured", cautions.measured),
        ("Where sources differ", cautions.conflicts),
        ("Measuring at home", cautions.home_check),
        ("Always", cautions.standing),
        ("Read for", (cautions.read_for,) if cautions.read_for else ()),
        (f"Held against {cautions.held.name}", cautions.held.items) if cautions.held else ("", ()),
    )
    for name, texts in lists:
        for line in _sentences("Cautions", texts, "caution"):
            yield replace(line, key=f"{line.key}/{name}", place=Place("Cautions", name))
    yield from _entries("Cautions, what the parts record", cautions.parts, "caution")


def _edge(edge: Edge, section: str, sort: Sort, row: int) -> Iterator[Line]:
    yield Line(section, sort, Place(section), edge.line, row, stitches=edge.stitches)
    yield Line(f"{section}/name", sort, Place(section, "which"), edge.name, row)
    yield from _sentences(section, (*edge.steps, *edge.notes))


def _section(section: WrittenSection, name: str, piece: str = "") -> Iterator[Line]:
    first = section.first_row
    yield Line(f"{name}/intro", "told", Place(name), section.intro)
    for index, row in enumerate(section.rows):
        place = Place(name, f"row {row.label}")
        yield Line(f"{name}/row {index + 1}", "row", place, row.text, first + index, 1, row.after, piece)
    at = first + len(section.rows)
    for index, repeat in enumerate(section.repeats, start=1):
        rows = (repeat.last - repeat.first + 1) * repeat.times
        place = Place(name, "repeat" if index == 1 else "last rows")
        yield Line(f"{name}/repeat {index}", "repeat", place, repeat.text, at, rows, piece=piece)
        at += rows
    yield from _sentences(f"{name}, checkpoint", (checkpoint.text for checkpoint in section.checkpoints))
    yield from _sentences(f"{name}, where it ends", (section.stop,))


def _border(border: WrittenBorder) -> Iterator[Line]:
    name = border.section.name
    yield Line(f"{name}/pick up", "cast-on", Place(name, "pick up"), border.line, 0, 0, border.stitches, name)
    yield from _sentences(f"{name}, rate", border.rates)
    yield from _section(border.section, name, name)
    end = border.section.last_row + 1
    yield Line(f"{name}/bind off", "bind-off", Place(name, "bind off"), border.bind_off, end, piece=name)
