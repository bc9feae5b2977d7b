"""A term with two meanings in the trade."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.clearer import without_doubt
from counterpane.craft.checking.doubts import vague
from counterpane.craft.checking.wording import at, quoted
from counterpane.craft.findings import Finding, Severity, rule

MOST_IN_LINE = 5
"""Doubts of a line beyond which none of them is settled: a row with others left is not clear; house figure."""

MOST_SETTLED = 40
"""Doubts of a text that are tried to be settled; house figure that bounds time."""


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
    faults = [fault for fault in examined.instructions.faults if fault.rule == "ambiguous-term"]
    in_line = Counter(fault.place.line for fault in faults)
    alone = {fault.place for fault in faults if in_line[fault.place.line] <= MOST_IN_LINE}
    settled = set(sorted(alone)[:MOST_SETTLED])
    for fault in faults:
        readings = " or ".join(fault.readings)
        message = f"{quoted(fault.word)} can mean {readings}."
        hint = "Write the stitch that is meant." if fault.word != "times" else "Write “times more” or “times in all”."
        severity: Severity = "error" if fault.place in unsettled else "warning"
        clearer = without_doubt(examined, fault) if fault.place in settled else ()
        yield at(fault.place, "ambiguous-term", severity, message, hint, corrections=clearer)
