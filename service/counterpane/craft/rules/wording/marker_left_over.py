"""A marker that is placed and never used."""

from __future__ import annotations

import re
from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at
from counterpane.craft.counts.wellformed import within
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.tree import Marker, OpenRepeat

_USED = re.compile(
    r"\b(?:slm?|sm|rm|slip|remov\w*|to|before|after|between|past|each)\s*(?:the\s+|each\s+"
    r"|all\s+)?(?:markers?|m)\b|\b(?:sm|rm|slm)\b"
)


@rule(
    "marker-left-over",
    family="wording",
    severity="warning",
    bad="Cast on 8 sts.\nRow 1: K4, pm, k4.\nRow 2: Purl.",
    good="Cast on 8 sts.\nRow 1: K4, pm, k4.\nRow 2: P4, sm, p4.",
)
def marker_left_over(examined: Examined) -> Iterator[Finding]:
    """A marker is placed and never spoken of again.

    Either the rows that use it lost their words, or the knitter carries it for nothing and it stays in the piece.
    """
    placed = None
    rows = {id(row.parts): row for row in examined.rows}  # Rows of one line have the same stitches.
    for node in within([node for row in rows.values() for node in row.parts]):
        if isinstance(node, Marker) and node.act == "place":
            placed = min(placed or node, node, key=lambda marker: marker.place)
        elif isinstance(node, Marker) or (isinstance(node, OpenRepeat) and node.marker):
            return
    if placed is None:
        return
    beside = [
        line.text
        for line in examined.instructions.page.lines
        if line.number not in examined.instructions.page.glossary.lines
    ]
    if not any(_USED.search(text) for text in beside):
        message = "This marker is placed and no later row slips it, works to it or removes it."
        hint = "Say what it is for (“to marker”, “sm”) and where it goes, or leave it out."
        yield at(placed.place, "marker-left-over", "warning", message, hint)
