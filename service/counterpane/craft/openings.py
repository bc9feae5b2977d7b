"""Estimates of openings, strands and loops from a gauge: a house model in exact fractions, never a measurement.

Lengths are millimetres. An estimate may ask for a rod; it never clears a fabric, since yarn is drawn from neighbours.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import isqrt
from typing import Literal

from counterpane.craft.measures import Gauge

PI = Fraction("3.14159265358979323846")
"""The first 20 decimals of the circle's number, OEIS A000796."""

LOOP_WIDTHS = Fraction(41, 10)
"""Yarn in one plain loop, in stitch widths, wet relaxed: Munden's constant, from memory; see the gauge facts."""

ROOT_DECIMALS = 9
"""Square roots are cut off after this many decimals of a millimetre."""

Verdict = Literal["below", "above", "measure with a rod"]


@dataclass(frozen=True, slots=True)
class Span:
    """A least and a greatest value in millimetres; `low` is None where it cannot be told."""

    low: Fraction | None
    high: Fraction

    def against(self, limit: Fraction) -> Verdict:
        """Judge an estimate: below the limit throughout, above it throughout, or undecided."""
        if self.high < limit:
            return "below"
        if self.low is not None and self.low >= limit:
            return "above"
        return "measure with a rod"


def stitch_pitch_mm(gauge: Gauge) -> Fraction:
    """Return the width of one stitch."""
    return 10 / gauge.per_cm


def row_pitch_mm(gauge: Gauge) -> Fraction:
    """Return the height of one row."""
    return 10 / gauge.rows_per_cm


def loop_mm(sts_10cm: Fraction) -> Fraction:
    """Return the yarn in one plain loop at so many stitches to 10 cm."""
    return LOOP_WIDTHS * 100 / sts_10cm


def half_loop_mm(sts_10cm: Fraction) -> Fraction:
    """Return the diameter of a rod that half a plain loop is drawn round."""
    return loop_mm(sts_10cm) / 2 / PI


def opening_mm(yarn_overs: int, gauge: Gauge, yarn_mm: Fraction | None = None) -> Span:
    """Estimate the opening that so many yarn-overs side by side leave; house model.

    The low end is the circle of the cells' area less a yarn diameter, at least 0, and None where no diameter is given;
    the high end is the loops of the yarn-overs and a stitch's width, drawn round a rod.
    """
    pitch = stitch_pitch_mm(gauge)
    high = (yarn_overs * LOOP_WIDTHS * pitch + pitch) / PI
    if yarn_mm is None:
        return Span(None, high)
    circle = root(4 * yarn_overs * pitch * row_pitch_mm(gauge) / PI)
    return Span(max(circle - yarn_mm, Fraction(0)), high)


def strand_mm(stitches: int, gauge: Gauge) -> Span:
    """Estimate the strand that lies past so many slipped stitches: from their own widths to one width more."""
    pitch = stitch_pitch_mm(gauge)
    return Span(stitches * pitch, (stitches + 1) * pitch)


def root(value: Fraction) -> Fraction:
    """Return the square root, cut off after `ROOT_DECIMALS` decimals."""
    scale = 10**ROOT_DECIMALS
    return Fraction(isqrt(value.numerator * scale**2 // value.denominator), scale)
