"""Edges worked with the body: what begins and what ends each row, for side borders and for selvedges."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from counterpane.craft.component import Component
from counterpane.craft.constructions.joining import CannotJoin, Nodes, closed, head, refuse_loose, tail
from counterpane.craft.constructions.obstacles import DoesNotJoin, LeftDiffers, NeedsStitches, Stuck, ValueRefused
from counterpane.craft.constructions.textures import Texture, textures_of
from counterpane.craft.rows.effects import total
from counterpane.craft.rows.instructions import read_text
from counterpane.craft.rows.tree import BindOff, OpenRepeat, Side
from counterpane.craft.rows.turning import CannotTurn, mirror
from counterpane.craft.sizing.lengths import side_of
from counterpane.craft.stitches import Vocabulary

MOST_STITCHES = 10_000
"""Stitches of a side border or selvedge beyond which it is no edge; house figure that bounds time."""


@dataclass(frozen=True, slots=True)
class Strip:
    """Edge stitches of both sides, row by row from the row where the edge begins.

    `right` and `left` are the two sides as the right side shows them. A strip that goes `as_worked` holds instead what
    begins and what ends a row on either side, as a slipped edge does.
    """

    right: tuple[Nodes, ...]
    left: tuple[Nodes, ...]
    widths: tuple[int, int]
    first_side: Side = "RS"
    as_worked: bool = False

    @property
    def period(self) -> int:
        """Rows of one vertical repeat."""
        return len(self.right)

    def ends(self, since: int, start: Side, side: Side) -> tuple[Nodes, Nodes]:
        """Return what begins and what ends a row, `since` rows after the edge's first one on side `start`."""
        index = self._place(since, start)
        right, left = self.right[index], self.left[index]
        return (right, left) if self.as_worked or side == "RS" else (left, right)

    def gained(self, since: int, start: Side, vocabulary: Vocabulary) -> int:
        """Return the stitches by which the edge is more than its widths before a row, named as in `ends`."""
        done = self._place(since, start)
        return sum(_gain(row, vocabulary) for row in (*self.right[:done], *self.left[:done]))

    def _place(self, since: int, start: Side) -> int:
        later = 0 if start == self.first_side or self.period % 2 else 1
        return (since + later) % self.period


NO_STRIP = Strip(((),), ((),), (0, 0))


@dataclass(frozen=True, slots=True)
class Edging:
    """What a side border is made from: its component, the words of its left side, and where the request names it."""

    component: Component
    pointer: str
    left: str | None = None
    in_phase: bool = False


def side_border(edging: Edging, widths: tuple[int, int], inner: int, vocabulary: Vocabulary) -> Strip:
    """Return the side borders of these widths, right and left; `inner` counts them with the body between them.

    The left one has its own rows where there are any; `in_phase` lets both continue one row over all stitches, else the
    left is the mirror of the right one.
    """
    textures = textures_of(edging.component, vocabulary, edging.pointer)
    if edging.left is None and edging.in_phase and (found := _in_phase(textures, widths, inner, vocabulary)):
        return found
    texture, right = _closed_at(textures, widths[0], vocabulary, edging.pointer)
    if edging.left is not None:
        own = _read_left(edging.left, vocabulary, edging.pointer)
        left = _own_left(own, right, widths[1], vocabulary, edging.pointer)
    else:
        _, other = _closed_at(textures, widths[1], vocabulary, edging.pointer)
        left = _mirrored(other, vocabulary, edging.pointer)
    if len(left) != len(right):
        why = f"it has {len(left)} rows and the right one {len(right)}"
        raise Stuck(LeftDiffers(edging.pointer, why))
    strip = Strip(right, left, widths, texture.first_side)
    _refuse_cut(strip, edging.pointer)
    return strip


def _refuse_cut(strip: Strip, pointer: str) -> None:
    """Raise Stuck for stitches bound off right beside the body, where a slit would be left."""
    for index in range(strip.period):
        side = side_of(index + 1, strip.first_side)
        begin, end = strip.ends(index, strip.first_side, side)
        if any(isinstance(node, BindOff) for node in (*begin[-1:], *end[:1])):
            raise Stuck(DoesNotJoin(pointer, f"binds off stitches beside the body in its row {index + 1}"))


def _closed_at(
    textures: Sequence[Texture], width: int, vocabulary: Vocabulary, pointer: str
) -> tuple[Texture, tuple[Nodes, ...]]:
    texture = next((texture for texture in textures if texture.admits(width)), None)
    if texture is None or width > MOST_STITCHES:
        raise Stuck(refused_width(textures, width, pointer))
    rows, has = [], width
    for row in texture.rows:
        rows.append(closed(row, has, vocabulary))
        has += _gain(rows[-1], vocabulary)
    return texture, tuple(rows)


def refused_width(textures: Sequence[Texture], width: int, pointer: str) -> ValueRefused:
    """Return the obstacle of a width at which the rows do not work, with the nearest widths at which they do."""
    starts = [start for texture in textures for start in texture.starts]
    near = {found for start in starts for found in (start.below(width), start.above(width)) if found}
    best = sorted((found for found in near if found <= MOST_STITCHES), key=lambda found: (abs(found - width), -found))
    return ValueRefused(f"{pointer}/stitches", width, tuple(best[:2]), "its rows do not work over so many stitches")


