"""A cast-on of no stitches, or an order for no rows."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at, quoted
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.instructions import StartStep


@rule(
    "asks-for-nothing",
    family="reading",
    severity="error",
    bad="Cast on 20 sts.\nKnit 0 rows.\nRow 1: Knit.",
    good="Cast on 20 sts.\nKnit 10 rows.\nRow 1: Knit.",
)
def asks_for_nothing(examined: Examined) -> Iterator[Finding]:
    """A cast-on is of no stitches, or an order of no rows.

    Nothing can be knitted of it, so a digit was probably lost. A pattern in sizes may say 0 or – for a size in which
    something is not worked: that is left out of the size, and no finding.
    """
    for fault in examined.instructions.faults:
        if fault.rule == "asks-for-nothing":
            message = f"{quoted(fault.word)} asks for no rows."
            yield at(fault.place, "asks-for-nothing", "error", message, "Write how many rows it is, or leave it out.")
    first = None if examined.given is not None or examined.walk.jams else examined.instructions.cast_on
    later = [step.cast_on for step in examined.instructions.steps if isinstance(step, StartStep) and step.known]
    for cast_on in ([first] if first else []) + later:
        if cast_on.count == 0:
            hint = "Write how many stitches it is."
            yield at(cast_on.place, "asks-for-nothing", "error", "Nothing is cast on here.", hint)
