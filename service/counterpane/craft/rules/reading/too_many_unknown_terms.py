"""A row of which so little can be read that its end is left unread."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at, quoted
from counterpane.craft.findings import Finding, rule


@rule(
    "too-many-unknown-terms",
    family="reading",
    severity="error",
    bad="Row 1: K1" + ", zork, k1" * 40 + ".",
    good="Row 1: [K1, yo] 40 times, k1.",
)
def too_many_unknown_terms(examined: Examined) -> Iterator[Finding]:
    """More of a row means nothing than anybody would put right word by word.

    Thirty places that cannot be read are told one by one; the row is then probably no row at all, or in words of
    another trade, and reading ends. The other rows are read as ever.
    """
    for fault in examined.instructions.faults:
        if fault.rule == "too-many-unknown-terms":
            message = f"Thirty places before this one cannot be read, and the row from {quoted(fault.word)} on was not."
            hint = "Write the row anew, in the usual abbreviations, or take it out if it is none."
            yield at(fault.place, "too-many-unknown-terms", "error", message, hint)
