"""A slipped edge stitch that is not fully described."""

from __future__ import annotations

import re
from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at, row_name
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.tree import Node, Row, Work

_SAID = re.compile(
    r"\bsl(?:ip)?\b[^.]{0,80}\b(?:purlwise|knitwise|pwise|kwise|as if to)\b|\b(?:purlwise|pwise|knitwise"
    r"|kwise)\b[^.]{0,80}\bslip"
)


@rule(
    "slip-manner-missing",
    family="wording",
    severity="note",
    bad=(
        "Gauge: 20 sts and 40 rows = 10 cm in garter stitch.\nNeedles: 4 mm.\nCast on 4 sts.\n"
        "Row 1 (RS): Sl 1, k3.\nBind off."
    ),
    good=(
        "Gauge: 20 sts and 40 rows = 10 cm in garter stitch.\nNeedles: 4 mm.\nCast on 4 sts.\n"
        "Row 1 (RS): Sl 1 kwise, k3.\nBind off."
    ),
)
def slip_manner_missing(examined: Examined) -> Iterator[Finding]:
    """A slipped edge stitch does not say how it is slipped.

    Purlwise or knitwise, with the yarn in front or at the back: each gives another edge, and a seam or a picked-up
    border shows it. It is asked once, of a whole pattern that says it nowhere.
    """
    if not examined.instructions.page.furnished or _SAID.search(examined.text.lower()):
        return
    row = next((row for row in examined.rows if _slips_edge(row)), None)
    if row is not None:
        message = f"{row_name(row)} slips its first stitch and does not say whether purlwise or knitwise."
        hint = "Say it once in a note, with where the yarn is: “slip purlwise with yarn in front”."
        yield at(row.start, "slip-manner-missing", "note", message, hint)


def _slips_edge(row: Row) -> bool:
    """Tell whether a row begins with a bare slipped stitch that no later stitch is passed over by."""
    first = row.parts[0] if row.parts else None
    passed = any(isinstance(node, Work) and node.stitch in ("psso", "p2sso", "pass over") for node in row.parts[1:4])
    return _is_bare_slip(first) and not passed


def _is_bare_slip(node: Node | None) -> bool:
    return isinstance(node, Work) and node.stitch == "sl" and node.times == 1 and not node.manner
