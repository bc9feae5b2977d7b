"""What a swatch tells and what it leaves open: reading errors, washing, planning again at another gauge."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from fractions import Fraction
from math import isqrt

from counterpane.craft.counts import Progression
from counterpane.craft.measures import AS_USUAL, Gauge, Reading
from counterpane.craft.sizing.classes import nearest

SMALL_WINDOW_CM = 5
"""Below this many centimetres a swatch says little; house figure."""

DEVIATIONS = 2
"""Standard uncertainties in a stated tolerance (about 95 in 100); the usual coverage factor."""

RECTANGULAR = 3
"""An error evenly likely up to its bound has a third of the square of that bound as variance: GUM, from memory."""

ROOT_PLACES = 4
"""Decimals of a square root, finer than any figure shown; house figure."""

NEXT_TO_NOTHING = Fraction(1, 1000)
"""Share of a count that its error must leave for a size to have a greatest; house figure."""


def root(value: Fraction, places: int = ROOT_PLACES) -> Fraction:
    """Return the square root rounded half up to this many decimals; ValueError below 0."""
    if value < 0:
        raise ValueError("no square root below 0")
    scale = 10**places
    doubled = isqrt((2 * scale) ** 2 * value.numerator // value.denominator)
    return Fraction((doubled + 1) // 2, scale)


def spread_squared(count: Fraction, window_cm: Fraction, reading: Reading = AS_USUAL) -> Fraction:
    """Return the square of the relative standard uncertainty, all errors taken as rectangular and independent.

    The count and the window are sums over the swatches of the reading.
    """
    errors = (reading.count_error / count) ** 2 + (reading.window_error_cm / window_cm) ** 2
    return reading.swatches * errors / RECTANGULAR


def tolerance(parts: Iterable[tuple[Fraction, Fraction]]) -> Fraction:
    """Return the half width in centimetres of a size summed from parts, two standard uncertainties, to 0.0001 cm.

    Each part is its size in centimetres with the square of the relative uncertainty of the swatch it rests on; swatches
    are taken as independent. A lower bound: the knitter's own variation comes on top.
    """
    variance = sum((size**2 * spread for size, spread in parts), Fraction(0))
    return root(DEVIATIONS**2 * variance)


def worst_case(
    worked: Fraction | int, count: Fraction, window_cm: Fraction, reading: Reading = AS_USUAL
) -> tuple[Fraction, Fraction | None]:
    """Return the least and the greatest centimetres that the reading errors allow so many stitches or rows, exact.

    All errors lie the same way. The greatest is None where the count may have been next to nothing.
    """
    off_count, off_window = (reading.swatches * error for error in (reading.count_error, reading.window_error_cm))
    least = worked * max(Fraction(0), window_cm - off_window) / (count + off_count)
    left = count - off_count
    return least, worked * (window_cm + off_window) / left if left > count * NEXT_TO_NOTHING else None


def window_for(within_cm: Fraction, width_cm: Fraction, per_cm: Fraction, reading: Reading = AS_USUAL) -> Fraction:
    """Return the window in centimetres that gives a width to within a tolerance, to 0.0001 cm.

    It is that of each swatch, where several are averaged.
    """
    errors = (reading.count_error / per_cm) ** 2 + reading.window_error_cm**2
    return root((DEVIATIONS * width_cm / within_cm) ** 2 * errors / (RECTANGULAR * reading.swatches))


def averaged(swatches: int) -> Fraction:
    """Return the factor on the uncertainty when this many independent swatches are averaged, to 0.0001."""
    return root(Fraction(1, swatches))


def pooled(gauges: Sequence[Gauge]) -> Gauge:
    """Return the gauge that several swatches of one texture give together: their counts over all their windows.

    Each may be a pool itself. The errors are the largest of any; washed, counted before, and on one needle only if all
    are. Raises ValueError for no gauge, and for gauges of several textures.
    """
    if len({gauge.texture for gauge in gauges}) != 1:
        raise ValueError("one gauge is made of swatches of one texture")
    readings = [gauge.reading for gauge in gauges]
    befores = [gauge.before for gauge in gauges if gauge.before is not None]
    washed = {gauge.washed for gauge in gauges}
    needles = {gauge.needle_mm for gauge in gauges}
    return Gauge(
        sum((gauge.stitches for gauge in gauges), Fraction(0)),
        sum((gauge.rows for gauge in gauges), Fraction(0)),
        sum((gauge.over_cm for gauge in gauges), Fraction(0)),
        gauges[0].texture,
        Reading(
            max(reading.count_error for reading in readings),
            max(reading.window_error_cm for reading in readings),
            sum(reading.swatches for reading in readings),
        ),
        washed.pop() if len(washed) == 1 else None,
        pooled(befores) if len(befores) == len(gauges) else None,
        needles.pop() if len(needles) == 1 else None,
    )


def wash_factors(gauge: Gauge) -> tuple[Fraction, Fraction] | None:
    """Return by what the wash multiplied widths and lengths, exact; None where the count before it is not known."""
    if gauge.before is None:
        return None
    return gauge.before.per_cm / gauge.per_cm, gauge.before.rows_per_cm / gauge.rows_per_cm


def regauged(counts: Progression, stitches: int, before: Gauge, after: Gauge, how_many: int = 1) -> tuple[int, ...]:
    """Return the counts of a class nearest the same width at another gauge."""
    return nearest(counts, before.width(stitches) * after.per_cm, how_many)


def change_of_shape(before: Gauge, after: Gauge) -> Fraction:
    """Return width over length at the second gauge against the first, for the same counts."""
    return (before.per_cm * after.rows_per_cm) / (after.per_cm * before.rows_per_cm)


def washed(gauge: Gauge, width_factor: Fraction, length_factor: Fraction) -> Gauge:
    """Return the gauge after a wash that changes widths and lengths by these factors."""
    counts = (gauge.stitches / width_factor, gauge.rows / length_factor)
    before = replace(gauge, before=None, washed=False)
    return Gauge(*counts, gauge.over_cm, gauge.texture, gauge.reading, True, before, gauge.needle_mm)
