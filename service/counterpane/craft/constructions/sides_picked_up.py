"""The blanket with side borders picked up: the middle in one piece, then a border outwards along each long edge."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from math import lcm

from counterpane.craft.constructions import Part, PickedEdge, Plan, PlanRequest, Section, one_piece
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.gauging import gauge_of
from counterpane.craft.constructions.heights import MOST_ROWS_IN_REPEAT
from counterpane.craft.constructions.obstacles import (
    DoesNotJoin,
    NotTaken,
    Obstacle,
    RepeatsRunApart,
    Stuck,
    TooLarge,
    WrongKind,
)
from counterpane.craft.constructions.picking import Place, Stretch, dealt
from counterpane.craft.constructions.settling import border_rows
from counterpane.craft.constructions.textures import Texture, textures_of
from counterpane.craft.counts import work
from counterpane.craft.measures import Gauge
from counterpane.craft.rows.tree import Group, Node, OpenRepeat, Row, Work
from counterpane.craft.sizing.classes import nearest_of
from counterpane.craft.sizing.lengths import side_of
from counterpane.craft.stitches import Vocabulary

POINTER = "/parts/sides"

YARN_MOVES = ("wyif", "wyib")
"""Words that move the yarn and work no stitch."""

TOO_FAR = Fraction(1, 20)
"""Share of the picks needed by which the nearest count may miss them beyond half a repeat; house figure."""


def arrange(request: PlanRequest, vocabulary: Vocabulary) -> Attempt:
    """Work out the middle and what is picked up along it, or find out why there is none; nothing is raised."""
    try:
        settled = _settled(request, vocabulary)
        middle = one_piece.arrange(settled, vocabulary)
        if middle.plan is None or settled.picked is None:
            return middle
        plan = _with_borders(middle.plan, settled.picked, vocabulary)
        if plan.stitches_total >= one_piece.MOST_STITCHES:
            raise Stuck(TooLarge(plan.stitches_total, one_piece.MOST_STITCHES))
        return replace(middle, plan=plan)
    except Stuck as stuck:
        return Attempt(request, vocabulary, None, stuck.obstacles)


def _settled(request: PlanRequest, vocabulary: Vocabulary) -> PlanRequest:
    """Return the request with the rows of its picked-up borders; Stuck where they cannot be worked outwards."""
    part = request.picked
    if part is None:
        return request
    refused = tuple(_refused(part))
    if refused:
        raise Stuck(*refused)
    textures = textures_of(part.component, vocabulary, POINTER)
    return replace(request, picked=replace(part, rows=border_rows(part, textures, POINTER)))


def _refused(part: Part) -> Iterator[Obstacle]:
    if part.component.kind in ("cast-on", "bind-off"):
        yield WrongKind(POINTER, part.component.slug, part.component.kind)
    for field in ("stitches", "left"):
        if getattr(part, field) is not None:
            yield NotTaken(f"{POINTER}/{field}", field, "picked-up sides")


def _with_borders(middle: Plan, part: Part, vocabulary: Vocabulary) -> Plan:
    upwards = stretches(middle, part, vocabulary)
    textures = textures_of(part.component, vocabulary, POINTER)
    picks, texture = _picks(upwards, textures)
    dealt_out = dealt(picks, [each.need for each in upwards], [each.places for each in upwards])
    along = tuple(replace(each, picks=count) for each, count in zip(upwards, dealt_out, strict=True))
    section = _border(middle.request, part, texture, picks, vocabulary)
    # With the RS facing one works from right to left: down the left edge, and up the right one.
    edges = (
        PickedEdge("left", picks, along[::-1], replace(section, name="left border")),
        PickedEdge("right", picks, along, replace(section, name="right border")),
    )
    more = sum(edge.picks + edge.border.stitches + edge.border.after for edge in edges)
    return replace(middle, picked=edges, stitches_total=middle.stitches_total + more)


def stretches(middle: Plan, part: Part, vocabulary: Vocabulary) -> tuple[Stretch, ...]:
    """Return the stretches of a long edge from the cast-on up, with what a border needs of each."""
    request = middle.request
    border = gauge_of(request, part, vocabulary).gauge
    found = []
    worked = [part for part in (request.bottom, *request.body, request.top) if part is not None]
    for section, across in zip(middle.sections, worked, strict=True):
        own = gauge_of(request, across, vocabulary)
        need = own.gauge.length(section.rows) * border.per_cm
        found.append(Stretch(section.name, section.rows, _place(section), need, own.borrowed))
    return tuple(found)


def _place(section: Section) -> Place:
    """Return what the edge of a section offers: chains where a row begins or ends slipped, ridges where all is knit."""
    outer = {end for row in section.cycle for end in (_outer(row.parts), _outer(row.parts[::-1], -1))}
    if "sl" in outer:
        return "chain"
    return "ridge" if outer == {"k"} else "row"


def _outer(parts: Sequence[Node], end: int = 0) -> str | None:
    """Return the first stitch of a row, or the last one of a row given backwards; None where it is none by itself."""
    node = next((node for node in parts if not (isinstance(node, Work) and node.stitch in YARN_MOVES)), None)
    if isinstance(node, Group | OpenRepeat):
        return _outer(node.parts[::-1] if end else node.parts, end)
    return node.stitch if isinstance(node, Work) else None


def _picks(along: Sequence[Stretch], textures: Sequence[Texture]) -> tuple[int, Texture]:
    """Return the count nearest what the edge needs and has places for, with the rows that work over it."""
    need, places = sum((each.need for each in along), Fraction(0)), sum(each.places for each in along)
    starts = [start for texture in textures for start in texture.starts]
    near = [count for count in nearest_of(starts, min(need, Fraction(places))) if count <= places]
    below = [found for start in starts if (found := start.below(places)) is not None]
    count = next(iter(near), None) or max(below, default=None)
    if count is None:
        raise Stuck(DoesNotJoin(POINTER, f"takes no count of stitches for which the edge has the {places} places"))
    texture = next(texture for texture in textures if texture.admits(count))
    widest = max(start.of for start in texture.starts)
    if abs(count - min(need, Fraction(places))) > max(Fraction(widest, 2), need * TOO_FAR, Fraction(1)):
        why = f"works over {count} stitches at the nearest, and the long edge needs {round(need)}"
        raise Stuck(DoesNotJoin(POINTER, why))
    return count, texture


def _border(request: PlanRequest, part: Part, texture: Texture, picks: int, vocabulary: Vocabulary) -> Section:
    rows = part.rows or 0
    cycle = _cycle(texture, picks, rows, vocabulary)
    after = [step.after or 0 for step in work([row.parts for row in cycle], picks, vocabulary)]
    passes, rest = divmod(rows, len(cycle))
    own = gauge_of(request, part, vocabulary)
    return Section(
        name="border",
        texture=part.component.slug,
        cycle=cycle,
        rows=rows,
        first_row=1,
        before=picks,
        after=after[rest - 1],
        first_row_side="WS",
        last_row_side=side_of(rows, "WS"),
        stitches=passes * sum(after) + sum(after[:rest]),
        cm_width=own.gauge.width(picks),
        cm_length=own.gauge.length(rows),
        gauge_in=own.texture,
        unwashed_cm=_unwashed(own.gauge, picks, rows),
    )


def _unwashed(gauge: Gauge, stitches: int, rows: int) -> tuple[Fraction, Fraction] | None:
    before = gauge.before
    return None if before is None else (before.width(stitches), before.length(rows))


def _cycle(texture: Texture, picks: int, rows: int, vocabulary: Vocabulary) -> tuple[Row, ...]:
    """Return the rows of a border from the WS row after the pick-up on.

    Rows that begin on the RS and do not look alike begin with the last of them, which is a WS row.
    """
    repeat = lcm(2, texture.period)
    length = min(repeat, rows)
    if length > MOST_ROWS_IN_REPEAT:
        raise Stuck(RepeatsRunApart(POINTER, repeat))
    first = texture.period - 1 if texture.first_side == "RS" and texture.period % 2 == 0 else 0
    if first:
        counts = [picks, *(step.after for step in work(texture.rows, picks, vocabulary))]
        if counts[first] != picks:
            raise Stuck(DoesNotJoin(POINTER, "changes its count in the WS row with which a picked-up border begins"))
    middle = (texture.rows[(first + index) % texture.period] for index in range(length))
    return tuple(
        Row(str(number), parts, side_of(number, "WS"), section="border") for number, parts in enumerate(middle, 1)
    )


def remeasured(plan: Plan, gauges: tuple[Gauge, ...], vocabulary: Vocabulary) -> Plan:
    """Return the same stitches and rows measured by other gauges, the picks of each stretch too."""
    middle = one_piece.remeasured(plan, gauges, vocabulary)
    part = middle.request.picked
    if part is None:
        return middle
    return replace(middle, picked=tuple(_again(middle, part, edge, vocabulary) for edge in plan.picked))


def _again(middle: Plan, part: Part, edge: PickedEdge, vocabulary: Vocabulary) -> PickedEdge:
    needs = {each.name: each for each in stretches(middle, part, vocabulary)}
    along = tuple(replace(needs[each.name], picks=each.picks) for each in edge.stretches)
    own, border = gauge_of(middle.request, part, vocabulary), edge.border
    told = replace(
        border,
        cm_width=own.gauge.width(edge.picks),
        cm_length=own.gauge.length(border.rows),
        gauge_in=own.texture,
        unwashed_cm=_unwashed(own.gauge, edge.picks, border.rows),
    )
    return replace(edge, stretches=along, border=told)


def sampler(plan: Plan, vocabulary: Vocabulary) -> Plan:
    """Return the smallest piece that shows every transition, with borders where its short edges have room for them."""
    small = one_piece.sampler(plan, vocabulary)
    part = small.request.picked
    if part is None:
        return small
    try:
        return _with_borders(small, part, vocabulary)
    except Stuck:
        return small
