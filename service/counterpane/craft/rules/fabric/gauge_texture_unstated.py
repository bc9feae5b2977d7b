"""A gauge that does not say in which fabric it was knitted."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.findings import Finding, rule


@rule(
    "gauge-texture-unstated",
    family="fabric",
    severity="note",
    bad=(
        '{"parts": {"body": "garter"}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": "garter"}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def gauge_texture_unstated(attempt: Attempt) -> Iterator[Finding]:
    """A gauge that names no fabric.

    A gauge counts only in the fabric it was knitted in, on its needle, washed as the piece will be.
    """
    if attempt.plan is None or any(gauge.texture is not None for gauge in attempt.request.gauges):
        return
    yield Finding(
        "gauge-texture-unstated",
        "note",
        "The gauge does not say in which fabric it was knitted: it is taken to be that of the body.",
        "Name the fabric with “in”, and give a gauge for each border that is of another one.",
        pointer="/gauge",
    )
