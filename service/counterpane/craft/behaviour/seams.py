"""What two parts of a plan do to each other where they meet: frill or pull across, rows that do not keep pace along."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from counterpane.craft.behaviour.extra_rows import ExtraRows, extra_rows
from counterpane.craft.behaviour.figures import Figure
from counterpane.craft.behaviour.places import Place, band_name, band_section
from counterpane.craft.behaviour.take_up import TakeUp, take_up
from counterpane.craft.behaviour.widths import Ratios, ratios
from counterpane.craft.constructions import Plan
from counterpane.craft.constructions.gauging import gauge_of
from counterpane.craft.stitches import Vocabulary

Lies = Literal["across", "along"]


@dataclass(frozen=True, slots=True)
class Seam:
    """Where a part meets a band of the body: `excess` is by how many centimetres the part is the longer there.

    Across, that is the width of an end border over the width of the body between the side borders: above 0 it frills,
    below 0 it pulls the body in. Along, it is the length of a side border worked row for row: below 0 it pulls the body
    up. None where it is not known. `take_up` and `extra_rows` are what evens it out, where that can be told.
    `swatched` says that the gauges of both are given.
    """

    part: str
    body: str
    lies: Lies
    excess: Figure | None
    take_up: TakeUp | None = None
    extra_rows: ExtraRows | None = None
    swatched: bool = False


def seams(plan: Plan, vocabulary: Vocabulary) -> tuple[Seam, ...]:
    """Return the seams of a plan at which two fabrics meet, from the bottom up; those of one fabric are left out."""
    return tuple(_seams(plan, vocabulary))


def _seams(plan: Plan, vocabulary: Vocabulary) -> Iterator[Seam]:
    request, last = plan.request, len(plan.request.body) - 1
    if request.bottom is not None:
        yield from _end(Place(plan, "bottom", 0, vocabulary))
    for band in range(last + 1 if request.sides is not None else 0):
        yield from _side(plan, band, vocabulary)
    for band in range(1, last + 1):
        yield from _between(plan, band, vocabulary)
    if request.top is not None:
        yield from _end(Place(plan, "top", last, vocabulary))


def _end(place: Place) -> Iterator[Seam]:
    request = place.plan.request
    border = place.border
    found = ratios(request, border, request.body[place.band], place.vocabulary) if border else None
    if found is not None:
        excess = _wider(place.plan, place.band, found, place.vocabulary)
        body, by_gauges = band_name(request, place.band), found.swatched is not None
        yield Seam(place.end, body, "across", excess, take_up(place, found), None, by_gauges)


def _between(plan: Plan, band: int, vocabulary: Vocabulary) -> Iterator[Seam]:
    request = plan.request
    found = ratios(request, request.body[band], request.body[band - 1], vocabulary)
    if found is not None:
        excess = _wider(plan, band - 1, found, vocabulary)
        yield Seam(band_name(request, band), band_name(request, band - 1), "across", excess)


def _wider(plan: Plan, band: int, found: Ratios, vocabulary: Vocabulary) -> Figure | None:
    """Return by how many centimetres a part over the stitches of a band is wider than the band."""
    if found.width is None:
        return None
    gauge = gauge_of(plan.request, plan.request.body[band], vocabulary).gauge
    return found.width.plus(-1).times(gauge.width(plan.counts.body[band]), "cm")


def _side(plan: Plan, band: int, vocabulary: Vocabulary) -> Iterator[Seam]:
    request = plan.request
    found = ratios(request, request.sides, request.body[band], vocabulary) if request.sides else None
    if found is None:
        return
    longer = None
    if found.rows is not None:
        longer = _inverse(found.rows).plus(-1).times(band_section(plan, band).cm_length, "cm")
    more, by_gauges = extra_rows(plan, band, found, vocabulary), found.swatched is not None
    yield Seam("sides", band_name(request, band), "along", longer, None, more, by_gauges)


def _inverse(figure: Figure) -> Figure:
    one = Figure(Fraction(1), Fraction(1), figure.unit, "published", figure.source)
    return one.over(figure, figure.unit)
