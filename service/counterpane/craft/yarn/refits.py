"""Loop length and pace worked out again from pieces that were knitted, weighed and timed; exact fractions.

Each is what all knits took together over what all of them worked: the yarn of all over the loops of all, and the
stitches of all over their minutes. That is the best fit by least squares where a knit may be off by more the larger
it is (a ratio estimator; W. G. Cochran, Sampling Techniques, 1977, chapter 6, from memory).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from counterpane.craft.measures import WHOLE_PCT
from counterpane.craft.yarn.loops import G_M_PER_TEX_MM
from counterpane.craft.yarn.pace import MINUTES, SECONDS, SLOWER, TURNING_S

TURN_S = (TURNING_S[0] + TURNING_S[1]) / 2
"""Seconds of a turn that are taken out of the hours of a knit: the middle of what is known of turning; house."""

METRE_MM = 1000  # By definition.

SURE_FROM = 3
"""Knits from which a refit says something of the next one: two points always agree on some line; house figure."""


@dataclass(frozen=True, slots=True)
class Took:
    """What one knit took, over what it worked: millimetres over loops, or plain stitches over minutes."""

    of: Fraction
    over: Fraction

    @property
    def rate(self) -> Fraction:
        """The one over the other."""
        return self.of / self.over


@dataclass(frozen=True, slots=True)
class Refit:
    """A figure worked out of so many knits, with the least and the greatest that one of them gives by itself."""

    value: Fraction
    knits: int
    least: Fraction
    most: Fraction

    @property
    def apart_pct(self) -> Fraction:
        """How far the knits lie apart, in percent of the figure."""
        return (self.most - self.least) / self.value * WHOLE_PCT


def refit(knits: Sequence[Took]) -> Refit | None:
    """Return the figure of all knits together, None where there is none."""
    if not knits:
        return None
    rates = [each.rate for each in knits]
    value = sum((each.of for each in knits), Fraction(0)) / sum((each.over for each in knits), Fraction(0))
    return Refit(value, len(knits), min(rates), max(rates))


def yarn_taken(metres: Fraction, loops: Fraction) -> Took:
    """Return the millimetres of yarn that a knit took over its loops as of plain stitches, its ends included."""
    return Took(metres * METRE_MM, loops)


def metres_of(grams: Fraction, tex: Fraction) -> Fraction:
    """Return the metres of so many grams of a yarn."""
    return grams * G_M_PER_TEX_MM / tex / METRE_MM


def time_taken(plain: int, slower: int, rows: int, hours: Fraction) -> Took | None:
    """Return the stitches that a knit worked, slower ones for more, over its minutes; None where turning takes it all.

    At the pace that follows, `pace.worked_hours` gives these hours as the middle of its two ends.
    """
    minutes = (hours - rows * TURN_S / SECONDS) * MINUTES
    return Took(plain + slower / SLOWER, minutes) if minutes > 0 else None


def worth(knits: int) -> str:
    """Say what a refit from so many knits is worth."""
    if knits == 1:
        return (
            "It rests on 1 knit: on one pair of hands and one ball. It fits that piece exactly and says nothing of how "
            "far the next may be off: keep the bounds of the plan."
        )
    if knits < SURE_FROM:
        return f"It rests on {knits} knits: that they agree may be chance. Keep the bounds of the plan."
    return f"It rests on {knits} knits; the next may lie as far off as these lie apart, and further."
