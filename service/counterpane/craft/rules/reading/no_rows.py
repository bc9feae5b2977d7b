"""A text without a row."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.findings import Finding, rule


@rule(
    "no-rows",
    family="reading",
    severity="error",
    bad="Cast on 20 sts.",
    good="Cast on 20 sts.\nRow 1: Knit.",
)
def no_rows(examined: Examined) -> Iterator[Finding]:
    """The text has no row.

    There is nothing to count. A row begins with its label: “Row 1:”, “2nd row:”, “Next row:”.
    """
    if not examined.instructions.rows:
        hint = "Write each row on a line of its own with a label, as in “Row 1 (RS): K2, *p2, k2; rep from * to end.”"
        yield Finding("no-rows", "error", "No row was found in the text.", hint, 1, 1)
