"""A figure with a low end, a likely value and a high end; exact fractions."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True)
class Figure:
    """A value as it comes out with every factor at its low end, at its likely value and at its high end.

    Sums and products go end by end, so that one factor which stands in both a piece and its swatch cancels out;
    `ordered` puts the ends in order when all is reckoned.
    """

    low: Fraction
    likely: Fraction
    high: Fraction

    @classmethod
    def exactly(cls, value: Fraction | int) -> Figure:
        """Return a figure whose three values are one."""
        return cls(Fraction(value), Fraction(value), Fraction(value))

    @classmethod
    def between(cls, low: Fraction, high: Fraction) -> Figure:
        """Return a figure from its two ends, with their middle as the likely value."""
        return cls(low, (low + high) / 2, high)

    def __add__(self, other: Figure) -> Figure:
        return Figure(self.low + other.low, self.likely + other.likely, self.high + other.high)

    def __sub__(self, other: Figure) -> Figure:
        return Figure(self.low - other.low, self.likely - other.likely, self.high - other.high)

    def __mul__(self, other: Figure) -> Figure:
        return Figure(self.low * other.low, self.likely * other.likely, self.high * other.high)

    def __truediv__(self, other: Figure) -> Figure:
        return Figure(self.low / other.low, self.likely / other.likely, self.high / other.high)

    def times(self, factor: Fraction | int) -> Figure:
        """Return so many times the figure."""
        return Figure(self.low * factor, self.likely * factor, self.high * factor)

    def widened(self, share: Fraction) -> Figure:
        """Return the figure, its ends in order, each moved out by this share of itself."""
        ends = self.ordered()
        return Figure(ends.low * (1 - share), ends.likely, ends.high * (1 + share))

    def ordered(self) -> Figure:
        """Return the figure with its three values in order; the middle one of them is the likely one."""
        return Figure(*sorted((self.low, self.likely, self.high)))


NOTHING = Figure.exactly(0)


def total(figures: Iterable[Figure]) -> Figure:
    """Return the sum of figures, end by end."""
    return sum(figures, NOTHING)
