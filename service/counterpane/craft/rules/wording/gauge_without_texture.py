"""A printed gauge that does not say what was knitted."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at
from counterpane.craft.findings import Finding, rule


@rule(
    "gauge-without-texture",
    family="wording",
    severity="warning",
    bad="Gauge: 22 sts and 30 rows = 10 cm.\nCast on 4 sts.\nRow 1: Knit.",
    good="Gauge: 22 sts and 30 rows = 10 cm in garter stitch.\nCast on 4 sts.\nRow 1: Knit.",
    source="a gauge must name the stitch it was taken in: a published checklist of what a pattern holds",
)
def gauge_without_texture(examined: Examined) -> Iterator[Finding]:
    """A gauge does not say in which fabric it was knitted.

    Garter, rib and lace of the same yarn and needle measure differently by a tenth and more. A swatch in the wrong one
    leads to the wrong needle and the wrong size.
    """
    for gauge in examined.gauges:
        if not gauge.names_fabric:
            message = "This gauge does not say in which fabric it was knitted."
            hint = "Name the fabric, as in “in garter stitch, after washing”."
            yield at(gauge.place, "gauge-without-texture", "warning", message, hint)
