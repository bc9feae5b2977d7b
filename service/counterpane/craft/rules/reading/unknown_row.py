"""A row named that is not there."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined, said
from counterpane.craft.checking.wording import at
from counterpane.craft.findings import Finding, rule


@rule(
    "unknown-row",
    family="reading",
    severity="error",
    bad="Row 1: Knit.\nRow 2: Purl.\nRep rows 1-3.",
    good="Row 1: Knit.\nRow 2: Purl.\nRep rows 1-2.",
)
def unknown_row(examined: Examined) -> Iterator[Finding]:
    """A row is named that the text does not have.

    A repeat line or "as row 1" borrows rows by their number; a number that is not there was probably misprinted.
    """
    for fault in examined.instructions.faults:
        if fault.rule == "unknown-row":
            message = f"Row {fault.word} is named here, but no row before this has that number."
            hint, fixes = "Name rows that stand above this line.", said(examined, fault.place.line, "named")
            yield at(fault.place, "unknown-row", "error", message, hint, corrections=fixes)
