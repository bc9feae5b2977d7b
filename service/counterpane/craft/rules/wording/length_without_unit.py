"""A length to work to without its unit."""

from __future__ import annotations

import re
from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at, quoted
from counterpane.craft.findings import Finding, rule

_LENGTH = re.compile(
    r"\b(?:measures?|measuring|is|for)\s+(?:about\s+|approx\w*\.?\s+)?(?P<number>\d+(?:\.\d+)?(?:\s+\d/\d)?)"
    r"(?=\s*(?:from\b|long\b|wide\b|square\b|in length|[.,;)]\s|[.,;)]?$))"
)
_MEASURES = re.compile(r"\bmeasur|\blong\b")


@rule(
    "length-without-unit",
    family="wording",
    severity="warning",
    bad="Cast on 4 sts.\nRow 1: Knit.\nRep row 1 until piece measures 60.",
    good="Cast on 4 sts.\nRow 1: Knit.\nRep row 1 until piece measures 60 cm.",
)
def length_without_unit(examined: Examined) -> Iterator[Finding]:
    """A length has no unit.

    60 may be centimetres and cannot be inches for a cot; 30 may be either.
    """
    if "measur" not in examined.text.lower():
        return
    for line in examined.instructions.page.lines:
        match = _LENGTH.search(line.text) if _MEASURES.search(line.text) else None
        if match:
            message = f"The length {quoted(match['number'])} has no unit."
            yield at(
                line.place(match.start("number")), "length-without-unit", "warning", message, "Add cm, in, or both."
            )
