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
    bad="Rows 1-2000: Knit.\nRows 2001-4000: Knit.\nRows 4001-6000: Knit.\nRows 6001-8000: Knit.\nRows 8001-10000: Knit.\nRows 10001-12000: Knit.\nRows 12001-14000: Knit.\nRows 14001-16000: Knit.\nRows 16001-18000: Knit.\nRows 18001-20000: Knit.\nRows 20001-22000: Knit.",
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
