"""The spread of a value: a low end, a likely value and a high end, to reckon with; exact fractions.

What it rests on stands beside it, with the scale that it was reckoned by. `craft.behaviour` has figures that carry
their basis with them and have no likely value.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True)
class Spread:
    """A value as it comes out with every factor at its low end, at its likely value and at its high end.

    Sums and products go end by end, so that one factor which stands in both a piece and its swatch cancels out;
    `ordered` puts the ends in order when all is reckoned.
    """

    low: Fraction
    likely: Fraction
    high: Fraction

    @classmethod
    def exactly(cls, value: Fraction | int) -> Spread:
        """Return a spread whose three values are one."""
        return cls(Fraction(value), Fraction(value), Fraction(value))

    @classmethod
    def between(cls, low: Fraction, high: Fraction) -> Spread:
        """Return a spread from its two ends, with their middle as the likely value."""
        return cls(low, (low + high) / 2, high)

    def __add__(self, other: Spread) -> Spread:
        return Spread(self.low + other.low, self.likely + other.likely, self.high + other.high)

    def __sub__(self, other: Spread) -> Spread:
        return Spread(self.low - other.low, self.likely - other.likely, self.high - other.high)

    def __mul__(self, other: Spread) -> Spread:
        return Spread(self.low * other.low, self.likely * other.likely, self.high * other.high)

    def __truediv__(self, other: Spread) -> Spread:
        return Spread(self.low / other.low, self.likely / other.likely, self.high / other.high)

    def times(self, factor: Fraction | int) -> Spread:
        """Return so many times the spread."""
        return Spread(self.low * factor, self.likely * factor, self.high * factor)

    def widened(self, share: Fraction) -> Spread:
        """Return the spread, its ends in order, each moved out by this share of itself."""
        ends = self.ordered()
        return Spread(ends.low * (1 - share), ends.likely, ends.high * (1 + share))

    def ordered(self) -> Spread:
        """Return the spread with its three values in order; the middle one of them is the likely one."""
        return Spread(*sorted((self.low, self.likely, self.high)))


NOTHING = Spread.exactly(0)


def total(spreads: Iterable[Spread]) -> Spread:
    """Return the sum of spreads, end by end."""
    return sum(spreads, NOTHING)
