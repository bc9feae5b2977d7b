"""A call to repeat from a star that is not there."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined, said
from counterpane.craft.checking.wording import at, quoted
from counterpane.craft.findings import Finding, rule


@rule(
    "repeat-without-start",
    family="reading",
    severity="error",
    bad="Row 1: K2, p2; rep from * to end.",
    good="Row 1: *K2, p2; rep from * to end.",
)
def repeat_without_start(examined: Examined) -> Iterator[Finding]:
    """A repeat has no beginning.

    A repeat runs from its star to the words that call it; without the star its stitches are unknown.
    """
    for fault in examined.instructions.faults:
        if fault.rule == "repeat-without-start":
            message = (
                f"This repeats from {quoted(fault.word)}, but no {quoted(fault.word)} stands before it in the row."
            )
            hint = "Put the star before the first stitch of the repeat."
            fixes = said(examined, fault.place.line, "row")
            yield at(fault.place, "repeat-without-start", "error", message, hint, corrections=fixes)
