"""A star without "rep from *"."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined, said
from counterpane.craft.checking.wording import at, quoted
from counterpane.craft.findings import Finding, rule


@rule(
    "repeat-without-end",
    family="reading",
    severity="error",
    bad="Row 1: K2, *p2, k2.",
    good="Row 1: K2, *p2, k2; rep from * to end.",
)
def repeat_without_end(examined: Examined) -> Iterator[Finding]:
    """A repeat has no end.

    A star says that something will be repeated; the row must also say how far.
    """
    for fault in examined.instructions.faults:
        if fault.rule == "repeat-without-end":
            message = f"The {quoted(fault.word)} begins a repeat, but nothing in the row repeats from it."
            hint = "Add “rep from *” and how far it goes, or leave the star out."
            fixes = said(examined, fault.place.line, "row")
            yield at(fault.place, "repeat-without-end", "error", message, hint, corrections=fixes)
