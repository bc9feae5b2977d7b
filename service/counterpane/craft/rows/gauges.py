"""Gauges (UK tensions) printed in a text: stitches, rows, the window they were counted over, and the fabric."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from counterpane.craft.measures import CM_PER_INCH
from counterpane.craft.rows.lengths import lengths_in, value_of
from counterpane.craft.rows.pages import Page
from counterpane.craft.rows.passages import Stretch, begins_rows
from counterpane.craft.rows.tree import Place
from counterpane.craft.rows.words import Line

_N = r"(\d{1,3}\s+\d/\d|\d{1,3}(?:\.\d{1,2})?)"
_STITCHES = re.compile(rf"(?<![\d.]){_N}\s*(?:sts?|stitches)\b")
_ROWS = re.compile(rf"(?<![\d.]){_N}\s*(?:rows?|rounds?|rnds?)\b")
_PER_INCH = re.compile(r"\b(?:per|to\s+(?:the|an|one)|an|each)\s+inch\b")
_LOOSE = re.compile(
    rf"\W*{_N}\s*(?:sts?|stitches)\b.{{0,60}}?(?:=|\bto\b|\bover\b|\bper\b).{{0,60}}?\d\s*(?:cm|in\b|inch|\")"
)
_FABRICS = re.compile(
    r"\bst\.?\s*st\b|stocking|stockinette|garter|moss|seed|\brib|patt|lace|cable|chart|waffle|basket|chevron|textur"
    r"|eyelet|slip|linen|brioche|\bknit\b"
)
_NO_FABRIC = frozenset(
    "gauge tension st sts stitch stitches row rows round rounds rnd rnds and to over per sq square a an the in inch "
    "inches ins cm cms mm using with on needle needles size us uk after before blocking blocked washed washing "
    "approximately approx about each measured measures measure by x or swatch correct obtain check your is are of for "
    "when wet dry unblocked steamed steaming this gives give one no larger smaller both".split()
)


@dataclass(frozen=True, slots=True)
class PrintedGauge:
    """One gauge as printed; None for what is not printed. `window_cm` is the length counted over, in centimetres."""

    line: Line
    place: Place
    stitches: Fraction | None
    rows: Fraction | None
    window_cm: Fraction | None
    names_fabric: bool

    @property
    def per_cm(self) -> Fraction | None:
        """Stitches to one centimetre."""
        return self.stitches / self.window_cm if self.stitches and self.window_cm else None


def gauges_of(page: Page) -> tuple[PrintedGauge, ...]:
    """Return the gauges that a page states, under a heading or on a line of their own before the rows."""
    out = []
    for passage in page.passages:
        if passage.topic == "gauge":
            headed = passage.head.text if _FABRICS.search(passage.head.text) else ""
            out += [gauge for said in _statements(passage.stretches) if (gauge := _gauge(said, headed))]
    taken = {stretch.line.number for passage in page.passages for stretch in passage.stretches}
    for line in page.lines:
        may_be = "st" in line.text and line.number not in taken  # Most lines name no stitch, which is quickly told.
        if may_be and _LOOSE.match(line.text) and not begins_rows(line.text):
            out += [gauge for gauge in [_gauge([Stretch(line, 0)], "")] if gauge]
    return tuple(out)


def _statements(stretches: tuple[Stretch, ...]) -> Iterator[list[Stretch]]:
    """Yield the lines that belong together: a new bullet, or another number of stitches, begins a new gauge."""
    run: list[Stretch] = []
    counted = False
    for stretch in stretches:
        counts = bool(_STITCHES.search(stretch.text))
        bullet = re.match(r"\s*[-•*]\s", stretch.text)
        if run and (bullet or (counts and counted and not stretch.text.startswith(" "))):
            yield run
            run, counted = [], False
        run.append(stretch)
        counted = counted or counts
    yield run


def _gauge(stretches: list[Stretch], headed: str) -> PrintedGauge | None:
    """Read one gauge; None where no number of stitches or rows is printed."""
    text = " ".join(stretch.text.strip() for stretch in stretches)
    stitches, rows = _STITCHES.search(text), _ROWS.search(text)
    if not (stitches or rows):
        return None
    first = next(
        (stretch for stretch in stretches if _STITCHES.search(stretch.text) or _ROWS.search(stretch.text)), stretches[0]
    )
    found = _STITCHES.search(first.text) or _ROWS.search(first.text)
    return PrintedGauge(
        first.line,
        first.line.place(first.start + (found.start() if found else 0)),
        value_of(stitches.group(1)) if stitches else None,
        value_of(rows.group(1)) if rows else None,
        _window(text),
        bool(headed) or _names_fabric(text),
    )


def _window(text: str) -> Fraction | None:
    """Return the centimetres that a gauge was counted over; None where no length is printed."""
    length = next(lengths_in(Line(1, text)), None)
    if length is not None:
        return length.centimetres[0]
    return CM_PER_INCH if _PER_INCH.search(text) else None


def _names_fabric(text: str) -> bool:
    """Tell whether a gauge says what was knitted: a known fabric, or any word that says nothing else of a gauge."""
    counted = next((part for part in re.split(r"\.\s|;", text) if _STITCHES.search(part) or _ROWS.search(part)), text)
    words = re.findall(r"[a-z]{3,}", counted)
    return bool(_FABRICS.search(text)) or any(word not in _NO_FABRIC for word in words)
