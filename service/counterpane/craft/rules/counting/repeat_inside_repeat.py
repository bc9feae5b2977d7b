"""An open repeat inside another."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined, said
from counterpane.craft.checking.wording import at, row_name
from counterpane.craft.findings import Finding, rule


@rule(
    "repeat-inside-repeat",
    family="counting",
    severity="error",
    bad="Row 1: [K to last 3 sts] 2 times, k3.",
    good="Row 1: [K2, p2] 2 times, k3.",
)
def repeat_inside_repeat(examined: Examined) -> Iterator[Finding]:
    """A repeat to the end stands inside another repeat.

    The inner repeat uses up the row at its first working, so the outer one can never be worked again.
    """
    for row, misfit in examined.malformed:
        if misfit.slug == "repeat-inside-repeat":
            message = f"{row_name(row)} has a repeat “to end” inside another; its first working would use up the row."
            hint = "Give the inner repeat a number of times."
            fixes = said(examined, row.place.line)
            yield at(misfit.place, "repeat-inside-repeat", "error", message, hint, corrections=fixes)
