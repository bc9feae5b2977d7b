"""A label that names no row."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at, quoted
from counterpane.craft.findings import Finding, rule


@rule(
    "label-not-known",
    family="reading",
    severity="warning",
    bad="Cast on 6 sts.\nRow 1: K2, yo, k4.\nRidge 2: K2, yo, k5.",
    good="Cast on 6 sts.\nRow 1: K2, yo, k4.\nRow 2: K2, yo, k5.",
)
def label_not_known(examined: Examined) -> Iterator[Finding]:
    """Stitches stand behind a label that names no row.

    A word with a number before stitches looks like the label of a row. What stands behind it is not followed, so that
    no count below it can be relied on.
    """
    for fault in examined.instructions.faults:
        if fault.rule == "label-not-known":
            message = f"{quoted(fault.word)} names no row, and the stitches behind it are not followed."
            hint = "Begin the line with “Row” and its number, or say in a sentence what it is."
            yield at(fault.place, "label-not-known", "warning", message, hint)
