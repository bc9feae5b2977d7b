"""Which gauge counts for which part: its own where it is known, else the body's, and then it is said to be borrowed."""

from __future__ import annotations

from dataclasses import dataclass

from counterpane.craft.constructions import Part, PlanRequest
from counterpane.craft.constructions.textures import alike
from counterpane.craft.measures import Gauge
from counterpane.craft.stitches import Vocabulary


@dataclass(frozen=True, slots=True)
class PartGauge:
    """A gauge as it is used for a part; `borrowed` where it was knitted in another texture."""

    gauge: Gauge
    borrowed: bool

    @property
    def texture(self) -> str | None:
        """The texture it was knitted in, None where that was not said."""
        return self.gauge.texture


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
    for gauge in request.gauges:
        if gauge.texture is not None and gauge.texture == part.component.slug:
            return PartGauge(gauge, False)
    body = body_gauge(request)
    own = any(alike(part.component, band.component, vocabulary) for band in _measured(request, body))
    return body if own else PartGauge(body.gauge, True)


def _measured(request: PlanRequest, body: PartGauge) -> tuple[Part, ...]:
    """Return the bands that the body's gauge is taken to be of: those it names, else the first."""
    if body.borrowed:
        return ()
    named = tuple(band for band in request.body if band.component.slug == body.texture)
    return named or request.body[:1]
