"""Needles: one size in three scales, how many stitches a circular one holds, and which way to go after a swatch."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from counterpane.craft.measures import Gauge, inches

TIPS_CM = inches(Fraction(10))
"""Length of both tips of a circular needle, 8 to 10 inches, the longer: a yarn shop's page on circular needles."""

LIES = Fraction(7, 4)
"""Lengths of its cord that lie on a circular needle with ease: the same page."""

CROWDED = Fraction(3)
"""Lengths of its cord that a circular needle holds when crowded: the same page."""


@dataclass(frozen=True, slots=True)
class Needle:
    """One diameter in millimetres with its US number and its old UK number, None where a scale has none."""

    mm: Fraction
    us: str | None = None
    uk: str | None = None


@dataclass(frozen=True, slots=True)
class Capacity:
    """The fewest stitches that reach round a circular needle when joined, and the most it holds."""

    least: int
    most: int


def nearest_needle(mm: Fraction, needles: Iterable[Needle]) -> Needle:
    """Return the needle nearest to a diameter, the thicker on a tie; ValueError where there are none."""
    return min(needles, key=lambda needle: (abs(needle.mm - mm), -needle.mm))


def after_swatch(wanted: Gauge, swatch: Gauge) -> Literal["smaller", "larger", "same"]:
    """Say which needle to try next: a swatch with fewer stitches to the centimetre came out large.

    Craft Yarn Council, "Reading Instructions & Other Basics".
    """
    if swatch.per_cm == wanted.per_cm:
        return "same"
    return "smaller" if swatch.per_cm < wanted.per_cm else "larger"


def circular_capacity(length_cm: Fraction, gauge: Gauge) -> Capacity:
    """Return how many stitches a circular needle of this length holds: from its own length of fabric to twice that.

    Rounded up and down to whole stitches. The rule behind a shop's table; for flat work only the most matters.
    """
    around = length_cm * gauge.per_cm
    return Capacity(-int(-around // 1), int(2 * around // 1))


def cord_capacity(length_cm: Fraction, gauge: Gauge) -> Capacity:
    """Return how many stitches lie on a circular needle of this length with ease, and how many it holds when crowded.

    For flat work: the cord is the length less the tips. Rounded down to whole stitches; 0 where there is no cord.
    """
    cord = max(Fraction(0), length_cm - TIPS_CM) * gauge.per_cm
    return Capacity(int(LIES * cord // 1), int(CROWDED * cord // 1))
