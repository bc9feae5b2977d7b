"""A printed gauge counted over less than a usual swatch."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at
from counterpane.craft.findings import Finding, rule
from counterpane.craft.measures import shown

USUAL_WINDOW_CM = Fraction(10)  # Common practice, no source; the Craft Yarn Council has 4 inches.


@rule(
    "gauge-over-little",
    family="wording",
    severity="note",
    bad="Gauge: 5 sts and 10 rows = 1 in in garter stitch.\nCast on 4 sts.\nRow 1: Knit.",
    good="Gauge: 20 sts and 40 rows = 4 in in garter stitch.\nCast on 4 sts.\nRow 1: Knit.",
    source="Craft Yarn Council, Reading Instructions & Other Basics: a swatch of 4 in square",
)
def gauge_over_little(examined: Examined) -> Iterator[Finding]:
    """A gauge is given over less than 10 cm or 4 in.

    A quarter stitch misread over an inch is a twentieth of it; over 4 inches it is an eightieth, and a blanket is many
    inches wide.
    """
    for gauge in examined.gauges:
        if gauge.window_cm is not None and gauge.window_cm < USUAL_WINDOW_CM:
            message = f"This gauge is given over {shown(gauge.window_cm)} cm only."
            yield at(
                gauge.place, "gauge-over-little", "note", message, "Give it over 10 cm or 4 in, whole or half stitches."
            )
