"""A gauge counted over too small a window."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.gauging import body_gauge
from counterpane.craft.findings import Finding, rule
from counterpane.craft.measures import half_up, shown
from counterpane.craft.sizing.swatch import SMALL_WINDOW_CM, window_for


@rule(
    "gauge-window-small",
    family="fabric",
    severity="warning",
    source="house; the error of a reading grows as the window shrinks",
    bad=(
        '{"parts": {"body": "garter"}, '
        '"gauge": {"stitches": 8, "rows": 16, "over_cm": 4, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": "garter"}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def gauge_window_small(attempt: Attempt) -> Iterator[Finding]:
    """A swatch too small to trust.

    A quarter stitch misread over a small window is a large share of it: the error of the width grows as the window
    shrinks.
    """
    plan = attempt.plan
    windows = [gauge.over_cm / gauge.reading.swatches for gauge in attempt.request.gauges]
    small = [window for window in windows if window < SMALL_WINDOW_CM]
    if plan is None or not small:
        return
    gauge = body_gauge(attempt.request).gauge
    wide = half_up(window_for(ONE_CM, plan.width_cm, gauge.per_cm, gauge.reading))
    off = f"the width may be {shown(plan.width_give.tolerance_cm)} cm off either way"
    next_step = f"Count over {shown(wide, 0)} cm, which brings the width to within a centimetre."
    yield small_window(small[0], off, next_step, "/gauge")


def small_window(window_cm: Fraction, off: str, next_step: str, pointer: str) -> Finding:
    """Return the finding about a swatch counted over so little; `off` says how far a size may be off for it."""
    counted = f"A gauge was counted over {shown(window_cm).removesuffix('.0')} cm"
    message = f"{counted}: {off} by misreading alone."
    return Finding("gauge-window-small", "warning", message, next_step, pointer=pointer)


ONE_CM = Fraction(1)
