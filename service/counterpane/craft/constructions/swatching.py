"""A swatch of each fabric of a plan: a small piece of its own, with the cast-on, the edges and the rows of the blanket.

A sampler shows how the parts meet and is too small to measure on; a swatch is large enough, and of one fabric alone.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from math import ceil

from counterpane.craft.constructions import Part, Plan, PlanRequest
from counterpane.craft.constructions.fitting import demands, options, width_cm
from counterpane.craft.constructions.gauging import gauge_of
from counterpane.craft.constructions.making import attempt
from counterpane.craft.constructions.obstacles import NoCommonCount, Obstacle, RepeatsRunApart, Stuck
from counterpane.craft.constructions.settling import settle
from counterpane.craft.constructions.textures import alike, textures_of
from counterpane.craft.stitches import Vocabulary

LEAST_CM = Fraction(15)
"""The least side of a swatch that is to tell a size, in whole repeats with their edges; common practice, no source."""


@dataclass(frozen=True, slots=True)
class Swatch:
    """A swatch of one fabric: where the blanket works it, the piece, and whether its gauge is that of another fabric.

    `places` are "bottom", "sides", "body", "body 2", "top". The counts of a piece whose gauge is borrowed are a guess.
    """

    places: tuple[str, ...]
    part: Part
    piece: Plan
    borrowed: bool

    @property
    def narrow(self) -> bool:
        """Whether the fabric has no count wide enough to measure on."""
        return self.piece.width_cm < LEAST_CM


@dataclass(frozen=True, slots=True)
class NoSwatch:
    """A fabric that makes no piece alone: where the blanket works it, and what stands in the way."""

    places: tuple[str, ...]
    part: Part
    obstacles: tuple[Obstacle, ...]

    @property
    def too_few(self) -> bool:
        """Whether it has too few stitches for the cast-on, the one way in which a part alone has no count."""
        return any(isinstance(obstacle, NoCommonCount) for obstacle in self.obstacles)


@dataclass(frozen=True, slots=True)
class Swatches:
    """The swatches of a plan, and the fabrics that have none."""

    made: tuple[Swatch, ...] = ()
    missing: tuple[NoSwatch, ...] = ()


def swatches(plan: Plan, vocabulary: Vocabulary) -> Swatches:
    """Return a swatch of each fabric of a plan, in order of working; parts of the same rows share one."""
    groups: list[tuple[Part, list[str]]] = []
    for place, part in _parts(plan.request):
        known = next((names for other, names in groups if _same(part, other, vocabulary)), None)
        if known is None:
            groups.append((part, [place]))
        else:
            known.append(place)
    tried = [_alone(plan.request, part, tuple(places), vocabulary) for part, places in groups]
    return Swatches(
        tuple(each for each in tried if isinstance(each, Swatch)),
        tuple(each for each in tried if isinstance(each, NoSwatch)),
    )


def _alone(request: PlanRequest, part: Part, places: tuple[str, ...], vocabulary: Vocabulary) -> Swatch | NoSwatch:
    try:
        return swatch_of(request, part, places, vocabulary)
    except Stuck as stuck:
        return NoSwatch(places, part, stuck.obstacles)


def _parts(request: PlanRequest) -> Iterator[tuple[str, Part]]:
    several = len(request.body) > 1
    bands = [(f"body {index}" if several else "body", part) for index, part in enumerate(request.body, 1)]
    for place, part in (
        ("bottom", request.bottom),
        ("sides", request.sides or request.picked),
        *bands,
        ("top", request.top),
    ):
        if part is not None:
            yield place, part


def _same(one: Part, other: Part, vocabulary: Vocabulary) -> bool:
    return one.component == other.component or alike(one.component, other.component, vocabulary)


def swatch_of(request: PlanRequest, part: Part, places: tuple[str, ...], vocabulary: Vocabulary) -> Swatch:
    """Return the swatch of one part with the edges of a request; Stuck for a part that makes none alone."""
    own = gauge_of(request, part, vocabulary)
    small = replace(
        request,
        bottom=None,
        sides=None,
        picked=None,
        body=(Part(part.component),),
        top=None,
        gauges=(replace(own.gauge, texture=part.component.slug or None), *request.gauges),
        width_cm=LEAST_CM,
        length_cm=LEAST_CM,
    )
    wide = replace(small, width_cm=_least_width(small, vocabulary))
    return Swatch(places, part, _long_enough(wide, vocabulary), own.borrowed)


def _long_enough(request: PlanRequest, vocabulary: Vocabulary) -> Plan:
    """Return a piece of whole repeats; of those of its part alone where they meet the edges anew only after very many.

    Stuck for a request that makes none.
    """
    gauge = request.gauges[0]
    tried = attempt(request, vocabulary)
    if any(isinstance(obstacle, RepeatsRunApart) for obstacle in tried.obstacles):
        (part,) = request.body
        repeat = textures_of(part.component, vocabulary, "/parts/body")[0].period
        repeats = ceil(LEAST_CM * gauge.rows_per_cm / repeat)
        return _made(replace(request, body=(replace(part, rows=repeats * repeat),)), vocabulary)
    piece = _made(request, vocabulary)
    if piece.length_cm < LEAST_CM:
        longer = piece.length_cm + gauge.length(len(piece.sections[0].cycle))
        piece = _made(replace(request, length_cm=longer), vocabulary)
    return piece


def _least_width(request: PlanRequest, vocabulary: Vocabulary) -> Fraction:
    """Return the width of the least count that is wide enough, or of the widest where none is; Stuck without any."""
    settled = settle(request, vocabulary)
    found = [option.counts for option in options(settled)]
    if not found:
        raise Stuck(NoCommonCount(demands(settled), settled.target))
    wanted = -(-settled.target.numerator // settled.target.denominator)
    enough = [count for counts in found if (count := counts.above(wanted)) is not None]
    return width_cm(settled, min(enough) if enough else max(counts.least for counts in found))


def _made(request: PlanRequest, vocabulary: Vocabulary) -> Plan:
    """Return a small piece; Stuck for a request that makes none."""
    tried = attempt(request, vocabulary)
    if tried.plan is None:
        raise Stuck(*tried.obstacles)
    return tried.plan
