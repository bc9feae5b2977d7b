"""A gauge counted before the wash."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.findings import Finding, rule

NEXT_STEP = (
    "Wash the swatch as the blanket will be washed, dry it flat, and count again; give both counts if you have them."
)


@rule(
    "gauge-not-washed",
    family="fabric",
    severity="warning",
    bad=(
        '{"parts": {"body": "garter"}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter", "washed": false}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": "garter"}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter", "washed": true}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def gauge_not_washed(attempt: Attempt) -> Iterator[Finding]:
    """A gauge counted before the wash.

    Wool relaxes, superwash grows, cotton shortens: the size that counts is the one after the wash, and a count before
    it says nothing of that.
    """
    several = len(attempt.request.gauges) > 1
    for index, gauge in enumerate(attempt.request.gauges):
        if attempt.plan is not None and gauge.washed is False:
            yield not_washed(f"/gauge/{index}" if several else "/gauge")


def not_washed(pointer: str) -> Finding:
    """Return the finding about a swatch that was counted before its wash."""
    message = "The gauge was counted before the wash: the blanket may come out of it in another size."
    return Finding("gauge-not-washed", "warning", message, NEXT_STEP, pointer=pointer)
