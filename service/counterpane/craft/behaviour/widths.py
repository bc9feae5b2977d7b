"""How much wider one part of a plan is than another over the same stitches, and how much lower its rows are.

Where the gauges of both parts are given, what is left open is the reading of the two swatches; where one is borrowed,
the figures of the trade for its texture take its place, and where there is none nothing is known.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from counterpane.craft.behaviour import figures
from counterpane.craft.behaviour.figures import BY_SWATCHES, Figure
from counterpane.craft.behaviour.readings import read_ends
from counterpane.craft.behaviour.textures import Behaviour, behaviour_of
from counterpane.craft.constructions import Part, PlanRequest
from counterpane.craft.constructions.gauging import PartGauge, gauge_of
from counterpane.craft.constructions.textures import alike
from counterpane.craft.measures import Gauge
from counterpane.craft.stitches import Vocabulary

TIMES = "times"


@dataclass(frozen=True, slots=True)
class Ratios:
    """One part against another: its width over the same stitches, and its rows to the height of one row of the other.

    None where nothing is known. `swatched` are the two as the gauges give them, None where a gauge is borrowed.
    """

    width: Figure | None
    rows: Figure | None
    swatched: tuple[Fraction, Fraction] | None = None

    @property
    def likely_width(self) -> Fraction:
        """The width by the gauges, else the middle of the figure; 1 where nothing is known."""
        return self.swatched[0] if self.swatched else _middle(self.width)

    @property
    def likely_rows(self) -> Fraction:
        """The rows by the gauges, else the middle of the figure; 1 where nothing is known."""
        return self.swatched[1] if self.swatched else _middle(self.rows)


def _middle(figure: Figure | None) -> Fraction:
    if figure is None or figure.low is None or figure.high is None:
        return Fraction(1)
    return (figure.low + figure.high) / 2


def ratios(request: PlanRequest, part: Part, other: Part, vocabulary: Vocabulary) -> Ratios | None:
    """Return a part against another one, None where both are one fabric at one gauge."""
    own, against = (gauge_of(request, each, vocabulary) for each in (part, other))
    if alike(part.component, other.component, vocabulary) or (own == against and not own.borrowed):
        return None
    if not own.borrowed and not against.borrowed:
        here, there = own.gauge, against.gauge
        exact = there.per_cm / here.per_cm, here.rows_per_cm / there.rows_per_cm
        return Ratios(_read(here, there), _read_rows(here, there), exact)
    one, two = (behaviour_of(each.component, vocabulary) for each in (part, other))
    return Ratios(_width(one, two), _rows(one, two, against))


def _read(own: Gauge, against: Gauge) -> Figure:
    """Return the width of a stitch at one gauge against that at another, both as far off as a reading may be."""
    (fine, coarse), (finer, coarser) = read_ends(own), read_ends(against)
    return _swatched(coarser.per_cm / fine.per_cm, finer.per_cm / coarse.per_cm)


def _read_rows(own: Gauge, against: Gauge) -> Figure:
    (fine, coarse), (finer, coarser) = read_ends(own), read_ends(against)
    return _swatched(coarse.rows_per_cm / finer.rows_per_cm, fine.rows_per_cm / coarser.rows_per_cm)


def _swatched(low: Fraction, high: Fraction) -> Figure:
    return Figure(low, high, TIMES, "common practice", BY_SWATCHES)


def _width(here: Behaviour, there: Behaviour) -> Figure | None:
    if here.width is None or there.width is None:
        return None
    return here.width.over(there.width, TIMES)


def _rows(here: Behaviour, there: Behaviour, against: PartGauge) -> Figure | None:
    """Return rows to a row from the shape of a part's stitches and the gauge of the other; its width is put in too."""
    if here.shape is None or against.borrowed:
        return None
    wide = (here.width or figures.WIDTH_UNKNOWN).over(there.width or figures.WIDTH_UNKNOWN, TIMES)
    return here.shape.times(against.gauge.per_cm / against.gauge.rows_per_cm, TIMES).over(wide, TIMES)
