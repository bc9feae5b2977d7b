"""The one-piece blanket: borders, selvedges and body worked together from the cast-on to the bind-off."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from math import lcm

from counterpane.craft.constructions import Counts, Give, Nearby, Plan, PlanRequest, Section
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.edges import Edges, edges_beside
from counterpane.craft.constructions.fitting import (
    Option,
    best,
    nearest_counts,
    options,
    smallest,
    width_cm,
)
from counterpane.craft.constructions.gauging import PartGauge, body_gauge, gauge_of, give
from counterpane.craft.constructions.heights import heights
from counterpane.craft.constructions.obstacles import Stuck, TooLarge, WidthOutOfReach
from counterpane.craft.constructions.settling import Block, Settled, settle
from counterpane.craft.constructions.stacking import Layer, body_width, sections, unwashed_of, width_of
from counterpane.craft.measures import Gauge
from counterpane.craft.stitches import Vocabulary

NEAREST = 5
"""Counts listed beside the chosen one; house figure."""

TOO_FAR = Fraction(1, 20)
"""Share of the wanted width by which the nearest count may miss it beyond half a repeat; house figure."""


MOST_STITCHES = 10**18
"""Stitches of a piece from which it is refused: the largest numbers that answers hold; house figure."""


def arrange(request: PlanRequest, vocabulary: Vocabulary) -> Attempt:
    """Work out a one-piece blanket, or find out why there is none; nothing is raised for what cannot be made."""
    try:
        settled = settle(request, vocabulary)
        found = options(settled)
        cast_on, option = best(settled, found)
        _refuse_width(settled, cast_on, option)
        plan = _plan(settled, found, cast_on, option)
        if plan.stitches_total >= MOST_STITCHES:
            raise Stuck(TooLarge(plan.stitches_total, MOST_STITCHES))
        return Attempt(request, vocabulary, plan)
    except Stuck as stuck:
        return Attempt(request, vocabulary, None, stuck.obstacles)


def _refuse_width(settled: Settled, cast_on: int, option: Option) -> None:
    off = abs(cast_on - settled.target)
    if off > max(Fraction(option.counts.of, 2), settled.target * TOO_FAR):
        raise Stuck(WidthOutOfReach(cast_on, width_cm(settled, cast_on), settled.request.width_cm))


def _layers(settled: Settled, cast_on: int, versions: tuple[int, ...]) -> tuple[Layer, ...]:
    """Return each block at a count: its version, the edges beside it and its rows."""
    textures = tuple(block.textures[number] for block, number in zip(settled.blocks, versions, strict=True))
    edges = edges_beside(settled, cast_on)
    rows = heights(settled, textures, edges)
    return tuple(Layer(*each) for each in zip(settled.blocks, textures, edges, rows, strict=True))


def _plan(settled: Settled, found: tuple[Option, ...], cast_on: int, option: Option) -> Plan:
    near = nearest_counts(settled, found, NEAREST)
    layers = _layers(settled, cast_on, option.versions)
    return _measured(settled, cast_on, layers, tuple(_nearby(settled, count) for count in near))


def _nearby(settled: Settled, count: int) -> Nearby:
    width = width_cm(settled, count)
    return Nearby(count, width, width - settled.request.width_cm)


def _measured(settled: Settled, cast_on: int, layers: Sequence[Layer], near: tuple[Nearby, ...]) -> Plan:
    made = sections(settled, cast_on, layers)
    # The stitches of a bind-off are the loops it takes; a cast-on makes its loops and works none.
    total = sum(section.stitches for section in made) + made[-1].after
    return Plan(
        request=settled.request,
        counts=_counts(settled, cast_on, layers),
        sections=made,
        width_cm=body_width(settled, made),
        length_cm=sum((section.cm_length for section in made), Fraction(0)),
        width_give=_width_give(settled, cast_on),
        length_give=_length_give(settled, made),
        nearest=near,
        stitches_total=total,
    )


def _counts(settled: Settled, cast_on: int, layers: Sequence[Layer]) -> Counts:
    bands = [layer for layer in layers if layer.block in settled.bands]
    body = tuple(layer.edges.inner for layer in bands)
    repeats = tuple(layer.texture.repeats(layer.edges.inner) for layer in bands)
    return Counts(cast_on, settled.sides, settled.selvedge.widths[0], body, repeats)


def _width_give(settled: Settled, cast_on: int) -> Give:
    """Return how far reading errors of the swatches let the width of the body be off."""
    request, vocabulary = settled.request, settled.vocabulary
    body = cast_on - settled.edge - 2 * settled.sides
    parts: list[tuple[PartGauge, int]] = [(body_gauge(request), body)]
    parts += [(gauge_of(request, request.sides, vocabulary), 2 * settled.sides)] if request.sides else []
    parts += [(gauge_of(request, request.selvedge, vocabulary), settled.edge)] if request.selvedge else []
    across = [(part.gauge, stitches, part.gauge.stitches) for part, stitches in parts]
    if request.picked:
        outwards = gauge_of(request, request.picked, vocabulary).gauge
        across.append((outwards, 2 * (request.picked.rows or 0), outwards.rows))
    return give(across)


def _length_give(settled: Settled, made: Sequence[Section]) -> Give:
    parts = []
    for block, section in zip(settled.blocks, made, strict=True):
        gauge = gauge_of(settled.request, block.part, settled.vocabulary).gauge
        parts.append((gauge, section.rows, gauge.rows))
    return give(parts)


def remeasured(plan: Plan, gauges: tuple[Gauge, ...], vocabulary: Vocabulary) -> Plan:
    """Return the same stitches and rows measured by other gauges: another size, and no counts near it."""
    settled = settle(replace(plan.request, gauges=gauges), vocabulary)
    cast_on = plan.counts.cast_on
    beside = edges_beside(settled, cast_on)
    blocks = zip(settled.blocks, beside, plan.sections, strict=True)
    made = tuple(_measured_again(settled, block, edges, section) for block, edges, section in blocks)
    return replace(
        plan,
        request=settled.request,
        sections=made,
        width_cm=body_width(settled, made),
        length_cm=sum((section.cm_length for section in made), Fraction(0)),
        width_give=_width_give(settled, cast_on),
        length_give=_length_give(settled, made),
        nearest=(),
        findings=(),
    )


def _measured_again(settled: Settled, block: Block, edges: Edges, section: Section) -> Section:
    own = gauge_of(settled.request, block.part, settled.vocabulary).gauge
    return replace(
        section,
        cm_width=width_of(settled, block, edges),
        cm_length=own.length(section.rows),
        gauge_in=own.texture,
        unwashed_cm=unwashed_of(settled, block, edges, section.rows),
    )


def sampler(plan: Plan, vocabulary: Vocabulary) -> Plan:
    """Return the smallest piece that shows every transition of a plan.

    It has the least cast-on that takes the same versions of all parts, one vertical repeat of each band, and borders of
    one repeat; each part stops at the row of its repeat at which the plan's own stops.
    """
    settled = settle(plan.request, vocabulary)
    found = options(settled)
    _, option = best(settled, found)
    layers = _layers(settled, plan.counts.cast_on, option.versions)
    small = smallest(found, option.versions)
    return _measured(settled, small, _shortened(settled, small, layers), ())


def _shortened(settled: Settled, cast_on: int, layers: Sequence[Layer]) -> tuple[Layer, ...]:
    row, done = 1, []
    for layer, beside in zip(layers, edges_beside(settled, cast_on), strict=True):
        repeat = lcm(2, layer.texture.period, beside.selvedge.period, beside.sides.period)
        full = layer.height.rows
        rows = full if full <= repeat else repeat + full % repeat
        done.append(replace(layer, edges=beside, height=replace(layer.height, rows=rows, first_row=row)))
        row += rows
    return tuple(done)
