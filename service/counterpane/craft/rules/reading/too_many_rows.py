"""More rows than can be followed."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at
from counterpane.craft.findings import Finding, rule


@rule(
    "too-many-rows",
    family="reading",
    severity="error",
    bad="Rows 1-20001: Knit.",
    good="Rows 1-2000: Knit.",
)
def too_many_rows(examined: Examined) -> Iterator[Finding]:
    """The text has too many rows.

    Rows beyond twenty thousand are not read, so that any text is answered in bounded time.
    """
    for fault in examined.instructions.faults:
        if fault.rule == "too-many-rows":
            message = f"Row {fault.word} is beyond the twenty thousand rows that are read."
            yield at(fault.place, "too-many-rows", "error", message, "Check the text in parts, or use a repeat line.")
