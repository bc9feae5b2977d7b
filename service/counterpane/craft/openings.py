"""Estimates of openings, strands and loops from a gauge: a house model in exact fractions, never a measurement.

Lengths are millimetres. An estimate may ask for a rod; it never clears a fabric, since yarn is drawn from neighbours.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from fractions import Fraction
from functools import reduce
from math import isqrt
from typing import Literal

from counterpane.craft.measures import Gauge
from counterpane.craft.rows.tree import Group, IntoOne, Marker, Node, OpenRepeat, Work

PI = Fraction("3.14159265358979323846")
"""The first 20 decimals of the circle's number, OEIS A000796."""

IN_SQUARE = 4
"""The area of a circle is pi / 4 of the square of its diameter, by definition of pi."""

LOOP_WIDTHS = Fraction(41, 10)
"""Yarn in one plain loop, in stitch widths, wet relaxed: Munden's constant, from memory; see the gauge facts."""

LOOP_HEIGHTS = Fraction(53, 10)
"""Yarn in one plain loop, in row heights, wet relaxed: Munden's constant, from memory; see the gauge facts."""

OPENING_STITCHES = frozenset({"yo", "yo wrapped twice"})
"""The stitches of the vocabulary that leave an opening on purpose."""

WRAPS = {"yo wrapped twice": 2}
"""Stitches that count as several of their kind: a yarn-over wrapped twice has the yarn of two in one opening."""

SLIPPED = frozenset({"sl"})
"""The stitches that leave the yarn lying past them."""

THROUGH = frozenset({"wyif", "wyib"})
"""Movements of the yarn, which neither make a run nor end one."""

ROOT_DECIMALS = 9
"""Square roots are cut off after this many decimals of a millimetre; house figure."""

Verdict = Literal["below", "above", "measure with a rod"]


@dataclass(frozen=True, slots=True)
class Span:
    """A least and a greatest value in millimetres; `low` is None where it cannot be told."""

    low: Fraction | None
    high: Fraction

    def against(self, limit: Fraction) -> Verdict:
        """Judge an estimate: below the limit throughout, above it throughout, or undecided."""
        if self.high < limit:
            return "below"
        if self.low is not None and self.low >= limit:
            return "above"
        return "measure with a rod"


def stitch_pitch_mm(gauge: Gauge) -> Fraction:
    """Return the width of one stitch."""
    return 10 / gauge.per_cm


def row_pitch_mm(gauge: Gauge) -> Fraction:
    """Return the height of one row."""
    return 10 / gauge.rows_per_cm


def loop_mm(sts_10cm: Fraction) -> Fraction:
    """Return the yarn in one plain loop at so many stitches to 10 cm."""
    return LOOP_WIDTHS * 100 / sts_10cm


def half_loop_mm(sts_10cm: Fraction) -> Fraction:
    """Return the diameter of a rod that half a plain loop is drawn round."""
    return loop_mm(sts_10cm) / 2 / PI


def opening_mm(yarn_overs: int, gauge: Gauge, yarn_mm: Fraction | None = None) -> Span:
    """Estimate the opening that so many yarn-overs side by side leave; house model.

    The low end is the circle of the cells' area less a yarn diameter, at least 0, and None where no diameter is given;
    the high end is the loops of the yarn-overs and a stitch's width, drawn round a rod. Where rows are so high that the
    cells tell the larger of the two, they are the high end.
    """
    pitch = stitch_pitch_mm(gauge)
    high = (yarn_overs * LOOP_WIDTHS * pitch + pitch) / PI
    if yarn_mm is None:
        return Span(None, high)
    circle = root(IN_SQUARE * yarn_overs * pitch * row_pitch_mm(gauge) / PI)
    cells = max(circle - yarn_mm, Fraction(0))
    return Span(min(cells, high), max(cells, high))


def strand_mm(stitches: int, gauge: Gauge) -> Span:
    """Estimate the strand that lies past so many slipped stitches: from their own widths to one width more."""
    pitch = stitch_pitch_mm(gauge)
    return Span(stitches * pitch, (stitches + 1) * pitch)


def root(value: Fraction) -> Fraction:
    """Return the square root, cut off after `ROOT_DECIMALS` decimals."""
    scale = 10**ROOT_DECIMALS
    return Fraction(isqrt(value.numerator * scale**2 // value.denominator), scale)


@dataclass(frozen=True, slots=True)
class _Stretch:
    """How many of the sought stitches stand at the start, at the end and at most in a row of workings.

    `whole` says that there is nothing else in it.
    """

    head: int
    tail: int
    most: int
    whole: bool

    def then(self, after: _Stretch) -> _Stretch:
        return _Stretch(
            self.head + (after.head if self.whole else 0),
            after.tail + (self.tail if after.whole else 0),
            max(self.most, after.most, self.tail + after.head),
            self.whole and after.whole,
        )

    def times(self, times: int) -> _Stretch:
        if self.whole:
            return _Stretch(self.head * times, self.tail * times, self.most * times, True)
        return self.then(self) if times > 1 else self


_NOTHING = _Stretch(0, 0, 0, True)
_OTHER = _Stretch(0, 0, 0, False)


def longest_run(parts: Iterable[Node], stitches: Collection[str], across: int) -> int:
    """Return how many of these stitches are worked side by side at most in a row over `across` stitches.

    Costs no more for more stitches. A repeat without an end counts as worked at least twice, and once per stitch of the
    row where it holds nothing else.
    """
    return _stretch(tuple(parts), stitches, across).most


def _stretch(parts: tuple[Node, ...], stitches: Collection[str], across: int) -> _Stretch:
    each = (_node(part, stitches, across) for part in parts)
    return reduce(_Stretch.then, each, _NOTHING)


def _node(node: Node, stitches: Collection[str], across: int) -> _Stretch:
    match node:
        case Work(stitch, times):
            if stitch in stitches:
                run = times * WRAPS.get(stitch, 1)
                return _Stretch(run, run, run, True)
            return _NOTHING if stitch in THROUGH else _OTHER
        case Marker():
            return _NOTHING
        case Group(parts, times):
            return _stretch(parts, stitches, across).times(times)
        case IntoOne(parts):
            return _stretch(parts, stitches, across)
        case OpenRepeat(parts, last=last):
            every = _stretch(parts, stitches, across)
            repeated = every.times(across if every.whole else 2)
            return repeated if last is None else repeated.then(_stretch(last, stitches, across))
        case _:
            return _OTHER
