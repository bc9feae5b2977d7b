"""A row of more words than anybody works."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at
from counterpane.craft.findings import Finding, rule


@rule(
    "row-too-long",
    family="reading",
    severity="error",
    bad="Row 1: " + "K1, p1, " * 1000 + "k1.",
    good="Row 1: *K1, p1; rep from * to last st, k1.",
)
def row_too_long(examined: Examined) -> Iterator[Finding]:
    """A row has more words than are read.

    Eight thousand characters are some five printed pages, which no knitter works as one row: a pattern was pasted
    without its row labels, or a repeat was written out. Reading ends there, so that any text is answered in bounded
    time; the other rows are read as ever.
    """
    for fault in examined.instructions.faults:
        if fault.rule == "row-too-long":
            message = f"Row {fault.word} has more than the 8,000 characters that are read of a row."
            hint = "Give each row its label, or write what comes again as a repeat: “*k1, p1; rep from * to end”."
            yield at(fault.place, "row-too-long", "error", message, hint)
