"""Sections: the whole rows of a block with its edges, from selvedge to selvedge, and what they add up to."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import lcm

from counterpane.craft.constructions import Section
from counterpane.craft.constructions.edges import Edges
from counterpane.craft.constructions.gauging import body_gauge, gauge_of, picked_cm
from counterpane.craft.constructions.heights import MOST_ROWS_IN_REPEAT, Height
from counterpane.craft.constructions.joining import joined
from counterpane.craft.constructions.obstacles import RepeatsRunApart, Stuck
from counterpane.craft.constructions.settling import Block, Settled
from counterpane.craft.constructions.textures import Texture
from counterpane.craft.counts import work
from counterpane.craft.measures import Gauge
from counterpane.craft.rows.tree import Row
from counterpane.craft.sizing.lengths import side_of


@dataclass(frozen=True, slots=True)
class Layer:
    """A block as it is worked at the chosen count: its version, the edges beside it and its rows."""

    block: Block
    texture: Texture
    edges: Edges
    height: Height


def sections(settled: Settled, cast_on: int, layers: Sequence[Layer]) -> tuple[Section, ...]:
    """Return the sections from the cast-on up, each with its rows written whole."""
    side_start = _side_start(settled, layers)
    return tuple(_section(settled, layer, _cycle(settled, layer, layers[0], side_start), cast_on) for layer in layers)


def _side_start(settled: Settled, layers: Sequence[Layer]) -> int:
    """Return the row of the piece in which the side borders begin."""
    through = settled.request.corner == "sides" or settled.bottom is None
    return 1 if through else layers[1].height.first_row


def _cycle(settled: Settled, layer: Layer, lowest: Layer, side_start: int) -> tuple[Row, ...]:
    """Return one repeat of whole rows, an even number so that each has its side, or fewer where fewer are worked."""
    edges, first = layer.edges, lowest.height.side
    texture = edges.whole or layer.texture
    repeat = lcm(2, texture.period, edges.selvedge.period, edges.sides.period)
    length = min(repeat, layer.height.rows)
    if length > MOST_ROWS_IN_REPEAT:
        raise Stuck(RepeatsRunApart(layer.block.pointer, repeat))
    rows = []
    for index in range(length):
        number = layer.height.first_row + index
        side = side_of(number, first)
        outer = edges.selvedge.ends(number - 1, first, side)
        inner = ((), ()) if edges.whole else edges.sides.ends(number - side_start, side_of(side_start, first), side)
        middle = texture.rows[index % texture.period]
        parts = joined(outer[0] + inner[0], middle, inner[1] + outer[1], settled.vocabulary)
        rows.append(Row(str(index + 1), parts, side, section=layer.block.name))
    return tuple(rows)


def _section(settled: Settled, layer: Layer, cycle: tuple[Row, ...], before: int) -> Section:
    block, height = layer.block, layer.height
    after = [step.after or 0 for step in work([row.parts for row in cycle], before, settled.vocabulary)]
    passes, rest = divmod(height.rows, len(cycle))
    gauge = gauge_of(settled.request, block.part, settled.vocabulary)
    return Section(
        name=block.name,
        texture=block.part.component.slug,
        cycle=cycle,
        rows=height.rows,
        first_row=height.first_row,
        before=before,
        after=after[rest - 1],
        first_row_side=height.side,
        last_row_side=side_of(height.rows, height.side),
        stitches=passes * sum(after) + sum(after[:rest]),
        cm_width=width_of(settled, block, layer.edges),
        cm_length=gauge.gauge.length(height.rows),
        gauge_in=gauge.texture,
        unwashed_cm=unwashed_of(settled, block, layer.edges, height.rows),
    )


def _across(settled: Settled, block: Block, beside: Edges) -> Iterator[tuple[Gauge, int]]:
    """Give a block and the edges beside it with their gauges and stitches."""
    request, vocabulary = settled.request, settled.vocabulary
    yield gauge_of(request, block.part, vocabulary).gauge, beside.inner
    if request.sides and beside.sides.widths != (0, 0):
        yield gauge_of(request, request.sides, vocabulary).gauge, sum(beside.sides.widths)
    if request.selvedge:
        yield gauge_of(request, request.selvedge, vocabulary).gauge, settled.edge


def width_of(settled: Settled, block: Block, beside: Edges) -> Fraction:
    """Return the width of a block and the edges beside it, part by part."""
    return sum((gauge.width(stitches) for gauge, stitches in _across(settled, block, beside)), Fraction(0))


def unwashed_of(settled: Settled, block: Block, beside: Edges, rows: int) -> tuple[Fraction, Fraction] | None:
    """Return width and length of a block before its first wash; None where a swatch was not counted before its own."""
    parts = [(gauge.before, stitches) for gauge, stitches in _across(settled, block, beside)]
    known = [gauge.width(stitches) for gauge, stitches in parts if gauge is not None]
    own = parts[0][0]
    if own is None or len(known) < len(parts):
        return None
    return sum(known, Fraction(0)), own.length(rows)


def body_width(settled: Settled, made: tuple[Section, ...]) -> Fraction:
    """Return the width of the band whose gauge is the body's own, else of the first, with picked-up side borders."""
    offset = 1 if settled.bottom else 0
    slug = body_gauge(settled.request).texture
    own = [index for index, band in enumerate(settled.bands) if band.part.component.slug == slug]
    band = made[offset + (own[0] if own else 0)]
    return band.cm_width + picked_cm(settled.request, settled.vocabulary)
