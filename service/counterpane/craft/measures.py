"""Lengths, gauges and masses as exact fractions; every rounding has a name.

Centimetres are the unit inside; an inch is 127/50 cm exactly (international yard and pound agreement, 1959).
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import Decimal, InvalidOperation
from fractions import Fraction
from typing import Literal

CM_PER_INCH = Fraction(127, 50)
"""2.54: the inch by definition, since the international yard of 1959."""

WHOLE_PCT = Fraction(100)
"""All of a thing in percent, by definition."""

QUARTER = Fraction(1, 4)
"""The step in which inches of a blanket are said; common practice, no source."""

Units = Literal["both", "cm", "in"]
"""What lengths of a piece are said in."""

MOST_DIGITS = 30
"""Digits before or behind the point of a number of ordinary size; house bound."""


def exact(number: int | str | Decimal | Fraction) -> Fraction:
    """Return the number that the decimal text stands for; ValueError for text that is no finite decimal."""
    if isinstance(number, Fraction | int):
        return Fraction(number)
    try:
        value = Decimal(number)
    except InvalidOperation:
        raise ValueError(f"{number!r} is not a decimal number") from None
    if not value.is_finite() or abs(value.adjusted()) > MOST_DIGITS:
        raise ValueError(f"{number!r} is not a number of ordinary size")
    return Fraction(value)


def inches(number: Fraction) -> Fraction:
    """Return the centimetres in this many inches."""
    return number * CM_PER_INCH


def half_up(value: Fraction, step: Fraction = Fraction(1)) -> Fraction:
    """Round to the nearest multiple of `step`, halves away from zero."""
    scaled = abs(value) / step
    rounded = (2 * scaled.numerator + scaled.denominator) // (2 * scaled.denominator) * step
    return rounded if value >= 0 else -rounded


def quarter_inches(cm: Fraction) -> Fraction:
    """Return centimetres as inches to the nearest quarter, halves up: as finely as a knitter's tape is read."""
    return half_up(cm / CM_PER_INCH, QUARTER)


def shown(value: Fraction, places: int = 1) -> str:
    """Write a fraction with this many decimals, half up; the one rounding of a displayed figure."""
    above, below = abs(value.numerator) * 10**places, value.denominator
    rounded = (2 * above + below) // (2 * below)
    whole, rest = divmod(rounded, 10**places)
    sign = "-" if value < 0 and rounded else ""
    return f"{sign}{whole}.{rest:0{places}d}" if places else f"{sign}{whole}"


@dataclass(frozen=True, slots=True)
class Reading:
    """How exactly swatches were read: how far a count and its window may be off either way, in stitches or rows and cm.

    `swatches` windows, each read by itself, add up to the window of the gauge. Errors that nobody states, a quarter of
    a stitch and a millimetre: common practice, no source.
    """

    count_error: Fraction = Fraction(1, 4)
    window_error_cm: Fraction = Fraction(1, 10)
    swatches: int = 1


AS_USUAL = Reading()


@dataclass(frozen=True, slots=True)
class Gauge:
    """Stitches and rows counted over a window of centimetres, in a stated texture.

    `texture` is the slug of the component it was knitted in, None where the body's is meant. `washed` says whether it
    was counted after a wash, None where nobody said; `before` is what the same swatch counted before it. `needle_mm` is
    the needle it was knitted on, None where nobody said.
    """

    stitches: Fraction
    rows: Fraction
    over_cm: Fraction = Fraction(10)
    texture: str | None = None
    reading: Reading = AS_USUAL
    washed: bool | None = None
    before: Gauge | None = None
    needle_mm: Fraction | None = None

    def __post_init__(self) -> None:
        """Refuse a gauge that measures nothing."""
        if min(self.stitches, self.rows, self.over_cm) <= 0:
            raise ValueError("gauge must be above 0")

    @property
    def one(self) -> Gauge:
        """The gauge over the window of one swatch, where it is a sum of several."""
        number = self.reading.swatches
        return replace(self, stitches=self.stitches / number, rows=self.rows / number, over_cm=self.over_cm / number)

    @property
    def per_cm(self) -> Fraction:
        """Stitches to one centimetre."""
        return self.stitches / self.over_cm

    @property
    def rows_per_cm(self) -> Fraction:
        """Rows to one centimetre."""
        return self.rows / self.over_cm

    def width(self, stitches: int) -> Fraction:
        """Return the centimetres that this many stitches measure."""
        return stitches / self.per_cm

    def length(self, rows: int) -> Fraction:
        """Return the centimetres that this many rows measure."""
        return rows / self.rows_per_cm
