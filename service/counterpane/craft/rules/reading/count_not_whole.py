"""A cast-on whose count is no whole number."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at, quoted
from counterpane.craft.findings import Finding, rule


@rule(
    "count-not-whole",
    family="reading",
    severity="error",
    bad="Cast on 20.5 sts.\nRow 1: *K1, p1; rep from * to end.",
    good="Cast on 20 sts.\nRow 1: *K1, p1; rep from * to end.",
)
def count_not_whole(examined: Examined) -> Iterator[Finding]:
    """A cast-on is of a part of a stitch, or of fewer than none.

    Stitches are whole. A point, a fraction or a minus is mostly left of a sum worked out from the gauge; the rows are
    then followed from the least count that they work over.
    """
    for fault in examined.instructions.faults:
        if fault.rule == "count-not-whole":
            message = f"{quoted(fault.word)} is no number of stitches that can be cast on."
            yield at(fault.place, "count-not-whole", "error", message, "Write a whole number, without a sign.")
