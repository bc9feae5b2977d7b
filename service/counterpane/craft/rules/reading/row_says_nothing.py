"""A label without stitches."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at
from counterpane.craft.findings import Finding, rule


@rule(
    "row-says-nothing",
    family="reading",
    severity="error",
    bad="Row 1: Knit.\nRow 2:",
    good="Row 1: Knit.\nRow 2: Purl.",
)
def row_says_nothing(examined: Examined) -> Iterator[Finding]:
    """A row says nothing.

    A label with no stitches behind it is probably a line that was lost in copying.
    """
    for fault in examined.instructions.faults:
        if fault.rule == "row-says-nothing":
            message = f"Row {fault.word} has a label but no stitches."
            yield at(
                fault.place, "row-says-nothing", "error", message, "Write the stitches of the row behind its label."
            )
