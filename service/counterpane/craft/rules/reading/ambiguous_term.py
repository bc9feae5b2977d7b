"""A term with two meanings in the trade."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.clearer import without_doubt
from counterpane.craft.checking.doubts import vague
from counterpane.craft.checking.wording import at, quoted
from counterpane.craft.findings import Finding, Severity, rule


@rule(
    "ambiguous-term",
    family="reading",
    severity="warning",
    bad="Row 1: *K1, p1; rep from * 4 times, k to end.",
    good="Row 1: *K1, p1; rep from * 4 times more, k to end.",
)
def ambiguous_term(examined: Examined) -> Iterator[Finding]:
    """A term has two meanings in the trade.

    "Rep from * 4 times" is four times in all to some and five to others; "inc" may be any increase. Where the
    readings use different numbers of stitches and nothing printed decides, the row cannot be counted.
    """
    unsettled = {place for row in examined.rows if not row.readable for place in vague(row, examined.vocabulary)}
    for fault in examined.instructions.faults:
        if fault.rule != "ambiguous-term":
            continue
        readings = " or ".join(fault.readings)
        message = f"{quoted(fault.word)} can mean {readings}."
        hint = "Write the stitch that is meant." if fault.word != "times" else "Write “times more” or “times in all”."
        severity: Severity = "error" if fault.place in unsettled else "warning"
        yield at(fault.place, "ambiguous-term", severity, message, hint, corrections=without_doubt(examined, fault))
