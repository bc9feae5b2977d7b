"""A colour letter that nothing explains."""

from __future__ import annotations

import re
from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.runs import given_line, lines_beside, lines_of_rows
from counterpane.craft.checking.wording import at, quoted
from counterpane.craft.findings import Finding, rule

_COLOUR = re.compile(
    r"\b(?:[Ii]n|[Ww]ith|[Uu]sing|[Jj]oin(?:\s+in)?|[Cc]hange\s+to)\s+(MC|CC\d?|[A-F]|C\d)\b(?!\s+[a-z]{2}\w*\s+(?:needle"
    r"|yarn))"
)

_KEY = re.compile(r"(?:^|[,;:]\s*)(?:MC|CC\d?|[A-F])\s*=\s*\w|\b[Cc]olou?rs?\s+A\b")


@rule(
    "colour-not-explained",
    family="wording",
    severity="warning",
    bad=(
        "Materials: 200 g wool in white (A) and 100 g in blue.\n\nCast on 4 sts.\nRow 1: With A, k4.\n"
        "Row 2: With B, p4."
    ),
    good=(
        "Materials: 200 g wool in white (A) and 100 g in blue (B).\n\nCast on 4 sts.\nRow 1: With A, k4.\n"
        "Row 2: With B, p4."
    ),
)
def colour_not_explained(examined: Examined) -> Iterator[Finding]:
    """A colour letter is used in a row and stands nowhere in the materials.

    It is asked only of a text that lists its materials or says which letter is which colour.
    """
    page = examined.instructions.page
    beside = [given_line(examined, line.number) for line in lines_beside(examined)]
    beside += [given_line(examined, number) for number in sorted(page.glossary.lines)]
    if not page.under("materials") and not any(_names_colours(text) for text in beside):
        return
    seen: set[str] = set()
    for line in lines_of_rows(examined):
        for match in _COLOUR.finditer(given_line(examined, line.number)):
            name = match.group(1)
            if name in seen or any(re.search(rf"\b{name}\b", text) for text in beside):
                continue
            seen.add(name)
            message = f"The colour {quoted(name)} is not named in the materials."
            hint = f"Write ({name}) behind its yarn in the materials."
            yield at(line.place(match.start(1)), "colour-not-explained", "warning", message, hint)


def _names_colours(text: str) -> bool:
    """Tell whether a line says which letter is which colour; most hold neither sign nor word, which is quickly told."""
    return ("=" in text or "olo" in text) and bool(_KEY.search(text))
