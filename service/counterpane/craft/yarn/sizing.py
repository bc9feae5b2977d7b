"""What size an amount of yarn makes, in closed form: yarn of the area, of the edges, and what every size takes.

With sides in the ratio `shape` (length to width) a piece of width W takes `area * shape * W^2 + edges * W + fixed`.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from counterpane.craft.openings import root

DISCRIMINANT = 4
"""The 4 of b² - 4ac in the solution of a quadratic equation, by definition."""


class NotEnoughYarn(ValueError):
    """The yarn does not even do for what every size takes."""


@dataclass(frozen=True, slots=True)
class SizeLaw:
    """Yarn by size, in one unit of yarn and one unit of length.

    `area` is for a unit of area, `edges` for a unit of width, `fixed` for ends, whatever the size. `shape` is the
    length to the width.
    """

    area: Fraction
    edges: Fraction
    fixed: Fraction
    shape: Fraction

    def yarn(self, width: Fraction) -> Fraction:
        """Return the yarn of a piece of this width."""
        return self.area * self.shape * width**2 + self.edges * width + self.fixed

    def width(self, yarn: Fraction, margin: Fraction = Fraction(0)) -> Fraction:
        """Return the width that an amount makes when a margin is kept, cut off after nine decimals.

        NotEnoughYarn where nothing is left after the fixed part.
        """
        left = yarn / (1 + margin) - self.fixed
        if left <= 0:
            raise NotEnoughYarn("not enough yarn for the ends")
        square = self.area * self.shape
        return (root(self.edges**2 + DISCRIMINANT * square * left) - self.edges) / (2 * square)

    def length(self, yarn: Fraction, width: Fraction, margin: Fraction = Fraction(0)) -> Fraction:
        """Return the length that an amount makes at a width that is kept; NotEnoughYarn where there is none."""
        left = yarn / (1 + margin) - self.fixed - self.edges * width
        if left <= 0:
            raise NotEnoughYarn("not enough yarn for the edges and the ends")
        return left / (self.area * width)
