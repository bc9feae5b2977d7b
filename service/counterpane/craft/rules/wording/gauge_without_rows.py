"""A printed gauge without its rows."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at
from counterpane.craft.findings import Finding, rule


@rule(
    "gauge-without-rows",
    family="wording",
    severity="note",
    bad="Gauge: 22 sts = 10 cm in garter stitch.\nCast on 4 sts.\nRow 1: Knit.",
    good="Gauge: 22 sts and 44 rows = 10 cm in garter stitch.\nCast on 4 sts.\nRow 1: Knit.",
    source="stitches and rows over 4 in or 10 cm are in four published checklists of what a pattern holds",
)
def gauge_without_rows(examined: Examined) -> Iterator[Finding]:
    """A gauge counts stitches and no rows.

    Without rows nobody can tell how long the piece will be, nor how much yarn it takes.
    """
    for gauge in examined.gauges:
        if gauge.stitches is not None and gauge.rows is None:
            message = "This gauge counts stitches and no rows."
            yield at(gauge.place, "gauge-without-rows", "note", message, "Print the rows over the same length.")
