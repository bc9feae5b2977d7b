"""More rows than can be followed."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.labels import MOST_ROWS_AT_ONCE
from counterpane.craft.rows.listing import MOST_OF_SIZES, MOST_ROWS


@rule(
    "too-many-rows",
    family="reading",
    severity="error",
    bad="Rows 1-2501: Knit.",
    good="Rows 1-2000: Knit.",
)
def too_many_rows(examined: Examined) -> Iterator[Finding]:
    """The text has too many rows or lines.

    Of one line 2,000 rows are read, 2,500 of a text and 6,000 of all its sizes together; of a text 3,000 lines, or one
    for 20 letters where that is more. So any text is answered in bounded time. A blanket for a bed has some 800 rows.
    """
    for fault in examined.instructions.faults:
        if fault.rule == "too-many-rows":
            rows = f"{MOST_ROWS_AT_ONCE:,} of one line, {MOST_ROWS:,} of a text, {MOST_OF_SIZES:,} of all its sizes"
            message = f"Row {fault.word} is beyond the rows that are read: {rows}."
            if not fault.word:
                message = f"From line {fault.place.line} on the text is not read: it has too many lines for its length."
            yield at(fault.place, "too-many-rows", "error", message, "Check the text in parts, or use a repeat line.")
