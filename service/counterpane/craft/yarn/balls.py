"""Balls to buy, their joins, and the ends that these leave: exact, for each colour by itself."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from counterpane.craft.yarn.spreads import Spread
from counterpane.craft.yarn.values import Yarn

ENDS_A_JOIN = 2
"""Ends where a ball is joined to the one before; common practice, no source."""

ENDS_A_PIECE = 2
"""Ends of a stretch that is worked without cutting the yarn: where it begins and where it stops."""


@dataclass(frozen=True, slots=True)
class Balls:
    """Balls of one yarn: those taken by the low, likely and high end of the estimate, and those to buy.

    `buy` covers the likely amount with its margin and the high end, whichever is more.
    """

    low: int
    likely: int
    high: int
    buy: int


def balls(amount: Fraction, ball: Fraction, margin: Fraction = Fraction(0)) -> int:
    """Return the balls that hold an amount and its margin, in one unit: an exact fit stays exact."""
    return -int(-(amount * (1 + margin)) // ball)


def balls_of(yarn: Yarn, metres: Spread | None, grams: Spread | None) -> Balls | None:
    """Return the balls of an amount by the metres of a ball, else by its grams; None where neither is known."""
    found = by_the_ball(yarn, metres, grams)
    if found is None:
        return None
    amount, ball = found
    low, likely, high = (balls(each, ball) for each in (amount.low, amount.likely, amount.high))
    return Balls(low, likely, high, max(balls(amount.likely, ball, yarn.margin), high))


def by_the_ball(yarn: Yarn, metres: Spread | None, grams: Spread | None) -> tuple[Spread, Fraction] | None:
    """Return an amount with what one ball holds of it, in metres where both are known, else in grams."""
    for amount, ball in ((metres, yarn.ball_m), (grams, yarn.ball_g)):
        if amount is not None and ball is not None:
            return amount, ball
    return None


def joins(worked: Fraction, end: Fraction, ball: Fraction) -> int | None:
    """Return how often a ball is joined on, where each ball gives two ends and the rest is worked.

    All in one unit. None where a ball is no longer than its own two ends.
    """
    inside = ball - ENDS_A_JOIN * end
    return None if inside <= 0 else max(0, balls(worked, inside) - 1)


def ends_of(joined: int, pieces: int = 1) -> int:
    """Return the ends to weave in of a yarn that is joined so often, and cut so that it is worked in so many pieces."""
    return ENDS_A_PIECE * pieces + ENDS_A_JOIN * joined
