"""Figures as a knitter reads them: lengths in both units, counts, gauges; each rounding happens here, once."""

from __future__ import annotations

from fractions import Fraction

from counterpane.craft.measures import CM_PER_INCH, QUARTER, half_up, quarter_inches, shown
from counterpane.craft.rows.words import NUMBER_WORDS

_FOUR_INCHES = 4 * CM_PER_INCH
"""The window of a gauge in inches (Craft Yarn Council: a swatch of 4 in)."""
_TEN_CM = Fraction(10)
"""The window of a gauge in centimetres; common practice, no source."""
_IN_WORDS = {number: word for word, number in NUMBER_WORDS.items() if number <= 20}
_HUNDREDTH = Fraction(1, 100)
_SIGNS = {Fraction(0): "", Fraction(1, 4): "¼", Fraction(1, 2): "½", Fraction(3, 4): "¾"}
"""Quarters as they are printed."""


def number(value: Fraction) -> str:
    """Write a stated figure with no more decimals than it has, two at most."""
    return f"{shown(value, 2).rstrip('0').rstrip('.')}"


def cm(value: Fraction) -> str:
    """Write centimetres to 0.1, half up."""
    return f"{shown(value)} cm"


def inch(value: Fraction) -> str:
    """Write centimetres as inches to a quarter, converted exactly first: 27½ in."""
    return f"{_quarters(value)} in"


def span_in_inches(low: Fraction, high: Fraction) -> str:
    """Write a span of centimetres in inches: 26¾ to 27½ in."""
    ends = dict.fromkeys((_quarters(low), _quarters(high)))
    return f"{' to '.join(ends)} in"


def _quarters(value: Fraction) -> str:
    """Write inches to a quarter; what is less than half of one is said to be under a quarter."""
    rounded = quarter_inches(value)
    if value and not rounded:
        return f"under {_SIGNS[QUARTER]}"
    whole, rest = divmod(rounded, 1)
    return f"{whole or ''}{_SIGNS[rest]}" if rounded else "0"


def both(value: Fraction) -> str:
    """Write a length in both units: 90.0 cm (35½ in)."""
    return f"{cm(value)} ({inch(value)})"


def counted(amount: int, one: str, many: str | None = None) -> str:
    """Write an amount with its noun: 1 row, 1,836 stitches."""
    return f"{amount:,} {one if amount == 1 else many or one + 's'}"


def times_more(amount: int) -> str:
    """Write how often something is done again: once more, twelve times more, 45 times more.

    Small numbers are words, so that they do not run into the row numbers before them.
    """
    if amount == 1:
        return "once more"
    return f"{_IN_WORDS.get(amount, amount)} times more"


def percent(part: Fraction, whole: int) -> int:
    """Return the share of the whole in whole percent, half up."""
    return int(half_up(100 * part / whole))


def window(over_cm: Fraction) -> str:
    """Write the window of a gauge in the unit it was given in: 10 cm, 4 in."""
    in_inches = over_cm / CM_PER_INCH
    if (over_cm / _HUNDREDTH).denominator == 1 and (in_inches / QUARTER).denominator > 1:
        return f"{number(over_cm)} cm"
    return f"{number(in_inches)} in"


def gauge_text(stitches: Fraction, rows: Fraction, over_cm: Fraction) -> str:
    """Write a gauge over its own window, and over the other unit's usual one to 0.1."""
    stated = f"{number(stitches)} sts and {number(rows)} rows over {window(over_cm)}"
    other = _TEN_CM if window(over_cm).endswith("in") else _FOUR_INCHES
    there = other / over_cm
    return f"{stated} (over {window(other)}: {shown(stitches * there)} sts and {shown(rows * there)} rows)"
