"""Lengths in centimetres here and in inches there."""

from __future__ import annotations

import re
from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.lengths import PrintedLength, lengths_in
from counterpane.craft.rows.pages import Page
from counterpane.craft.rows.words import Line

_METRIC = re.compile(r"\d\s*-?c(?:m|entim)", re.IGNORECASE)
_INCHES = re.compile(r"\d\s*-?(?:in|\")", re.IGNORECASE)


@rule(
    "units-mixed",
    family="wording",
    severity="note",
    bad=(
        "Gauge: 20 sts and 40 rows = 10 cm in garter stitch.\nCast on 4 sts.\nRow 1: Knit.\n"
        "Rep row 1 until piece measures 30 inches."
    ),
    good=(
        "Gauge: 20 sts and 40 rows = 10 cm in garter stitch.\nCast on 4 sts.\nRow 1: Knit.\n"
        "Rep row 1 until piece measures 76 cm."
    ),
)
def units_mixed(examined: Examined) -> Iterator[Finding]:
    """Some lengths are in centimetres alone and others in inches alone.

    A knitter has one tape measure in hand, and a number without its neighbour is easily read in the wrong unit.
    """
    if not (_METRIC.search(examined.text) and _INCHES.search(examined.text)):
        return
    metric: list[PrintedLength] = []
    inches: list[PrintedLength] = []
    for paragraph in _paragraphs(examined.instructions.page):
        found = [length for line in paragraph if "needle" not in line.text for length in lengths_in(line)]
        beside = any(length.line.text[: length.start].endswith(("(", "/")) for length in found)
        if not beside and len({length.metric for length in found}) == 1:
            (metric if found[0].metric else inches).append(found[0])
    if metric and inches:
        few = inches if len(inches) <= len(metric) else metric
        mine, other = ("centimetres", "inches") if few is metric else ("inches", "centimetres")
        message = f"This length is in {mine} alone; others of the text are in {other} alone."
        yield at(
            few[0].line.place(few[0].start),
            "units-mixed",
            "note",
            message,
            "Give every length in one unit, or in both.",
        )


def _paragraphs(page: Page) -> Iterator[list[Line]]:
    """Yield the lines that belong together, since a line may end between "12 cm" and "(5 in)"."""
    run: list[Line] = []
    for line, given in zip(page.lines, page.given, strict=True):
        if run and (not given.strip() or given[0].isupper() or given.lstrip()[0] in "-•*"):
            yield run
            run = []
        run.append(line)
    yield run
