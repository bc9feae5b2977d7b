"""The stitches on the needles as amounts `base + per t` of one unknown whole t, and what narrows t down.

A known count is the same with every `per` 0: one walk serves both the proof for all counts and the check of one.
"""

from __future__ import annotations

from dataclasses import replace
from math import gcd

from counterpane.craft.records import record
from counterpane.craft.rows.effects import Effect

# House bound. Larger counts are not looked at: no piece has them, and whole numbers that large are refused outside.
MOST_STITCHES = 10**18


@record
class Amount:
    """Stitches as `base + per t`."""

    base: int
    per: int = 0

    def __add__(self, other: Amount) -> Amount:
        return Amount(self.base + other.base, self.per + other.per)

    def plus(self, stitches: int) -> Amount:
        """Return the amount with so many stitches more."""
        return Amount(self.base + stitches, self.per)

    def times(self, factor: int) -> Amount:
        """Return so many times the amount."""
        return Amount(self.base * factor, self.per * factor)

    def thinned(self, first: int, step: int) -> Amount:
        """Return the amount in terms of u where t is `first + step u`."""
        return Amount(self.at(first), self.per * step)

    def at(self, t: int) -> int:
        """Return the stitches for one value of t."""
        return self.base + self.per * t


NONE = Amount(0)


def total(amounts: tuple[Amount, ...]) -> Amount:
    """Return the sum of the amounts."""
    return Amount(sum(amount.base for amount in amounts), sum(amount.per for amount in amounts))


@record
class Needle:
    """The stitches to work and the worked ones, each from the tips outwards, with a cut at each marker.

    t runs from `low` to `high` (None: without end). `start` is the count at the beginning of the piece. `scale` is how
    much rarer the values of t have become. `marked` is False once it is not known where the markers hang.
    `slope` is how often the row's repeat is worked per step of t, and the scale at which that was taken.
    """

    left: tuple[Amount, ...]
    right: tuple[Amount, ...] = (NONE,)
    start: Amount = Amount(0, 1)
    low: int = 1
    high: int | None = None
    scale: int = 1
    cable: int = 0
    marked: bool = True
    slope: tuple[int, int] | None = None

    @classmethod
    def any_count(cls) -> Needle:
        """Return a needle with an unknown count of 1 or more."""
        return cls((Amount(0, 1),))

    @classmethod
    def holding(cls, count: int) -> Needle:
        """Return a needle with a known count, on which nothing depends on t."""
        return cls((Amount(count),))

    @property
    def all(self) -> Amount:
        """All stitches on the needles."""
        if len(self.left) == len(self.right) == 1 and self.right[0] is NONE:
            return self.left[0]  # So it is between any two rows without markers.
        return total(self.left) + total(self.right)

    @property
    def has_markers(self) -> bool:
        """Say whether any marker hangs between the stitches."""
        return len(self.left) + len(self.right) > 2

    def least(self, amount: Amount) -> int:
        """Return the least the amount can be; where amounts fall with t, t has an end."""
        return min(map(amount.at, (self.low,) if self.high is None else (self.low, self.high)))

    def known(self, amount: Amount) -> int | None:
        """Return the amount if it is one number, else None."""
        return amount.base if amount.per == 0 else None

    def at_least(self, amount: Amount, bound: int) -> Needle | None:
        """Keep the t for which the amount reaches the bound; None where there is none."""
        if amount.per > 0:
            return self._limited(max(self.low, -((amount.base - bound) // amount.per)), self.high)
        if amount.per < 0:
            most = (amount.base - bound) // -amount.per
            return self._limited(self.low, most if self.high is None else min(self.high, most))
        return self if amount.base >= bound else None

    def exactly(self, amount: Amount, stitches: int) -> Needle | None:
        """Keep the t for which the amount is so many; None where there is none."""
        if amount.per == 0:
            return self if amount.base == stitches else None
        t, rest = divmod(stitches - amount.base, amount.per)
        if rest or t < self.low or (self.high is not None and t > self.high):
            return None
        return self._thinned(t, 0, 0, 0)

    def divided(self, amount: Amount, by: int) -> tuple[Needle, Amount] | None:
        """Keep the t for which `by` divides the amount; return the quotient too, None where there is none."""
        common = gcd(amount.per, by)
        if amount.base % common:
            return None
        if common == by:
            return self, Amount(amount.base // by, amount.per // by)
        step = by // common
        first = -(amount.base // common) * pow(amount.per // common, -1, step) % step
        high = None if self.high is None else (self.high - first) // step
        low = -((first - self.low) // step)
        if high is not None and high < low:
            return None
        thinned = self._thinned(first, step, low, high)
        return thinned, Amount(amount.at(first) // by, amount.per // common)

    def worked(self, one: Effect) -> Needle:
        """Work this effect at the tips of the needles."""
        left, right = self.left[0].plus(-one.uses), self.right[0].plus(one.makes)
        return self.laid((left, *self.left[1:]), (right, *self.right[1:]), self.cable + one.held)

    def repeated(self, times: Amount, one: Effect) -> Needle:
        """Work this effect so many times at the tips of the needles, and note how often."""
        left, right = self.left[0] + times.times(-one.uses), self.right[0] + times.times(one.makes)
        return self.noted(times).laid((left, *self.left[1:]), (right, *self.right[1:]), self.cable)

    def noted(self, times: Amount) -> Needle:
        """Note how often the first repeat of the row is worked that depends on t."""
        if not times.per or self.slope:
            return self
        slope = times.per, self.scale
        # Written out, since this is what every row asks for; `replace` takes three times as long.
        return Needle(
            self.left, self.right, self.start, self.low, self.high, self.scale, self.cable, self.marked, slope
        )

    def laid(self, left: tuple[Amount, ...], right: tuple[Amount, ...], cable: int = 0) -> Needle:
        """Return the needles with these stitches on them."""
        # Written out, since this is what every stretch of a row asks for; `replace` takes three times as long.
        return Needle(left, right, self.start, self.low, self.high, self.scale, cable, self.marked, self.slope)

    def pinned(self) -> Needle:
        """Keep the least t alone."""
        return self._thinned(self.low, 0, 0, 0)

    def _limited(self, low: int, high: int | None) -> Needle | None:
        if high is not None and high < low:
            return None
        return self if (low, high) == (self.low, self.high) else replace(self, low=low, high=high)

    def _thinned(self, first: int, step: int, low: int, high: int | None) -> Needle:
        """Replace t by `first + step u`."""
        return replace(
            self,
            left=tuple(amount.thinned(first, step) for amount in self.left),
            right=tuple(amount.thinned(first, step) for amount in self.right),
            start=self.start.thinned(first, step),
            low=low,
            high=high,
            scale=self.scale * step,
        )
