"""What is settled before a count is chosen: each part's rows, its parameters within what it takes, its neighbours."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from counterpane.craft.component import Component, Parameter
from counterpane.craft.constructions import Part, PlanRequest
from counterpane.craft.constructions.gauging import body_gauge, gauge_of, picked_cm
from counterpane.craft.constructions.obstacles import (
    NeedsRows,
    NeedsStitches,
    NotTaken,
    Obstacle,
    StopsMidRepeat,
    Stuck,
    ValueRefused,
    WrongKind,
)
from counterpane.craft.constructions.strips import NO_STRIP, Edging, Strip, refused_width, selvedge
from counterpane.craft.constructions.textures import Texture, alike, changes_by_row, textures_of
from counterpane.craft.counts import Progression, work
from counterpane.craft.sizing.classes import shifted
from counterpane.craft.stitches import Vocabulary


@dataclass(frozen=True, slots=True)
class Block:
    """A stretch of rows that is worked from edge to edge: a border, or a band of the body.

    `rows` is how many are worked, None for a band whose rows are to be found; `stitches` the count a band keeps to
    where its side borders give way.
    """

    name: str
    pointer: str
    part: Part
    textures: tuple[Texture, ...]
    rows: int | None = None
    stitches: int | None = None


@dataclass(frozen=True, slots=True)
class Settled:
    """A request with its parts understood; `sides` are the stitches of one side border.

    `edge_cm` is the width of both side borders and selvedges by their own gauges, `target` the exact and usually broken
    cast-on count that would measure the wanted width. `asked` are the cast-on counts that suit each block by its
    pointer, with the version of its rows.
    """

    request: PlanRequest
    vocabulary: Vocabulary
    bottom: Block | None
    bands: tuple[Block, ...]
    top: Block | None
    sides: int
    edging: Edging | None
    selvedge: Strip
    edge_cm: Fraction
    target: Fraction
    asked: Mapping[str, tuple[tuple[Progression, int], ...]]

    @property
    def blocks(self) -> tuple[Block, ...]:
        """All stretches from the cast-on up."""
        ends = (self.bottom,), self.bands, (self.top,)
        return tuple(block for group in ends for block in group if block)

    @property
    def edge(self) -> int:
        """Selvedge stitches of both sides."""
        return sum(self.selvedge.widths)

    def beside(self, block: Block) -> int:
        """Return the stitches of both sides that are not the block's own."""
        return self.edge + (2 * self.sides if self.runs_beside(block) else 0)

    def runs_beside(self, block: Block) -> bool:
        """Say whether the side borders run beside a block."""
        return self.request.corner == "sides" or (block is not self.bottom and block is not self.top)


def settle(request: PlanRequest, vocabulary: Vocabulary) -> Settled:
    """Read all parts of a request; Stuck with every obstacle that a part alone is."""
    obstacles: list[Obstacle] = [*_wrong_kinds(request), *_not_taken(request)]
    if obstacles:
        raise Stuck(*obstacles)
    found: list[Block | None] = []
    for name, pointer, part in _blocks(request):
        try:
            found.append(_block(name, pointer, part, vocabulary) if part else None)
        except Stuck as stuck:
            obstacles += stuck.obstacles
    sides, edging, strip = 0, None, NO_STRIP
    try:
        sides, edging = _sides(request, request.bottom or request.body[0], vocabulary)
    except Stuck as stuck:
        obstacles += stuck.obstacles
    try:
        strip = _selvedge(request, vocabulary)
    except Stuck as stuck:
        obstacles += stuck.obstacles
    if obstacles:
        raise Stuck(*obstacles)
    bands = tuple(block for block in found[1:-1] if block)
    edge_cm = _edge_cm(request, sides, sum(strip.widths), vocabulary)
    beside = 2 * sides + sum(strip.widths)
    target = (request.width_cm - edge_cm) * body_gauge(request).gauge.per_cm + beside
    settled = Settled(request, vocabulary, found[0], bands, found[-1], sides, edging, strip, edge_cm, target, {})
    return replace(settled, asked={block.pointer: tuple(_asked(block, settled)) for block in settled.blocks})


