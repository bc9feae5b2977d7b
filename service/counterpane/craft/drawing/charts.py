"""The charts of a plan: one for each section, those of equal rows once."""

from __future__ import annotations

from collections.abc import Sequence
from textwrap import wrap
from xml.etree.ElementTree import Element

from counterpane.craft.constructions import Plan, Section
from counterpane.craft.counts import Progression, count
from counterpane.craft.drawing import paper
from counterpane.craft.drawing.chart import CannotChart, Chart, Lettered, letters, page
from counterpane.craft.drawing.chart.charting import chart_of
from counterpane.craft.drawing.chart.page import LEAST, LETTERS, LINE, MARGIN, Named
from counterpane.craft.drawing.chart.symbols import SIDE
from counterpane.craft.pattern.figures import counted
from counterpane.craft.pattern.parts import section_name, texture_name
from counterpane.craft.stitches import Terms, Vocabulary

READ = (
    "Read from the lowest row up: RS rows and rounds from right to left, WS rows from left to right. Each cell shows "
    "the stitch as the right side of the fabric shows it."
)


READ_MIRRORED = (
    "Mirrored, for left-handers who work mirrored. Read from the lowest row up: RS rows and rounds from left to right, "
    "WS rows from right to left. Each cell shows the stitch as the right side of their fabric shows it."
)


def charts(plan: Plan, vocabulary: Vocabulary, title: str, terms: Terms = "us", *, mirrored: bool = False) -> str:
    """Return the charts of a plan as one SVG picture; a section that has none is named with the reason."""
    named, without = charted(plan, vocabulary, terms)
    drawn = [each.chart for each in named]
    wide = max(LEAST, *(chart.columns * SIDE for chart in drawn), 0) + 2 * MARGIN
    signs = page.signs_of(drawn, vocabulary)
    body = Element("g")
    page.define(body, signs, mirrored=mirrored)
    y = _lines(body, 24, (title,), "strong")
    y = _lines(body, y, wrap(READ_MIRRORED if mirrored else READ, (wide - 24) // LETTERS))
    for each in named:
        y = page.draw(body, each, y, signs, mirrored=mirrored)
    y = _lines(body, y + LINE, [line for said in without for line in wrap(said, (wide - 24) // LETTERS)])
    y = page.legend(body, page.Key(drawn, signs), y, vocabulary, terms) if named else y
    sheet = paper.sheet(
        f"{title}: chart", _words(named, without, vocabulary, terms, mirrored=mirrored), wide, y + LINE, page.STYLE
    )
    sheet.append(body)
    return paper.finished(sheet)


def _words(
    named: Sequence[Named], without: Sequence[str], vocabulary: Vocabulary, terms: Terms, *, mirrored: bool
) -> str:
    """Say what the charts show, how large each is and how it is read, and its rows, to those who do not see them."""
    sizes = (
        f"{each.heading}, {counted(len(each.chart.rows), 'row')} of {counted(each.chart.columns, 'column')}"
        for each in named
    )
    first = f"{counted(len(named), 'chart')} of symbols. {'; '.join(sizes)}." if named else "No chart."
    rows = (line for each in named for line in (*page.in_words(each, vocabulary, terms), each.note))
    how = (READ_MIRRORED if mirrored else READ,) if named else ()
    return " ".join((first, *how, *rows, *without))


def in_letters(
    plan: Plan, vocabulary: Vocabulary, terms: Terms
) -> tuple[tuple[Lettered, ...], tuple[tuple[str, str], ...], tuple[str, ...]]:
    """Return the charts of a plan in letters, their key, and why other sections have none."""
    named, without = charted(plan, vocabulary, terms)
    drawn = [each.chart for each in named]
    signs = letters.signs_of(drawn, vocabulary)
    key = letters.key(drawn, signs, vocabulary, terms)
    return tuple(letters.lettered(each, signs) for each in named), key, tuple(without)


def _lines(on: Element, top: int, lines: Sequence[str], kind: str = "small") -> int:
    for number, line in enumerate(lines):
        paper.text(on, (12, top + number * LINE), line, kind)
    return top + len(lines) * LINE


def charted(plan: Plan, vocabulary: Vocabulary, terms: Terms) -> tuple[list[Named], list[str]]:
    """Return the charts of a plan under the names of their sections, and why other sections have none."""
    found: dict[Chart, list[Section]] = {}
    without: list[str] = []
    for section in plan.every_section:
        try:
            found.setdefault(chart_of_section(section, vocabulary), []).append(section)
        except CannotChart as reason:
            without.append(f"{section_name(section)} has no chart: {reason}")
    return [_named(plan, chart, sections, terms) for chart, sections in found.items()], without


def chart_of_section(section: Section, vocabulary: Vocabulary) -> Chart:
    """Return the chart of a section from selvedge to selvedge; CannotChart where it has none."""
    rows = section.cycle
    starts = count([row.parts for row in rows], vocabulary, [row.side for row in rows]).starts
    counts = next((start for start in starts if start.admits(section.before)), Progression.only(section.before))
    return chart_of(rows, counts, vocabulary)


def _named(plan: Plan, chart: Chart, sections: Sequence[Section], terms: Terms) -> Named:
    first, *more = sections
    before, last = [section_name(first), *(section_name(section).lower() for section in more[:-1])], more[-1:]
    names = " and ".join([", ".join(before), *(section_name(section).lower() for section in last)])
    heading = f"{names}: {texture_name(plan, first.texture, terms)}"
    rows = counted(len(chart.rows), "row")
    if chart.box is None:
        return Named(heading, chart, f"{rows} over {counted(chart.columns, 'stitch', 'stitches')}.")
    note = f"Repeat the framed {counted(chart.box.wide, 'stitch', 'stitches')} across, and the {rows} upwards."
    return Named(heading, chart, note)
