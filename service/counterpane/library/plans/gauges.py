"""Swatches as they were counted: the gauge they give together, what their reading leaves open, and what the wash did.

Sizes are shown to 0.01 cm, gauges to 0.01, shares to 0.01 %, all half up. A tolerance is two standard uncertainties of
the reading alone, a lower bound: hands vary from swatch to piece on top.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from itertools import combinations
from typing import Any

from counterpane.craft.findings import Finding
from counterpane.craft.measures import CM_PER_INCH, Gauge, half_up
from counterpane.craft.rules.fabric.gauge_not_washed import not_washed
from counterpane.craft.rules.fabric.gauge_window_small import small_window
from counterpane.craft.sizing.swatch import (
    DEVIATIONS,
    SMALL_WINDOW_CM,
    pooled,
    root,
    spread_squared,
    tolerance,
    wash_factors,
    window_for,
    worst_case,
)
from counterpane.library.plans.known import Facts
from counterpane.library.plans.plan_answers import finding_json
from counterpane.library.plans.plan_requests import above_zero, by_texture, gauge_of, length_of
from counterpane.library.plans.sizes import sized
from counterpane.library.values import BadInput

Answer = dict[str, Any]

WITHIN_CM = Fraction(1)
"""The tolerance for which a window is named where none is asked for; house."""

CLOSEST_CM = Fraction(1, 10)
"""The closest tolerance that a window is named for: below it no tape is read; house."""

BASIS = (
    "The tolerance is two standard uncertainties of reading the swatch alone; the same hands knit a piece 3 to 5 % off "
    "their own swatch (from memory), which no larger swatch takes away."
)


def read(content: Mapping[str, Any], facts: Facts) -> Answer:
    """Return what swatches say, one answer for each texture; BadInput for counts that measure nothing.

    `content` has "swatches", and if wanted "size", as a plan request has it, and "within_cm".
    """
    swatches = [gauge_of(each, f"/swatches/{index}") for index, each in enumerate(content["swatches"])]
    size = _size(sized(content, facts).get("size"))
    within = above_zero(content, "within_cm", "") if content.get("within_cm") else WITHIN_CM
    if within < CLOSEST_CM:
        raise BadInput("/within_cm", "No swatch tells a size so closely.", "Ask for 0.1 cm or more.")
    findings = (finding for index, gauge in enumerate(swatches) for finding in _findings(gauge, f"/swatches/{index}"))
    return {
        "gauges": [_told(group, size, within) for group in by_texture(swatches)],
        "basis": BASIS,
        "findings": [finding_json(finding) for finding in findings],
    }


def _size(given: Mapping[str, Any] | None) -> tuple[Fraction, Fraction] | None:
    return (length_of(given, "width", "/size"), length_of(given, "length", "/size")) if given else None


def _findings(gauge: Gauge, pointer: str) -> Iterator[Finding]:
    window = gauge.over_cm / gauge.reading.swatches
    if window < SMALL_WINDOW_CM:
        percent = _percent(_off(gauge, gauge.stitches))
        yield small_window(
            window, f"any width may be {percent} % off either way", "Count over 10 cm at least.", pointer
        )
    if gauge.washed is False:
        yield not_washed(pointer)


def _told(group: Sequence[Gauge], size: tuple[Fraction, Fraction] | None, within: Fraction) -> Answer:
    gauge = pooled(group)
    return {
        "in": gauge.texture,
        "gauge": gauge_json(gauge),
        "per_10_cm": _per(gauge, Fraction(10)),
        "per_4_in": _per(gauge, 4 * CM_PER_INCH),
        "rows_to_a_stitch": _hundredths(gauge.rows_per_cm / gauge.per_cm),
        "off_percent": {side: _percent(_off(gauge, count)) for side, count in _counts(gauge)},
        "wash": _wash(gauge),
        "apart": _apart(group),
        "size": None if size is None else _sizes(gauge, size, within),
    }


def gauge_json(gauge: Gauge) -> Answer:
    """Return a gauge as a plan request takes it; a figure that ends is exact."""
    said = {"stitches": float(gauge.stitches), "rows": float(gauge.rows), "over_cm": float(gauge.over_cm)}
    reading = gauge.reading
    errors = {"count_error": float(reading.count_error), "window_error_cm": float(reading.window_error_cm)}
    before = None if gauge.before is None else gauge.before
    counted = {} if before is None else {"before": {name: gauge_json(before)[name] for name in said}}
    named = {} if gauge.texture is None else {"in": gauge.texture}
    needle = {} if gauge.needle_mm is None else {"needle_mm": float(gauge.needle_mm)}
    return named | said | errors | {"swatches": reading.swatches, "washed": gauge.washed} | needle | counted


def _counts(gauge: Gauge) -> tuple[tuple[str, Fraction], tuple[str, Fraction]]:
    return ("width", gauge.stitches), ("length", gauge.rows)


def _off(gauge: Gauge, count: Fraction) -> Fraction:
    """Return the share by which a size may be off: two standard uncertainties of the reading."""
    return DEVIATIONS * root(spread_squared(count, gauge.over_cm, gauge.reading), 6)


def _per(gauge: Gauge, window: Fraction) -> Answer:
    return {
        "stitches": _hundredths(gauge.per_cm * window),
        "rows": _hundredths(gauge.rows_per_cm * window),
    }


def _wash(gauge: Gauge) -> Answer | None:
    """Return what the wash did to widths and lengths: factors, and the change in percent."""
    factors = wash_factors(gauge)
    if factors is None:
        return None
    told = dict(zip(("width", "length"), factors, strict=True))
    return {
        "factors": {side: float(half_up(factor, Fraction(1, 10_000))) for side, factor in told.items()},
        "change_percent": {side: _percent(factor - 1) for side, factor in told.items()},
    }


def _apart(group: Sequence[Gauge]) -> Answer | None:
    """Return how far several swatches are apart, and whether that is more than their reading explains."""
    if len(group) == 1:
        return None
    widths, lengths = [each.per_cm for each in group], [each.rows_per_cm for each in group]
    beyond = any(_differ(one, other) for one, other in combinations(group, 2))
    return {
        "swatches": len(group),
        "width_percent": _percent(max(widths) / min(widths) - 1),
        "length_percent": _percent(max(lengths) / min(lengths) - 1),
        "more_than_reading": beyond,
    }


def _differ(one: Gauge, other: Gauge) -> bool:
    """Say whether two swatches differ by more than two standard uncertainties of the difference."""
    pairs = ((one.stitches, other.stitches), (one.rows, other.rows))
    return any(_too_far(one, mine, other, its) for mine, its in pairs)


def _too_far(one: Gauge, mine: Fraction, other: Gauge, its: Fraction) -> bool:
    here, there = mine / one.over_cm, its / other.over_cm
    variance = here**2 * spread_squared(mine, one.over_cm, one.reading)
    variance += there**2 * spread_squared(its, other.over_cm, other.reading)
    return (here - there) ** 2 > DEVIATIONS**2 * variance


def _sizes(gauge: Gauge, size: tuple[Fraction, Fraction], within: Fraction) -> Answer:
    return {
        side: _side(gauge, count, cm, within) | {"within_cm": float(within)}
        for (side, count), cm in zip(_counts(gauge), size, strict=True)
    }


def _side(gauge: Gauge, count: Fraction, cm: Fraction, within: Fraction) -> Answer:
    """Return what is open about one side of a piece of this size."""
    per_cm = count / gauge.over_cm
    spread = spread_squared(count, gauge.over_cm, gauge.reading)
    worst = worst_case(cm * per_cm, count, gauge.over_cm, gauge.reading)
    return {
        "cm": _hundredths(cm),
        "worked": _hundredths(cm * per_cm),
        "standard_error_cm": _hundredths(root(cm**2 * spread)),
        "tolerance_cm": _hundredths(tolerance([(cm, spread)])),
        "worst_cm": [None if end is None else _hundredths(end) for end in worst],
        "window_cm": _hundredths(window_for(within, cm, per_cm, gauge.reading)),
    }


def _hundredths(value: Fraction) -> float:
    return float(half_up(value, Fraction(1, 100)))


def _percent(share: Fraction) -> float:
    return _hundredths(100 * share)
