"""Figures with their basis: a low and a high value, what they count, and what they rest on. Never a bare point.

Those of the trade stand here under the names of their facts in `seeds/facts/behaviour.toml`; a test holds the two
together. None was measured for this program.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

Basis = Literal["published", "borrowed", "common practice", "house", "memory"]

STRENGTH: tuple[Basis, ...] = ("published", "borrowed", "common practice", "house", "memory")
"""What a figure may rest on, the firmest first; house order."""


DEFINITION = "by definition"
"""The source of a figure that is one value because it is what the others are measured by."""

BY_SWATCHES = "the gauges given, each with the error of its reading"
"""The source of a figure that rests on gauges alone: as exact as they are said to be."""

EXACT = (DEFINITION, BY_SWATCHES)
"""Sources of figures that may be one value, whatever the basis."""


@dataclass(frozen=True, slots=True)
class Figure:
    """A range of so many of a unit, exact, with what it rests on; an end of None is not known.

    Only a published figure, one that holds by definition, or one from gauges that are said to be exact may be one
    single value. ValueError for ends that are the wrong way round, and for one bare value otherwise.
    """

    low: Fraction | None
    high: Fraction | None
    unit: str
    basis: Basis
    source: str

    def __post_init__(self) -> None:
        """Refuse a range that is none."""
        if self.low is None or self.high is None:
            return
        if self.low > self.high:
            raise ValueError("the low end of a figure is above its high end")
        if self.low == self.high and self.basis != "published" and self.source not in EXACT:
            raise ValueError("a figure on a weak basis needs a range")

    def times(self, factor: Fraction, unit: str) -> Figure:
        """Return so many times the figure in another unit, the factor not 0; a negative one changes the ends."""
        ends = [None if end is None else end * factor for end in (self.low, self.high)]
        low, high = ends if factor >= 0 else ends[::-1]
        return Figure(low, high, unit, self.basis, self.source)

    def plus(self, number: int) -> Figure:
        """Return the figure with a number added to both ends."""
        low, high = (None if end is None else end + number for end in (self.low, self.high))
        return Figure(low, high, self.unit, self.basis, self.source)

    def over(self, other: Figure, unit: str) -> Figure:
        """Return the quotient of two figures above 0, on the weaker basis of the two."""
        low = None if self.low is None or other.high is None else self.low / other.high
        high = None if self.high is None or other.low is None else self.high / other.low
        return Figure(low, high, unit, weaker(self.basis, other.basis), sources(self, other))

    def __contains__(self, value: Fraction) -> bool:
        """Say whether a value lies in the range; an end that is not known sets no bound."""
        return (self.low is None or self.low <= value) and (self.high is None or value <= self.high)


def weaker(*found: Basis) -> Basis:
    """Return the weakest of several bases."""
    return max(found, key=STRENGTH.index)


def sources(*figures: Figure) -> str:
    """Return the sources of several figures, each once; what holds by definition needs none beside another."""
    found = dict.fromkeys(figure.source for figure in figures)
    return "; ".join(source for source in found if source != DEFINITION or len(found) == 1)


def _from(low: str, high: str, unit: str, basis: Basis, source: str) -> Figure:
    return Figure(Fraction(low), Fraction(high), unit, basis, source)


PRACTICE, MEMORY, HOUSE = "common practice, no source", "from memory", "house"

OF_STOCKING = "of the width of stocking stitch"
ROWS_TO_WIDTH = "rows to the width of a stitch"
RELAXED = "times the relaxed width"

STOCKING_ITSELF = _from("1", "1", OF_STOCKING, "house", DEFINITION)
SIDE_BORDER_PLAIN = _from("4", "5", "cm", "common practice", PRACTICE)
SIDE_BORDER_OTHER = _from("2.5", "4", "cm", "common practice", PRACTICE)
END_BORDER_PLAIN = _from("10", "12", "rows", "common practice", PRACTICE)
END_BORDER_OTHER = _from("6", "10", "rows", "common practice", PRACTICE)
WIDTH_RIB_2X2 = _from("0.6", "0.75", OF_STOCKING, "memory", MEMORY)
WIDTH_RIB_1X1 = _from("0.7", "0.85", OF_STOCKING, "memory", MEMORY)
WIDTH_RIB_OTHER = _from("0.6", "1", OF_STOCKING, "house", "house: from the narrowest rib with a figure to none")
WIDTH_UNKNOWN = _from("0.9", "1.1", OF_STOCKING, "house", "house: within a tenth")
WIDTH_GARTER = _from("1.05", "1.1", OF_STOCKING, "house", "house: about the 22 to 20.5 stitches of common practice")
CABLE_SHARE = _from("1/4", "1/3", "of the crossed stitches", "memory", MEMORY)
STRETCH_RIB_2X2 = _from("1.5", "2", RELAXED, "memory", MEMORY)
SHAPE_STOCKING = _from("1.3", "1.45", ROWS_TO_WIDTH, "memory", MEMORY)
SHAPE_GARTER = _from("1.8", "2.1", ROWS_TO_WIDTH, "memory", MEMORY)
SHAPE_SEED = _from("1.6", "1.9", ROWS_TO_WIDTH, "memory", MEMORY)

FACTS: dict[str, Figure] = {
    "curl-side-border-plain": SIDE_BORDER_PLAIN,
    "curl-side-border-other": SIDE_BORDER_OTHER,
    "curl-end-border-plain": END_BORDER_PLAIN,
    "curl-end-border-other": END_BORDER_OTHER,
    "width-rib-two-by-two": WIDTH_RIB_2X2,
    "width-rib-one-by-one": WIDTH_RIB_1X1,
    "width-rib-other": WIDTH_RIB_OTHER,
    "width-unknown": WIDTH_UNKNOWN,
    "width-garter": WIDTH_GARTER,
    "cable-take-up": CABLE_SHARE,
    "stretch-rib-two-by-two": STRETCH_RIB_2X2,
    "shape-stocking-stitch": SHAPE_STOCKING,
    "shape-garter": SHAPE_GARTER,
    "shape-seed-stitch": SHAPE_SEED,
}
"""The figures of the trade by the names of their facts."""
