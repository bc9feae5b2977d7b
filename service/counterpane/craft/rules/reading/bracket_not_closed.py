"""A bracket without its partner."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined, said
from counterpane.craft.checking.wording import at, quoted
from counterpane.craft.findings import Finding, rule


@rule(
    "bracket-not-closed",
    family="reading",
    severity="error",
    bad="Row 1: (K1, p1) 3 times, (k2.",
    good="Row 1: (K1, p1) 3 times, k2.",
)
def bracket_not_closed(examined: Examined) -> Iterator[Finding]:
    """A bracket has no partner.

    What stands in brackets is worked as a whole; without the other bracket nobody can tell where it ends.
    """
    for fault in examined.instructions.faults:
        if fault.rule == "bracket-not-closed":
            fate = "was never opened" if fault.extra == "close" else "is never closed"
            message = f"The bracket {quoted(fault.word)} {fate}."
            hint = "Add the missing bracket, or leave this one out."
            fixes = said(examined, fault.place.line, "row")
            yield at(fault.place, "bracket-not-closed", "error", message, hint, corrections=fixes)
