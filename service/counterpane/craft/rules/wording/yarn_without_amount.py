"""Yarn named without how much of it."""

from __future__ import annotations

import re
from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at
from counterpane.craft.findings import Finding, rule

_YARN = re.compile(
    r"\b(?:yarns?|wool|cotton|acrylic|merino|alpaca|dk|double knitting|worsted|aran|fingering|sport|chunky"
    r"|bulky|4[- ]?ply)\b"
)
_AMOUNT = re.compile(
    r"(?:\d(?:\s?[(\[][\d\s,.:/-]{1,60}[)\]])?|\bone|\btwo|\bthree|\bfour|\bfive|\bsix|\bseven|\beight|\bnine|\bten)\s*(?:x\s*\d+\s*)?"
    r"(?:\w{1,20}[- ]){0,3}?(?:g|gms?|grams?|oz|ounces?|m|metres?|meters?|yds?|yards?|balls?|skeins?|hanks?|cones?)\b"
    r"|\bhow much\b|\bamount\b|\boddments\b|\bscraps\b"
)


@rule(
    "yarn-without-amount",
    family="wording",
    severity="note",
    bad="Yarn: double knitting wool.\nNeedles: 4 mm.\nCast on 4 sts.\nRow 1: Knit.",
    good="Yarn: 400 g double knitting wool.\nNeedles: 4 mm.\nCast on 4 sts.\nRow 1: Knit.",
    source="yarn with its mass, length and number of balls is in four published checklists of what a pattern holds",
)
def yarn_without_amount(examined: Examined) -> Iterator[Finding]:
    """A yarn is named without how much of it.

    The knitter buys too little, and the next ball is of another dye lot.
    """
    named = None
    page = examined.instructions.page
    heads = [passage.head for passage in page.passages if passage.topic == "materials"]
    lines = {line.number: line for line in (*heads, *(stretch.line for stretch in page.under("materials")))}
    for _, line in sorted(lines.items()):
        if _AMOUNT.search(line.text):
            return
        if (
            named is None
            and _YARN.search(line.text)
            and any(line is stretch.line for stretch in page.under("materials"))
        ):
            named = line
    if named is not None:
        message = "The yarn is named without how much of it is needed."
        start = len(named.text) - len(named.text.lstrip())
        yield at(
            named.place(start),
            "yarn-without-amount",
            "note",
            message,
            "Print grams, and metres or yards, for each colour.",
        )