def _asked(block: Block, settled: Settled) -> Iterator[tuple[Progression, int]]:
    """Give the cast-on counts that suit the rows of a block, with the number of their version."""
    beside = settled.beside(block)
    for version, texture in enumerate(block.textures):
        for start in texture.starts:
            yield shifted(start, beside), version


def _edge_cm(request: PlanRequest, sides: int, edge: int, vocabulary: Vocabulary) -> Fraction:
    """Return the width of both side borders, picked up or not, and both selvedges by their own gauges."""
    parts = ((request.sides, 2 * sides), (request.selvedge, edge))
    beside = (gauge_of(request, part, vocabulary).gauge.width(stitches) for part, stitches in parts if part)
    return sum(beside, picked_cm(request, vocabulary))


def body_pointer(request: PlanRequest, index: int) -> str:
    """Return the JSON pointer of a band: the body's own where it is one part."""
    return "/parts/body" if len(request.body) == 1 else f"/parts/body/{index}"


def _blocks(request: PlanRequest) -> Iterator[tuple[str, str, Part | None]]:
    yield "bottom", "/parts/bottom", request.bottom
    for index, part in enumerate(request.body):
        name = "body" if len(request.body) == 1 else f"body {index + 1}"
        yield name, body_pointer(request, index), part
    yield "top", "/parts/top", request.top


def _wrong_kinds(request: PlanRequest) -> Iterator[WrongKind]:
    placed = [(pointer, part) for _, pointer, part in _blocks(request)]
    placed += [("/parts/sides", request.sides), ("/parts/selvedge", request.selvedge)]
    for pointer, part in placed:
        if part and part.component.kind in ("cast-on", "bind-off"):
            yield WrongKind(pointer, part.component.slug, part.component.kind)
    if request.cast_on.component.kind != "cast-on":
        yield WrongKind("/parts/cast_on", request.cast_on.component.slug, request.cast_on.component.kind)
    if request.bind_off.component.kind != "bind-off":
        yield WrongKind("/parts/bind_off", request.bind_off.component.slug, request.bind_off.component.kind)


USUAL_SIDE = 6
"""Stitches near which a side border is offered where none is asked for: the usual border; house figure."""

TAKEN = {
    "/parts/bottom": ("rows",),
    "/parts/top": ("rows",),
    "/parts/sides": ("stitches", "left"),
    "/parts/selvedge": ("stitches", "left"),
    "/parts/cast_on": (),
    "/parts/bind_off": (),
}
"""Which fields beside its component or text a part has a use for; a band of the body takes rows and stitches."""


def _not_taken(request: PlanRequest) -> Iterator[NotTaken]:
    placed = [(pointer, part) for _, pointer, part in _blocks(request)]
    placed += [("/parts/sides", request.sides), ("/parts/selvedge", request.selvedge)]
    for pointer, part in (*placed, ("/parts/cast_on", request.cast_on), ("/parts/bind_off", request.bind_off)):
        for field in ("rows", "stitches", "left"):
            if part and getattr(part, field) is not None and field not in TAKEN.get(pointer, ("rows", "stitches")):
                yield NotTaken(f"{pointer}/{field}", field, pointer.split("/")[2].replace("_", "-"))


def parameter(component: Component, name: str) -> Parameter | None:
    """Return what a component says of its rows or stitches, None where it says nothing."""
    return next((parameter for parameter in component.parameters if parameter.name == name), None)


def takes(component: Component, name: str, value: int) -> bool:
    """Say whether a component takes so many rows or stitches, as far as its parameters tell."""
    limits = parameter(component, name) or Parameter("rows", 1, 1)
    counts = Progression(limits.step, limits.least % limits.step, limits.least)
    return counts.admits(value) and (limits.most is None or value <= limits.most)


def _allowed(part: Part, name: str, value: int, pointer: str) -> int:
    """Return the value if the component takes it; Stuck with the nearest it takes where not."""
    limits = parameter(part.component, name) or Parameter("rows", 1, 1)
    counts = Progression(limits.step, limits.least % limits.step, limits.least)
    if takes(part.component, name, value):
        return value
    below, above = counts.below(min(value, limits.most or value)), counts.above(value)
    near = (below, above if limits.most is None or (above or 0) <= limits.most else None)
    why = (
        f"it takes {limits.least} or more in steps of {limits.step}"
        if limits.step > 1
        else f"it takes {limits.least} or more"
    )
    raise Stuck(ValueRefused(f"{pointer}/{name}", value, tuple(found for found in near if found), why))


