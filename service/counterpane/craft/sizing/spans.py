"""Sizes that are known as spans: what several sources say of one name, and how a piece measures beside an inside.

A difference is a figure and no judgement: how a blanket is used is a matter of the safety rules alone.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from counterpane.craft.measures import exact, inches

CM_PER = {"cm": Fraction(1), "mm": Fraction(1, 10), "in": inches(Fraction(1))}
"""Centimetres to one of each unit that a size is stated in, by definition."""


@dataclass(frozen=True, slots=True)
class Span:
    """Centimetres from the least to the most; `most` None where nothing bounds it above."""

    least: Fraction
    most: Fraction | None

    def __post_init__(self) -> None:
        """Refuse a span that runs backwards."""
        if self.most is not None and self.most < self.least:
            raise ValueError("a span runs from the smaller to the larger")


def span_of(ends: Iterable[str], unit: str, tolerance: str = "0") -> Span:
    """Return the span of one or more decimal texts in a unit, each give or take a tolerance.

    Raises KeyError for a unit that is not known, ValueError for text that is no decimal number.
    """
    values = [exact(end) for end in ends]
    off = exact(tolerance)
    return Span((min(values) - off) * CM_PER[unit], (max(values) + off) * CM_PER[unit])


def joined(spans: Iterable[Span]) -> Span:
    """Return the span from the least of all to the most of all; ValueError for none.

    A source that names only a least size does not take away the bound that others name.
    """
    found = tuple(spans)
    bounds = [span.most for span in found if span.most is not None]
    return Span(min(span.least for span in found), max(bounds, default=None))


def beyond(size_cm: Fraction, inside: Span) -> Span:
    """Return by how many centimetres a size goes beyond an inside; below 0 where it is the smaller.

    The inside has both bounds.
    """
    if inside.most is None:
        raise ValueError("an inside that nothing bounds is no size")
    return Span(size_cm - inside.most, size_cm - inside.least)