def _in_phase(textures: Sequence[Texture], widths: tuple[int, int], inner: int, vocabulary: Vocabulary) -> Strip | None:
    """Return the two ends of a row over all stitches, for a part with versions for every count; None for another."""
    if len(textures) < 2 or inner < sum(widths) or max(widths) > MOST_STITCHES:
        return None
    texture = next((texture for texture in textures if texture.admits(inner)), None)
    if texture is None:
        return None
    passes = texture.period * (1 + texture.period % 2)
    try:
        pairs = [_sides_at(texture, index, inner, widths, vocabulary) for index in range(passes)]
    except CannotJoin:
        return None
    right, left = zip(*pairs, strict=True)
    return Strip(right, left, widths, texture.first_side)


def _sides_at(
    texture: Texture, index: int, inner: int, widths: tuple[int, int], vocabulary: Vocabulary
) -> tuple[Nodes, Nodes]:
    """Return the right and the left end of a row counted from 0 over as many passes as needed."""
    rs = texture.side(index) == "RS"
    first, last = widths if rs else widths[::-1]
    begin, end = _cut(closed(texture.rows[index % texture.period], inner, vocabulary), first, last, vocabulary)
    return (begin, end) if rs else (end, begin)


def _cut(row: Nodes, first: int, last: int, vocabulary: Vocabulary) -> tuple[Nodes, Nodes]:
    begin, end = head(row, first, vocabulary), tail(row, last, vocabulary)
    for part, width in ((begin, first), (end, last)):
        worked = total(part, vocabulary)
        if (worked.uses, worked.makes) != (width, width):
            raise CannotJoin("would be cut inside a repeat that changes the count")
    return begin, end


def _mirrored(rows: tuple[Nodes, ...], vocabulary: Vocabulary, pointer: str) -> tuple[Nodes, ...]:
    try:
        return tuple(mirror(row, vocabulary) for row in rows)
    except CannotTurn as fault:
        raise Stuck(LeftDiffers(pointer, f"the right one has no mirror image ({fault})")) from None


def _read_left(text: str, vocabulary: Vocabulary, pointer: str) -> tuple[Nodes, ...]:
    read = read_text(text, vocabulary)
    if read.faults or not read.rows:
        raise Stuck(LeftDiffers(pointer, "its words cannot be read"))
    return tuple(row.parts for row in read.rows)


def _own_left(
    rows: tuple[Nodes, ...], right: tuple[Nodes, ...], width: int, vocabulary: Vocabulary, pointer: str
) -> tuple[Nodes, ...]:
    """Return the rows of a left side worked out for its width; Stuck where they work other counts than the right."""
    done = []
    for number, (row, beside) in enumerate(zip(rows, right, strict=False), 1):
        has = width + sum(_gain(before, vocabulary) for before in right[: number - 1])
        try:
            refuse_loose(row)
            done.append(closed(row, has, vocabulary))
        except CannotJoin as fault:
            raise Stuck(LeftDiffers(pointer, f"its row {number} {fault.why}")) from None
        found, wanted = total(done[-1], vocabulary), total(beside, vocabulary)
        if (found.uses, found.makes - found.uses) != (has, wanted.makes - wanted.uses):
            why = f"its row {number} works {found.uses} stitches into {found.makes}, where the border has {has}"
            raise Stuck(LeftDiffers(pointer, why))
    return tuple(done) + rows[len(done) :]


def _gain(row: Nodes, vocabulary: Vocabulary) -> int:
    worked = total(row, vocabulary)
    return worked.makes - worked.uses


def selvedge(edging: Edging, component_default: int | None, stitches: int | None, vocabulary: Vocabulary) -> Strip:
    """Return the edge stitches of a selvedge: rows of a fixed count as they are, else the two ends of its rows."""
    textures = textures_of(edging.component, vocabulary, edging.pointer)
    fixed = [start.least for texture in textures for start in texture.starts if start.of == 0]
    if fixed:
        width = stitches or fixed[0]
        return side_border(edging, (width, width), 2 * width, vocabulary)
    if stitches is None and not edging.component.slug:
        raise Stuck(NeedsStitches(f"{edging.pointer}/stitches", (1,)))
    if edging.left is not None:
        raise Stuck(LeftDiffers(edging.pointer, "rows that run across end at the left by themselves"))
    ends = max(max(_fixed_ends(row, vocabulary)) for row in textures[0].rows)
    return _split(textures[0], stitches or component_default or max(1, ends), vocabulary, edging.pointer)


def _fixed_ends(row: Nodes, vocabulary: Vocabulary) -> tuple[int, int]:
    """Return the stitches that the row works before its first and after its last open repeat."""
    opens = [index for index, node in enumerate(row) if isinstance(node, OpenRepeat)]
    return total(row[: opens[0]], vocabulary).uses, total(row[opens[-1] + 1 :], vocabulary).uses


def _split(texture: Texture, width: int, vocabulary: Vocabulary, pointer: str) -> Strip:
    """Return the two ends of rows that are worked over any count of a multiple."""
    widest = max(max(_fixed_ends(row, vocabulary)) for row in texture.rows)
    if widest > width or width > MOST_STITCHES:
        raise Stuck(
            ValueRefused(f"{pointer}/stitches", width, (widest,), f"its rows begin or end with {widest} stitches")
        )
    count = next(found for start in texture.starts if (found := start.above(2 * width + 2)))
    try:
        pairs = [_cut(closed(row, count, vocabulary), width, width, vocabulary) for row in texture.rows]
    except CannotJoin as fault:
        raise Stuck(DoesNotJoin(pointer, fault.why)) from None
    begins, ends = zip(*pairs, strict=True)
    return Strip(begins, ends, (width, width), texture.first_side, as_worked=True)
