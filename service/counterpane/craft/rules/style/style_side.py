"""A side named in another form than the style's."""

from __future__ import annotations

import re
from collections.abc import Iterator

from counterpane.craft.checking.printed import Departure, Printed, noted
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.tree import Place

_SIDE = re.compile(
    r"[(\[]\s*(?P<side>RS|WS|R\.S\.|W\.S\.|right[- ]side|wrong[- ]side)(?:\s+(?:row|facing))?\s*[)\]]", re.IGNORECASE
)
_FORMS = {"(RS)": ("(RS)", "(WS)"), "[RS]": ("[RS]", "[WS]"), "(right side)": ("(right side)", "(wrong side)")}


@rule(
    "style-side",
    family="style",
    severity="note",
    bad="Cast on 4 sts.\nRow 1 (right side): Knit.\nRow 2 (wrong side): Purl.",
    good="Cast on 4 sts.\nRow 1 (RS): Knit.\nRow 2 (WS): Purl.",
    source="house",
)
def style_side(text: Printed) -> Iterator[Finding]:
    """A side is named in another form than the house style.

    Right and wrong side are named on every other row; one form for both is read without being read.
    """
    if text.style.side is None:
        return
    forms = _FORMS[text.style.side]
    found = (
        Departure(Place(number, match.start() + 1), match.group(), forms[match["side"][:1].lower() == "w"])
        for number, line in text.row_lines()
        for match in _SIDE.finditer(line)
    )
    yield from noted(text, "style-side", "A side is named", (each for each in found if each.words != each.wanted))
