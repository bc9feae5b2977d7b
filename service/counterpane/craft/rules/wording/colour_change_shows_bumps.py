"""A first row of a colour that shows purl bumps on the right side."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at
from counterpane.craft.component.derived import sides_of
from counterpane.craft.fabric.faces import shows_purl
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.quick import word_of
from counterpane.craft.rows.tree import Row

_NAMED = re.compile(
    word_of(*(name for word in ("with", "in", "using", "to", "join(?:ing)?") for name in (word, word.capitalize())))
    + r" (?:yarn |colou?r )?([A-F]|MC|CC\d?)\b"
)


@rule(
    "colour-change-shows-bumps",
    family="wording",
    severity="note",
    bad="Row 1 (RS): With A, knit.\nRow 2: With A, purl.\nRow 3: With B, *k1, p1; rep from * to end.",
    good="Row 1 (RS): With A, knit.\nRow 2: With A, purl.\nRow 3: With B, knit.",
)
def colour_change_shows_bumps(examined: Examined) -> Iterator[Finding]:
    """A colour that begins with purl bumps.

    A purl face draws the loop of the row below to the front, so that the first row of a colour shows bumps of the old
    one and the line between them is broken. A plain row, knit on the right side or purled on the wrong one, keeps it
    straight.
    """
    rows = examined.rows
    colours = list(_colours(rows))
    if not any(colours):
        return
    told = zip(rows, sides_of(rows), colours, strict=True)
    for (before, _, old), (row, side, new) in pairwise(told):
        if row.section != before.section or old is None or new is None or old == new:
            continue
        if shows_purl(row.parts, side, examined.vocabulary):
            message = f"Row {row.label} is the first in {new} and shows purl faces on the right side."
            plain = "purled on the WS" if side == "WS" else "knit on the RS"
            hint = f"Work it plain, {plain}, unless a broken line is meant."
            yield at(row.place, "colour-change-shows-bumps", "note", message, hint)


def _colours(rows: tuple[Row, ...]) -> Iterator[str | None]:
    """Give the one colour of each row, which goes on until another is named; None for several, or none so far."""
    colour: str | None = None
    for row in rows:
        named = set(_NAMED.findall(row.text))
        if named:
            colour = named.pop() if len(named) == 1 else None
        yield colour
