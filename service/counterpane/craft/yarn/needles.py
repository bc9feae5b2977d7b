"""Which needle to begin with, and how long a cord holds the stitches."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from counterpane.craft.measures import Gauge
from counterpane.craft.needles import Needle, cord_capacity
from counterpane.craft.yarn.classes import YarnClass


@dataclass(frozen=True, slots=True)
class NeedleAdvice:
    """The needles of the classes of a gauge or a yarn, None where neither is known, and a cord for so many stitches.

    `mm` are least and most, None for an end that no class tells. `cord_cm` is the shortest usual needle on which they
    lie with ease, None where there is none. `by_yarn` says that the classes are those of the yarn's name, and not of a
    gauge in stocking stitch. `knitted_on` are the needles that the gauges were knitted on, each with the slug of its
    texture, None for that of the body.
    """

    classes: tuple[YarnClass, ...]
    mm: tuple[Fraction | None, Fraction | None] | None
    us: tuple[str, str] | None
    stitches: int
    cord_cm: Fraction | None
    by_yarn: bool = False
    knitted_on: tuple[tuple[str | None, Needle], ...] = ()


def needle_advice(found: Sequence[YarnClass], gauge: Gauge, stitches: int, cords: Sequence[Fraction]) -> NeedleAdvice:
    """Advise on needles for so many stitches at a gauge, from the classes of the gauge in stocking stitch."""
    cord = next((length for length in sorted(cords) if cord_capacity(length, gauge).least >= stitches), None)
    if not found:
        return NeedleAdvice((), None, None, stitches, cord)
    ends = found[-1].needle_mm if len(found[-1].needle_mm) > 1 else (found[-1].needle_mm[0], None)
    thin, thick = found[0].needle_mm[0], ends[1]
    return NeedleAdvice(tuple(found), (thin, thick), (found[0].needle_us[0], found[-1].needle_us[-1]), stitches, cord)
