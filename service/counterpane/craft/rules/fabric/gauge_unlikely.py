"""A gauge far from what hand-knitting yarns give."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.gauging import said
from counterpane.craft.findings import Finding, rule
from counterpane.craft.measures import Gauge, shown
from counterpane.craft.yarn.classes import FOUR_INCHES


@rule(
    "gauge-unlikely",
    family="fabric",
    severity="warning",
    source="Craft Yarn Council, Standard Yarn Weight System (yarn classes)",
    bad=(
        '{"parts": {"body": "garter"}, '
        '"gauge": {"stitches": 220, "rows": 400, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": "garter"}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def gauge_unlikely(attempt: Attempt) -> Iterator[Finding]:
    """A gauge that no yarn is sold for.

    From jumbo to lace, hand-knitting yarns make 1 to 40 stitches over 4 inches; far outside it a window or a decimal
    point is probably wrong.
    """
    for index, gauge in enumerate(attempt.request.gauges):
        if attempt.plan is not None and not _likely(gauge):
            several = len(attempt.request.gauges) > 1
            yield Finding(
                "gauge-unlikely",
                "warning",
                f"{said(gauge)} are "
                f"{shown(_over_4_in(gauge))} stitches over 4 in, {shown(gauge.rows / gauge.stitches, 2)} rows each.",
                "Check the counts, and the length they were counted over.",
                pointer=f"/gauge/{index}" if several else "/gauge",
            )


FEWEST, MOST = 1, 60
"""Stitches over 4 in: yarn classes run from 1 to 40 (Craft Yarn Council); half as many again for fine gauges."""

LOW, HIGH = Fraction(4, 5), Fraction(3)
"""Rows to the width of a stitch that hand knitting shows; 1.3 to 2.1 from memory, with room on both sides."""


def _over_4_in(gauge: Gauge) -> Fraction:
    return gauge.per_cm * FOUR_INCHES


def _likely(gauge: Gauge) -> bool:
    return FEWEST <= _over_4_in(gauge) <= MOST and LOW <= gauge.rows_per_cm / gauge.per_cm <= HIGH