def _block(name: str, pointer: str, part: Part, vocabulary: Vocabulary) -> Block:
    textures = textures_of(part.component, vocabulary, pointer)
    if name.startswith("body"):
        rows = None if part.rows is None else _allowed(part, "rows", part.rows, pointer)
    else:
        rows = border_rows(part, textures, pointer)
    if rows is not None:
        _refuse_stop(textures, rows, vocabulary, pointer)
    if part.stitches is not None and not any(texture.admits(part.stitches) for texture in textures):
        raise Stuck(refused_width(textures, part.stitches, pointer))
    return Block(name, pointer, part, textures, rows, part.stitches)


def border_rows(part: Part, textures: tuple[Texture, ...], pointer: str) -> int:
    """Return the rows that a border is worked for: those given, or its usual ones; Stuck where it takes neither."""
    usual = parameter(part.component, "rows")
    if part.rows is None and usual is None:
        raise Stuck(NeedsRows(f"{pointer}/rows", textures[0].period))
    return _allowed(part, "rows", part.rows if part.rows is not None else usual.default if usual else 1, pointer)


def _refuse_stop(textures: tuple[Texture, ...], rows: int, vocabulary: Vocabulary, pointer: str) -> None:
    """Raise Stuck for rows that stop where the count is another than at the beginning."""
    texture = textures[0]
    start, *counts = _counts(texture, vocabulary)
    after = counts[rows % texture.period - 1]
    if after != start:
        stops = stops_of(texture, vocabulary)
        whole = rows // texture.period * texture.period
        tried = sorted(
            (whole + off + stop for off in (0, texture.period) for stop in stops), key=lambda n: abs(n - rows)
        )
        near = tuple(number for number in tried if number > 0)[:2]
        raise Stuck(StopsMidRepeat(f"{pointer}/rows", rows, start, after, near))


def stops_of(texture: Texture, vocabulary: Vocabulary) -> tuple[int, ...]:
    """Return the rows of a repeat after which the count is that of the beginning: 0 and as many more as there are."""
    start, *counts = _counts(texture, vocabulary)
    return 0, *(stop for stop, here in enumerate(counts[:-1], 1) if here == start)


def _counts(texture: Texture, vocabulary: Vocabulary) -> tuple[int, ...]:
    """Return the least count at which the rows work, and the counts after each of them."""
    start = min(start.least for start in texture.starts)
    return start, *(step.after or 0 for step in work(texture.rows, start, vocabulary))


def _sides(request: PlanRequest, beside: Part, vocabulary: Vocabulary) -> tuple[int, Edging | None]:
    part = request.sides
    if part is None:
        return 0, None
    textures = textures_of(part.component, vocabulary, "/parts/sides")
    width = _side_width(part, textures)
    in_phase = len(textures) > 1 and (
        alike(part.component, beside.component, vocabulary) or changes_by_row(textures[0], vocabulary)
    )
    return width, Edging(part.component, "/parts/sides", part.left, in_phase)


def _side_width(part: Part, textures: tuple[Texture, ...]) -> int:
    usual = parameter(part.component, "stitches")
    fixed = [start.least for texture in textures for start in texture.starts if start.of == 0]
    given = part.stitches if part.stitches is not None else usual.default if usual else next(iter(fixed), None)
    if given is None:
        near = sorted({start.above(USUAL_SIDE) or start.least for texture in textures for start in texture.starts})
        raise Stuck(NeedsStitches("/parts/sides/stitches", tuple(near[:2])))
    width = _allowed(part, "stitches", given, "/parts/sides")
    if not any(texture.admits(width) for texture in textures):
        raise Stuck(refused_width(textures, width, "/parts/sides"))
    return width


def _selvedge(request: PlanRequest, vocabulary: Vocabulary) -> Strip:
    part = request.selvedge
    if part is None:
        return NO_STRIP
    usual = parameter(part.component, "stitches")
    if part.stitches is not None:
        _allowed(part, "stitches", part.stitches, "/parts/selvedge")
    edging = Edging(part.component, "/parts/selvedge", part.left)
    return selvedge(edging, usual.default if usual else None, part.stitches, vocabulary)
