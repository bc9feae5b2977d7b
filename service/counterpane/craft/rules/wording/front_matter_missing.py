"""A pattern without one of the things that every pattern states first."""

from __future__ import annotations

import re
from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.lengths import lengths_in

FEWEST_TOPICS = 3  # Passages before the rows that make a text a whole pattern; house.
_NEEDLES = re.compile(r"\bneedles?\b|\bmm\b")
_YARN = re.compile(r"\byarns?\b|\bwool\b|\bcotton\b|\bacrylic\b|\bdk\b|\bply\b|\bworsted\b|\baran\b")


@rule(
    "front-matter-missing",
    family="wording",
    severity="note",
    bad=(
        "Size: 60 x 80 cm.\nMaterials: 300 g wool, 4 mm needles.\nAbbreviations: k = knit; RS = right side.\n\n"
        "Cast on 120 sts.\nRow 1 (RS): K120.\nBind off."
    ),
    good=(
        "Size: 60 x 80 cm.\nMaterials: 300 g wool, 4 mm needles.\nAbbreviations: k = knit; RS = right side.\n"
        "Gauge: 20 sts and 40 rows = 10 cm in garter st.\n\nCast on 120 sts.\nRow 1 (RS): K120.\nBind off."
    ),
    source="finished size, yarn, needles and gauge are in four published checklists of what a pattern holds",
)
def front_matter_missing(examined: Examined) -> Iterator[Finding]:
    """A pattern leaves out its size, yarn, needles or gauge.

    It is asked only of a text that states at least three of the usual things, and said once with all that is missing.
    """
    page = examined.instructions.page
    topics = {passage.topic for passage in page.passages} - {"notes", "finishing"}
    if len(topics) < FEWEST_TOPICS or examined.instructions.cast_on is None:
        return
    text = examined.text.lower()
    sizes = any(any(lengths_in(stretch.line, stretch.start)) for stretch in page.under("size"))
    held = {
        "the finished size": sizes or "size" in topics,
        "the yarn": bool(_YARN.search(text)),
        "the needles": bool(_NEEDLES.search(text)),
        "the gauge": bool(examined.gauges) or "gauge" in topics,
    }
    missing = [name for name, there in held.items() if not there]
    if missing:
        message = f"The pattern does not state {' and '.join(missing)}."
        yield at(page.passages[0].head.place(0), "front-matter-missing", "note", message, "Add it before the cast-on.")
