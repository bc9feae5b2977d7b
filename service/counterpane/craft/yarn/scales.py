"""From loops to metres and grams: by a weighed swatch, by an earlier piece, or by the gauge, in this order of trust."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from counterpane.craft.measures import Gauge
from counterpane.craft.openings import loop_mm
from counterpane.craft.yarn.loops import FULL, WET
from counterpane.craft.yarn.spreads import Spread
from counterpane.craft.yarn.values import Weighed, Yarn

Basis = Literal["this piece", "weighed swatch", "earlier piece", "gauge"]

MM_PER_M = 1000  # By definition.

HANDS = Fraction(5, 100)
"""Share by which a knitter's own hands differ between a swatch and a piece: 3 to 5 %, from memory."""

ONWARD = Fraction(3, 100)
"""The same between the part of a piece that is worked and the rest of it: the low end of 3 to 5 %, from memory."""

EARLIER = Fraction(8, 100)
"""The same between one piece and another; house figure."""

BY_GAUGE = Fraction(10, 100)
"""Share by which the loop length from the gauge of plain knitting may be off; house figure."""

BY_OTHER_GAUGE = Fraction(15, 100)
"""The same where the gauge was not knitted in plain (stocking) stitch; the constants hold within about 15 %."""

SPREADS: dict[Basis, Fraction] = {
    "this piece": ONWARD,
    "weighed swatch": HANDS,
    "earlier piece": EARLIER,
    "gauge": BY_GAUGE,
}

SOURCES: dict[Basis, str] = {
    "this piece": "what this piece has taken, with half a step of the scales and 3 % for the hands (from memory)",
    "weighed swatch": "the weighed swatch, with half a step of the scales and 5 % for the hands (from memory)",
    "earlier piece": "the weighed earlier piece, with half a step of the scales and 8 % for another piece (house)",
    "gauge": "loops of 4.1 stitch widths, wet relaxed: Munden's constant for wool, from memory",
}


@dataclass(frozen=True, slots=True)
class Scale:
    """What one loop of one strand's worth of work takes, all strands together; None where it cannot be known.

    `metres` are of single yarn, so that two strands take twice as many. `spread` is the share by which a sum may be off
    either way. `loop_mm` is the loop length where it is known.
    """

    metres: Spread | None
    grams: Spread | None
    spread: Fraction
    basis: Basis
    source: str
    loop_mm: Spread | None

    def metres_of(self, loops: Spread) -> Spread | None:
        """Return the metres of so many loops, with the spread."""
        return None if self.metres is None else (self.metres * loops).widened(self.spread)

    def grams_of(self, loops: Spread) -> Spread | None:
        """Return the grams of so many loops, with the spread."""
        return None if self.grams is None else (self.grams * loops).widened(self.spread)


def scale_by_gauge(gauge: Gauge, yarn: Yarn, plain: bool) -> Scale:
    """Return the scale from a gauge; `plain` where it was knitted in plain (stocking) stitch."""
    wales = gauge.per_cm * 10
    likely = loop_mm(wales)
    loop = Spread(likely, likely, FULL.wales / WET.wales * likely)
    metres = loop.times(Fraction(yarn.strands, MM_PER_M))
    grams = None if yarn.tex is None else metres.times(yarn.tex / 1000)
    spread = BY_GAUGE if plain else BY_OTHER_GAUGE
    percent = int(spread * 100)
    source = f"{SOURCES['gauge']}; within {percent} % (house)"
    return Scale(metres, grams, spread, "gauge", source, loop)


def scale_by_weighing(weighed: Weighed, loops: Spread, yarn: Yarn, basis: Basis) -> Scale:
    """Return the scale from a weighed piece of so many loops; metres only where the tex of the yarn is known."""
    each = Spread.exactly(weighed.mass_g) / loops
    metres = None if yarn.tex is None else each.times(1000 / yarn.tex)
    loop = None if metres is None else metres.times(Fraction(MM_PER_M, yarn.strands))
    spread = weighed.scale_g / (2 * weighed.mass_g) + SPREADS[basis]
    return Scale(metres, each, spread, basis, SOURCES[basis], loop)
