"""A pattern that never comes off the needle."""

from __future__ import annotations

import re
from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at
from counterpane.craft.findings import Finding, rule

_OFF = re.compile(
    r"\b(?:bind(?:ing)?|bound|cast(?:ing)?)[- ](?:\w+\s+){0,4}?off\b|\bbo\b|\bfasten\w* off\b|\bgraft"
    r"|\blive stitches|\bon(?:to)? (?:a )?(?:holder|waste)|\bfinish off\b"
)


@rule(
    "bind-off-missing",
    family="wording",
    severity="note",
    bad="Gauge: 20 sts and 40 rows = 10 cm in garter stitch.\nNeedles: 4 mm.\nCast on 4 sts.\nRow 1 (RS): Knit.",
    good=(
        "Gauge: 20 sts and 40 rows = 10 cm in garter stitch.\nNeedles: 4 mm.\nCast on 4 sts.\n"
        "Row 1 (RS): Knit.\nBind off."
    ),
)
def bind_off_missing(examined: Examined) -> Iterator[Finding]:
    """A pattern casts on and never binds off.

    Its end may have been cut off in copying. It is asked only of a whole pattern.
    """
    instructions = examined.instructions
    if not instructions.page.furnished or instructions.cast_on is None or not examined.rows:
        return
    if _OFF.search(examined.text.lower()):
        return
    last = examined.rows[-1]
    word = "cast off" if instructions.terms == "uk" else "bind off"
    message = "The text casts on and never says how the stitches come off the needle."
    yield at(last.place, "bind-off-missing", "note", message, f"Add how to {word}, and on which side.")
