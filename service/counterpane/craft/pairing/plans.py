"""Which parts of a planned blanket meet, and where: its borders at the body, its edges at what they are worked on."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from counterpane.craft.constructions import Part, PlanRequest
from counterpane.craft.pairing.facts import Facts, Place, facts_of
from counterpane.craft.stitches import Vocabulary


@dataclass(frozen=True, slots=True)
class Pair:
    """A fabric and the part that meets it in a place; `pointer` is that part in the request."""

    pointer: str
    place: Place
    fabric: Facts
    other: Facts


def pairs_of(request: PlanRequest, vocabulary: Vocabulary) -> Iterator[Pair]:
    """Give the borders of a request with the bands of the body that they meet, each texture once."""
    bands = [facts_of(band.component, vocabulary) for band in request.body]
    ends: tuple[tuple[str, Part | None, Facts], ...] = (
        ("bottom", request.bottom, bands[0]),
        ("top", request.top, bands[-1]),
    )
    for name, part, band in ends:
        if part is not None:
            yield Pair(f"/parts/{name}", "ends", band, facts_of(part.component, vocabulary))
    if request.sides is not None:
        sides = facts_of(request.sides.component, vocabulary)
        for band in {band.component: band for band in bands}.values():
            yield Pair("/parts/sides", "sides", band, sides)


def ends_of(request: PlanRequest, vocabulary: Vocabulary) -> tuple[Pair, Pair]:
    """Return the cast-on and the bind-off of a request with the fabric that each is worked on."""
    first, last = request.bottom or request.body[0], request.top or request.body[-1]
    below, above = (facts_of(part.component, vocabulary) for part in (first, last))
    cast_on, bind_off = (facts_of(part.component, vocabulary) for part in (request.cast_on, request.bind_off))
    return Pair("/parts/cast_on", "cast-on", below, cast_on), Pair("/parts/bind_off", "bind-off", above, bind_off)
