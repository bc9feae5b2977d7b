"""More rows than can be followed."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.labels import MOST_ROWS_AT_ONCE
from counterpane.craft.rows.listing import MOST_ROWS


@rule(
    "too-many-rows",
    family="reading",
    severity="error",
    bad="Rows 1-20001: Knit.",
    good="Rows 1-2000: Knit.",
)
def too_many_rows(examined: Examined) -> Iterator[Finding]:
    """The text has too many rows.

    Beyond 5,000 rows of a text, and 2,000 of one line, none is read, so that any text is answered in bounded time. A
    blanket for a bed has some 800.
    """
    for fault in examined.instructions.faults:
        if fault.rule == "too-many-rows":
            message = (
                f"Row {fault.word} is beyond the rows that are read, "
                f"{MOST_ROWS:,} of a text and {MOST_ROWS_AT_ONCE:,} of one line."
            )
            yield at(fault.place, "too-many-rows", "error", message, "Check the text in parts, or use a repeat line.")
