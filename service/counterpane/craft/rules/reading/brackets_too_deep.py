"""Brackets within brackets beyond what anybody can follow."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at, quoted
from counterpane.craft.findings import Finding, rule


@rule(
    "brackets-too-deep",
    family="reading",
    severity="error",
    bad="Row 1: " + "[" * 60 + "k1" + "] twice" * 60 + ".",
    good="Row 1: [[K1, p1] twice, k1] twice.",
)
def brackets_too_deep(examined: Examined) -> Iterator[Finding]:
    """Brackets stand too deep within each other.

    A row with dozens of brackets inside each other cannot be knitted from; reading stops at forty.
    """
    for fault in examined.instructions.faults:
        if fault.rule == "brackets-too-deep":
            message = f"More than forty brackets or repeats stand within each other at {quoted(fault.word)}."
            yield at(
                fault.place,
                "brackets-too-deep",
                "error",
                message,
                "Write the inner repeats out, or as rows of their own.",
            )
