"""A flat piece whose rows never say which side they are."""

from __future__ import annotations

import re
from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.runs import given_line
from counterpane.craft.checking.wording import at
from counterpane.craft.findings import Finding, rule

_SAYS_SIDE = re.compile(r"\b(?:rs|ws|right[- ]side|wrong[- ]side|both sides|reversible|rounds?|rnds?)\b")
_NUMBERED = re.compile(r"\s*(?:row\s*\d+|\d+(?:st|nd|rd|th)\s+row)(?=\s*[:.])", re.IGNORECASE)


@rule(
    "sides-not-stated",
    family="wording",
    severity="note",
    bad=(
        "Gauge: 22 sts and 30 rows = 10 cm in pattern.\nNeedles: 4 mm.\nCast on 8 sts.\n"
        "Row 1: *K2, p2; rep from * to end.\nRow 2: Purl.\nBind off."
    ),
    good=(
        "Gauge: 22 sts and 30 rows = 10 cm in pattern.\nNeedles: 4 mm.\nCast on 8 sts.\n"
        "Row 1 (RS): *K2, p2; rep from * to end.\nRow 2: Purl.\nBind off."
    ),
)
def sides_not_stated(examined: Examined) -> Iterator[Finding]:
    """No row says which side it is.

    After some cast-ons row 1 is a right-side row and after others it is not, so the knitter cannot tell which face is
    the right one, and “ending with a WS row” means nothing. It is asked only of a whole pattern with unlike rows.
    """
    page = examined.instructions.page
    rows = examined.rows
    if not page.furnished or examined.instructions.cast_on is None or len({row.parts for row in rows}) < 2:
        return
    if any(row.side is not None for row in rows) or _SAYS_SIDE.search(examined.text.lower()):
        return
    line = given_line(examined, rows[0].place.line)
    label = _NUMBERED.match(line)
    corrections = (f"{line[: label.end()]} (RS){line[label.end() :]}",) if label else ()
    hint = "Say it once, as in “Row 1 (RS):”; the other rows follow from it."
    message = "No row says whether it is a right-side or a wrong-side row."
    yield at(rows[0].place, "sides-not-stated", "note", message, hint, corrections=corrections)
