"""The designer's sheet as blocks, in the order in which a designer asks: counts, why, what is near, yarn, findings."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from counterpane.craft.constructions import Section
from counterpane.craft.findings import Finding
from counterpane.craft.measures import half_up, shown
from counterpane.craft.pattern import Entry
from counterpane.craft.pattern.derivations import Derivation
from counterpane.craft.pattern.designing import DesignerSheet
from counterpane.craft.pattern.figures import both, counted
from counterpane.craft.pattern.terms import in_terms
from counterpane.craft.pattern.units import in_units
from counterpane.craft.stitches import Terms
from counterpane.craft.yarn import ColourYarn, Spread
from counterpane.press import Paper
from counterpane.press.blocks import Block, Entries, Heading, Items, Paragraph, Table
from counterpane.press.html import html_of
from counterpane.press.markdown import markdown_of
from counterpane.press.pdf import pdf_of
from counterpane.press.text import text_of

ABOUT = (
    "For the designer, beside the knitter's pattern: all counts, the sums they come from, in centimetres, and what the "
    "rules say."
)
_NO_YARN = "No yarn is told: give it in the request."
_NO_FINDINGS = "The rules say nothing of this plan. That is no proof that nothing is wrong."


def as_sheet(sheet: DesignerSheet, form: str, paper: Paper = "a4") -> bytes:
    """Return a sheet as text, Markdown, a page of HTML or PDF."""
    title, terms = f"{sheet.pattern.title}: the designer's sheet", sheet.pattern.terms
    if form == "html":
        return html_of(blocks_of(sheet), title, terms, paper)
    if form == "pdf":
        return pdf_of(blocks_of(sheet), title, terms, paper)
    return (markdown_of if form == "markdown" else text_of)(blocks_of(sheet)).encode()


def blocks_of(sheet: DesignerSheet) -> Iterator[Block]:
    """Give the blocks of a sheet."""
    pattern = sheet.pattern
    yield Heading(f"{pattern.title}: the designer's sheet", 1)
    yield Paragraph(ABOUT)
    level = f"{pattern.level.reason}. {pattern.level.source}."
    yield Entries((Entry("Designer", pattern.designer or "not named"), Entry("Level", level)))
    yield Heading("Counts")
    yield _sections(sheet)
    yield Heading("Why these numbers")
    for each in sheet.derived:
        yield from _derived(each, sheet)
    yield from _near(sheet)
    yield Heading(in_terms("Gauges", pattern.terms))
    yield Items(tuple(f"{gauge.texture}: {gauge.text}." for gauge in pattern.gauges))
    yield Heading("Yarn")
    yield from _yarn(sheet)
    yield Heading("Findings")
    found = tuple(in_terms(_finding(finding), pattern.terms) for finding in sheet.plan.findings)
    yield Items(found or (_NO_FINDINGS,))
    yield Heading("Safety")
    cautions = pattern.cautions
    yield Items(tuple(f"{each.rule} ({each.reference}, {each.severity}): {each.message}" for each in cautions.findings))
    yield Items((f"Not assessed, which is no pass: {'; '.join(cautions.not_assessed) or 'nothing'}.",))
    yield Heading("Credits")
    yield Items(tuple(f"{credit.name}: {credit.text}; licence {credit.licence}." for credit in pattern.credits))
    yield Paragraph(pattern.sharing)


def _sections(sheet: DesignerSheet) -> Table:
    heads = ("Part", "Rows", "From row", "Before", "After", "Stitches", "Wide and long")
    sections = zip(sheet.section_names, sheet.plan.every_section, strict=True)
    return Table(heads, tuple(_section(name, section, sheet) for name, section in sections))


def _section(name: str, section: Section, sheet: DesignerSheet) -> tuple[str, ...]:
    counts = (section.rows, section.first_row, section.before, section.after, section.stitches)
    size = in_units(f"{both(section.cm_width)} by {both(section.cm_length)}", sheet.pattern.units)
    return (name, *(f"{count:,}" for count in counts), size)


def _derived(each: Derivation, sheet: DesignerSheet) -> Iterator[Block]:
    units = sheet.pattern.units
    yield Heading(f"{each.name}: {in_units(each.value, units)}", 3)
    near = [f"{where} {count:,}" for where, count in (("below", each.below), ("above", each.above)) if count]
    allowed = (f"Nearest allowed: {', '.join(near)}.",) if near else ()
    told = (in_terms(text, sheet.pattern.terms) for text in each.sums)
    yield Items((*(text if _is_sum(text) else in_units(text, units) for text in told), *allowed))


def _is_sum(text: str) -> bool:
    """Tell whether a line is worked out in centimetres, which other units would make untrue."""
    return "×" in text or "÷" in text


def _near(sheet: DesignerSheet) -> Iterator[Block]:
    if not sheet.plan.nearest:
        return
    yield Heading("Counts near it")
    rows = tuple(
        (f"{near.cast_on:,}", in_units(both(near.width_cm), sheet.pattern.units), f"{_signed(near.error_cm)} cm")
        for near in sheet.plan.nearest
    )
    yield Table(("Cast-on", "Wide", "Off"), rows)


def _signed(value: Fraction) -> str:
    return f"{'+' if value > 0 else ''}{shown(value)}"


def _yarn(sheet: DesignerSheet) -> Iterator[Block]:
    if sheet.yarn is None:
        yield Paragraph(_NO_YARN)
        return
    for place, each in enumerate(sheet.yarn.colours):
        council = sheet.yarn.classes[place] if sheet.yarn.classes else ""
        yield Heading(f"{each.yarn.colour or each.yarn.name or 'Yarn'}{f' ({council})' if council else ''}", 3)
        yield _parts(each, sheet.pattern.terms)
        yield Items((_together(each), f"The figures rest on: {each.scale.basis} ({each.scale.source})."))


def _parts(each: ColourYarn, terms: Terms) -> Table:
    rows = [(part.part, part.loops, part.metres, part.grams) for part in each.parts]
    rows.append(("in all", each.loops, each.metres, each.grams))
    told = tuple((in_terms(name.replace("_", "-"), terms), *map(_spread, figures)) for name, *figures in rows)
    return Table(("Part", "Loops", "Metres", "Grams"), told)


def _spread(figure: Spread | None) -> str:
    if figure is None:
        return "not known"
    low, likely, high = (f"{int(half_up(end)):,}" for end in (figure.low, figure.likely, figure.high))
    return f"{likely} ({low} to {high})"


def _together(each: ColourYarn) -> str:
    ends = counted(each.ends, "end")
    if each.balls is None:
        return f"Balls are not known; {ends} to weave in."
    balls = each.balls
    return f"Balls: {balls.likely} ({balls.low} to {balls.high}), buy {balls.buy}; {ends} to weave in."


def _finding(finding: Finding) -> str:
    place = f" at {finding.pointer}" if finding.pointer else ""
    changes = "; ".join(f"{change.pointer} to {change.value}: {change.why}" for change in finding.changes)
    offered = f" Changes: {changes}." if changes else ""
    return f"{finding.severity} {finding.rule}{place}: {finding.message} {finding.hint}{offered}".strip()
