"""A finished size that does not follow from gauge and stitches."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at, stitches
from counterpane.craft.findings import Finding, rule
from counterpane.craft.measures import shown
from counterpane.craft.rows.lengths import PrintedLength, lengths_in

SHARE_ALLOWED = Fraction(10, 100)
"""How far a finished width may be from stitches over gauge: borders and blocking change it. House figure."""
_PIECED = re.compile(
    r"\b(?:pick(?:ed)? up|strips?|squares|sew|seam|panels?|join|each piece|make \d+|motifs?|diagonal"
    r"|corner to corner)\b"
)


@rule(
    "size-not-from-gauge",
    family="wording",
    severity="warning",
    bad=(
        "Finished size: 90 x 100 cm.\nGauge: 20 sts and 40 rows = 10 cm in garter stitch.\nCast on 140 sts.\n"
        "Row 1 (RS): Knit.\nBind off."
    ),
    good=(
        "Finished size: 70 x 100 cm.\nGauge: 20 sts and 40 rows = 10 cm in garter stitch.\nCast on 140 sts.\n"
        "Row 1 (RS): Knit.\nBind off."
    ),
)
def size_not_from_gauge(examined: Examined) -> Iterator[Finding]:
    """The finished width does not follow from the stitches and the gauge.

    Width is stitches divided by gauge. A tenth more or less is allowed, since borders and blocking change it; nothing
    is said of a piece that is sewn together or picked up along.
    """
    page, cast_on = examined.instructions.page, examined.instructions.cast_on
    if cast_on is None or cast_on.others or not page.passages or _PIECED.search(examined.text.lower()):
        return
    printed = [length for stretch in page.under("size") for length in lengths_in(stretch.line, stretch.start)]
    gauges = [gauge.per_cm for gauge in examined.gauges if gauge.per_cm]
    counts = {cast_on.count, *(followed.after for followed in examined.followed if followed.after)}
    if not printed or not gauges:
        return
    widths = [count / gauge for gauge in gauges for count in counts]
    low, high = min(widths) * (1 - SHARE_ALLOWED), max(widths) * (1 + SHARE_ALLOWED)
    if any(low <= value <= high for length in printed for value in length.centimetres):
        return
    yield _finding(printed[0], cast_on.count, cast_on.count / gauges[0])


def _finding(size: PrintedLength, count: int, width: Fraction) -> Finding:
    message = f"{stitches(count)} at this gauge are {shown(width)} cm wide, which is no measure of the finished size."
    hint = "Correct the size, the gauge or the cast-on, or say which edge the stitches run along."
    return at(size.line.place(size.start), "size-not-from-gauge", "warning", message, hint)
