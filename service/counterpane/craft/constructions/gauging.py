"""Which gauge counts for which part: its own where it is known, else the body's, and then it is said to be borrowed."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from counterpane.craft.component import Component
from counterpane.craft.constructions import Give, Part, PlanRequest
from counterpane.craft.constructions.textures import alike
from counterpane.craft.measures import Gauge, shown
from counterpane.craft.sizing.swatch import spread_squared, tolerance, worst_case
from counterpane.craft.stitches import Vocabulary

ZERO = Fraction(0)


@dataclass(frozen=True, slots=True)
class PartGauge:
    """A gauge as it is used for a part; `borrowed` where it was knitted in another texture."""

    gauge: Gauge
    borrowed: bool

    @property
    def texture(self) -> str | None:
        """The texture it was knitted in, None where that was not said."""
        return self.gauge.texture


def give(parts: Iterable[tuple[Gauge, int, Fraction]]) -> Give:
    """Return how far a sum of sizes may be off; those that rest on one swatch are off together.

    Each part is a gauge, the stitches or rows worked in it, and how many of them its swatch counted.
    """
    worked: dict[tuple[Gauge, Fraction], int] = {}
    for gauge, number, count in parts:
        worked[gauge, count] = worked.get((gauge, count), 0) + number
    spread = ((number * gauge.over_cm / count, _spread(gauge, count)) for (gauge, count), number in worked.items())
    worst = [worst_case(number, count, gauge.over_cm, gauge.reading) for (gauge, count), number in worked.items()]
    most = [high for _, high in worst if high is not None]
    bounded = len(most) == len(worst)
    return Give(tolerance(spread), (sum((low for low, _ in worst), ZERO), sum(most, ZERO) if bounded else None))


def _spread(gauge: Gauge, count: Fraction) -> Fraction:
    return spread_squared(count, gauge.over_cm, gauge.reading)


def said(gauge: Gauge) -> str:
    """Say a gauge in a knitter's words: "22 stitches and 30 rows over 10 cm"; decimals to 0.1, half up."""
    one = gauge.one
    stitches, rows, over = (shown(number).removesuffix(".0") for number in (one.stitches, one.rows, one.over_cm))
    return f"{stitches} stitches and {rows} rows over {over} cm"


def body_gauge(request: PlanRequest) -> PartGauge:
    """Return the gauge of the body: one that names a body's texture, else one that names none, else the first."""
    slugs = [part.component.slug for part in request.body if part.component.slug]
    named = [gauge for gauge in request.gauges if gauge.texture in slugs]
    unnamed = [gauge for gauge in request.gauges if gauge.texture is None]
    for gauge in (*named, *unnamed):
        return PartGauge(gauge, False)
    return PartGauge(request.gauges[0], True)


def gauge_of(request: PlanRequest, part: Part, vocabulary: Vocabulary) -> PartGauge:
    """Return the gauge knitted in a part's own texture, or the body's where that is the same or none is known."""
    slug = part.component.slug
    for gauge in sorted(request.gauges, key=lambda gauge: gauge.texture != slug):
        if gauge.texture is not None and any(_same(part, other, vocabulary) for other in _named(request, gauge)):
            return PartGauge(gauge, False)
    body = body_gauge(request)
    own = not body.borrowed and body.texture is None and _same(part, request.body[0], vocabulary)
    return body if own else PartGauge(body.gauge, True)


def picked_cm(request: PlanRequest, vocabulary: Vocabulary) -> Fraction:
    """Return the width of both picked-up side borders: their rows by their own gauge."""
    part = request.picked
    return ZERO if part is None else gauge_of(request, part, vocabulary).gauge.length(2 * (part.rows or 0))


def parts_of(request: PlanRequest) -> tuple[Part, ...]:
    """Return the parts of a request that are worked in rows."""
    ends = (request.bottom, request.sides, request.picked, request.selvedge, request.top)
    return (*request.body, *(part for part in ends if part))


def _named(request: PlanRequest, gauge: Gauge) -> tuple[Part, ...]:
    return tuple(part for part in parts_of(request) if part.component.slug == gauge.texture)


def _same(part: Part, other: Part, vocabulary: Vocabulary) -> bool:
    return part.component == other.component or alike(part.component, other.component, vocabulary)


def own_gauges(request: PlanRequest, knitted: Mapping[str, Component], vocabulary: Vocabulary) -> tuple[Gauge, ...]:
    """Return the gauges of a request, those knitted in one of these textures under the names of equal parts.

    A body in words has no name: its gauge is then the one that names no texture.
    """
    added = []
    for gauge in request.gauges:
        if gauge.texture is None or gauge.texture not in knitted:
            continue
        for part in parts_of(request):
            named = part.component.slug or part == request.body[0]
            if named and alike(knitted[gauge.texture], part.component, vocabulary):
                added.append(replace(gauge, texture=part.component.slug or None))
    return tuple(dict.fromkeys((*request.gauges, *added)))
