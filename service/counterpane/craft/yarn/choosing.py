"""Which yarn works which part, and what scale a yarn is reckoned by."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from counterpane.craft.component import Component, DerivedVersion, derive
from counterpane.craft.constructions import Part, Plan, PlanRequest
from counterpane.craft.constructions.fabrics import surplus
from counterpane.craft.constructions.gauging import body_gauge, gauge_of
from counterpane.craft.measures import Gauge
from counterpane.craft.sizing.classes import nearest
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.yarn.edges import bind_off_loops, cast_on_loops
from counterpane.craft.yarn.scales import Basis, Scale, scale_by_gauge, scale_by_weighing
from counterpane.craft.yarn.spreads import Spread, total
from counterpane.craft.yarn.tally import loops_of, tally_rows
from counterpane.craft.yarn.values import Weighed, Yarn

BODY = "body"

PLAIN = "stocking-stitch"
"""The slug of plain knitting, for which the loop constants hold."""


class TextureNotWorked(ValueError):
    """A piece was weighed in a texture that the plan does not hold; the text is its slug."""


def yarn_of(yarns: Sequence[Yarn], part: str, row: int = 1, colour: str | None = None) -> int:
    """Return the place of the yarn that works a row of a part, or a stitch of it that names a colour.

    A colour named in the row counts before the part, a yarn of these rows before one of the whole part; the first yarn
    works what no other claims.
    """
    if colour is not None:
        for place, yarn in enumerate(yarns):
            if yarn.colour is not None and yarn.colour.casefold() == colour.casefold():
                return place
    name = BODY if part.startswith(BODY) else part
    ranked = sorted(range(len(yarns)), key=lambda place: (not yarns[place].rows, not yarns[place].parts))
    return next((place for place in ranked if _works(yarns[place], name, row)), 0)


def _works(yarn: Yarn, part: str, row: int) -> bool:
    claims = bool(yarn.parts or yarn.rows)
    here = not yarn.parts or part in yarn.parts
    return claims and here and (not yarn.rows or (row - 1) % yarn.every + 1 in yarn.rows)


def scale_of(plan: Plan, yarn: Yarn, vocabulary: Vocabulary) -> Scale:
    """Return the scale of a yarn by the best that is known: a weighed swatch, an earlier piece, the gauge.

    TextureNotWorked where something was weighed in a texture that is no part of the plan.
    """
    choices: tuple[tuple[Basis, Weighed | None], ...] = (
        ("weighed swatch", yarn.swatch),
        ("earlier piece", yarn.earlier),
    )
    for basis, weighed in choices:
        if weighed is not None:
            return scale_by_weighing(weighed, weighed_loops(plan.request, weighed, vocabulary), yarn, basis)
    gauge, is_plain = plain_gauge(plan.request, vocabulary)
    return scale_by_gauge(gauge, yarn, is_plain)


def plain_gauge(request: PlanRequest, vocabulary: Vocabulary) -> tuple[Gauge, bool]:
    """Return the gauge to reckon loops from, and whether it is of plain (stocking) stitch; else it is the body's.

    One yarn on one needle makes loops of one length whatever the texture, so one gauge serves all parts.
    """
    for gauge in request.gauges:
        if gauge.texture == PLAIN:
            return gauge, True
    for part in request.body:
        own = gauge_of(request, part, vocabulary)
        if not own.borrowed and surplus(part.component, vocabulary) == 1:
            return own.gauge, True
    return body_gauge(request).gauge, False


def weighed_loops(request: PlanRequest, weighed: Weighed, vocabulary: Vocabulary) -> Spread:
    """Return the loops of a weighed piece in its texture, with its cast-on and bind-off where they were weighed too."""
    part = texture_part(request, weighed.texture)
    each = loops_a_stitch(part.component, weighed.stitches, vocabulary)
    loops = each.times(weighed.stitches * weighed.rows)
    if not weighed.edges:
        return loops
    edges = cast_on_loops(request.cast_on.component, weighed.stitches)
    return loops + edges + bind_off_loops(request.bind_off.component, weighed.stitches)


def texture_part(request: PlanRequest, texture: str | None) -> Part:
    """Return the part of a plan that is worked in a texture, the lowest band of the body where none is named."""
    if texture is None:
        return request.body[0]
    for part in (*request.body, request.bottom, request.sides, request.selvedge, request.top):
        if part is not None and part.component.slug == texture:
            return part
    raise TextureNotWorked(texture)


def loops_a_stitch(component: Component, stitches: int, vocabulary: Vocabulary) -> Spread:
    """Return the mean loops of a stitch of a texture, over the count it admits that lies nearest to `stitches`.

    Exactly 1 for a texture whose rows cannot be worked at any count, which no plan holds.
    """
    worked = [(abs(count - stitches), version, count) for version, count in _counts(component, stitches, vocabulary)]
    if not worked:
        return Spread.exactly(1)
    _, version, count = min(worked, key=lambda each: each[0])
    tallies = tally_rows((row.parts for row in version.rows), count, vocabulary)
    loops = total(loops_of(each.stitches, vocabulary) for each in tallies)
    return loops.times(Fraction(1, sum(each.after for each in tallies)))


def _counts(component: Component, stitches: int, vocabulary: Vocabulary) -> list[tuple[DerivedVersion, int]]:
    versions = derive(component, vocabulary).versions
    return [(each, nearest(start, Fraction(stitches))[0]) for each in versions for start in each.starts]
