"""Two lengths in the other order than the style's."""

from __future__ import annotations

import re
from collections.abc import Iterator

from counterpane.craft.checking.printed import Departure, Printed, noted
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.tree import Place

_NUMBER = r"(?<![\d.,])\d++(?:[.,]\d++)?(?:\s?[¼½¾]|\s\d/\d)?"
_PAIR = re.compile(
    rf"(?P<one>{_NUMBER}\s*(?P<unit>cm|in(?:ches|ch|\b\.?)|\"|″))\s*[(\[/]\s*"
    rf"(?P<other>{_NUMBER}\s*(?:cm|in(?:ches|ch|\b\.?)|\"|″))\s*[)\]]?"
)


@rule(
    "style-units",
    family="style",
    severity="note",
    bad="Gauge: 22 sts and 30 rows to 4 in (10 cm) in garter stitch.\nCast on 4 sts.\nRow 1: Knit.",
    good="Gauge: 22 sts and 30 rows to 10 cm (4 in) in garter stitch.\nCast on 4 sts.\nRow 1: Knit.",
    source="house",
)
def style_units(text: Printed) -> Iterator[Finding]:
    """Centimetres and inches stand in the other order than in the house style.

    Whoever measures in one unit reads the first number all through the pattern, or the second, but not either by turns.
    Lengths in one unit alone are not looked at.
    """
    if text.style.units is None:
        return
    centimetres = text.style.units.startswith("20 cm")
    found = (
        Departure(Place(number, match.start() + 1), match.group(), f"{match['other']} ({match['one']})")
        for number, line in enumerate(text.lines, 1)
        for match in _PAIR.finditer(line)
        if (match["unit"] == "cm") is not centimetres and ("cm" in match["other"]) is centimetres
    )
    yield from noted(text, "style-units", "A length is printed", found)
