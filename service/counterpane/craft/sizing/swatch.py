"""What a swatch tells and what it leaves open: reading errors, washing, planning again at another gauge."""

from __future__ import annotations

from fractions import Fraction
from math import isqrt

from counterpane.craft.counts import Progression
from counterpane.craft.measures import Gauge
from counterpane.craft.sizing.classes import nearest

COUNT_ERROR = Fraction(1, 4)
"""Stitches or rows by which a count over a swatch may be off; common practice, no source."""

WINDOW_ERROR_CM = Fraction(1, 10)
"""Centimetres by which the window may be off; common practice, no source."""

SMALL_WINDOW_CM = 5
"""Below this many centimetres a swatch says little; house figure."""

DEVIATIONS = 2
"""Standard uncertainties in a stated tolerance (about 95 in 100); the usual coverage factor."""


def root(value: Fraction, places: int = 4) -> Fraction:
    """Return the square root rounded half up to this many decimals; ValueError below 0."""
    if value < 0:
        raise ValueError("no square root below 0")
    scale = 10**places
    doubled = isqrt(4 * scale * scale * value.numerator // value.denominator)
    return Fraction((doubled + 1) // 2, scale)


def spread_squared(
    count: Fraction,
    window_cm: Fraction,
    count_error: Fraction = COUNT_ERROR,
    window_error: Fraction = WINDOW_ERROR_CM,
) -> Fraction:
    """Return the square of the relative standard uncertainty, both errors taken as rectangular."""
    return ((count_error / count) ** 2 + (window_error / window_cm) ** 2) / 3


def tolerance(parts: list[tuple[Fraction, Fraction, Fraction]]) -> Fraction:
    """Return the half width in centimetres of a size summed from parts, two standard uncertainties, to 0.0001 cm.

    Each part is its size in centimetres with the count and the window of the swatch it rests on; swatches are taken as
    independent. A lower bound: the knitter's own variation comes on top.
    """
    variance = sum((size**2 * spread_squared(count, window) for size, count, window in parts), Fraction(0))
    return root(DEVIATIONS**2 * variance)


def worst_case(
    stitches: int,
    count: Fraction,
    window_cm: Fraction,
    count_error: Fraction = COUNT_ERROR,
    window_error: Fraction = WINDOW_ERROR_CM,
) -> tuple[Fraction, Fraction]:
    """Return the least and the greatest width in centimetres that the reading errors allow, exact."""
    low = stitches * (window_cm - window_error) / (count + count_error)
    return low, stitches * (window_cm + window_error) / (count - count_error)


def window_for(
    within_cm: Fraction,
    width_cm: Fraction,
    per_cm: Fraction,
    count_error: Fraction = COUNT_ERROR,
    window_error: Fraction = WINDOW_ERROR_CM,
) -> Fraction:
    """Return the window in centimetres whose swatch gives a width to within a tolerance, to 0.0001 cm."""
    reading = (count_error / per_cm) ** 2 + window_error**2
    return root((DEVIATIONS * width_cm / within_cm) ** 2 * reading / 3)


def averaged(swatches: int) -> Fraction:
    """Return the factor on the uncertainty when this many independent swatches are averaged, to 0.0001."""
    return root(Fraction(1, swatches))


def regauged(counts: Progression, stitches: int, before: Gauge, after: Gauge, how_many: int = 1) -> tuple[int, ...]:
    """Return the counts of a class nearest the same width at another gauge."""
    return nearest(counts, before.width(stitches) * after.per_cm, how_many)


def change_of_shape(before: Gauge, after: Gauge) -> Fraction:
    """Return width over length at the second gauge against the first, for the same counts."""
    return (before.per_cm * after.rows_per_cm) / (after.per_cm * before.rows_per_cm)


def washed(gauge: Gauge, width_factor: Fraction, length_factor: Fraction) -> Gauge:
    """Return the gauge after a wash that changes widths and lengths by these factors."""
    return Gauge(gauge.stitches / width_factor, gauge.rows / length_factor, gauge.over_cm, gauge.texture)
