"""How many rows of each part: whole repeats near the wanted length, every part begun on the side it must."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from itertools import islice
from math import lcm

from counterpane.craft.constructions.edges import Edges
from counterpane.craft.constructions.gauging import gauge_of
from counterpane.craft.constructions.obstacles import (
    EdgeOutOfStep,
    LengthOutOfReach,
    RepeatsRunApart,
    Stuck,
    WrongSide,
)
from counterpane.craft.constructions.settling import Block, Settled, stops_of, takes
from counterpane.craft.constructions.textures import Texture, half_repeat, small_count
from counterpane.craft.rows.tree import Side
from counterpane.craft.sizing.lengths import side_of, stretch

MOST_ROWS_IN_REPEAT = 2_000
"""Rows after which side by side repeats must have come together; house figure that bounds the pattern's length."""


@dataclass(frozen=True, slots=True)
class Height:
    """The rows of a block and of its repeat, the first row of the piece in it, and that row's side."""

    rows: int
    period: int
    first_row: int
    side: Side


LEANS = (1, -1, 2, -2)
"""Repeats by which the lowest of several free bands may depart from its share so that the sum comes nearer."""


def heights(settled: Settled, textures: tuple[Texture, ...], edges: tuple[Edges, ...]) -> tuple[Height, ...]:
    """Return the rows of each block from the cast-on up; Stuck where a part would begin on the wrong side.

    Free bands share what the fixed parts leave of the length, each in whole repeats; the longer of two as near.
    """
    request, vocabulary = settled.request, settled.vocabulary
    rates = [gauge_of(request, block.part, vocabulary).gauge.rows_per_cm for block in settled.blocks]
    best = _Climb(settled, textures, edges, rates)
    done, off = best.climb(), best.off()
    if sum(block.rows is None for block in settled.blocks) > 1:
        for lean in LEANS:
            other = _Climb(settled, textures, edges, rates, lean)
            found = other.tried()
            if found and (abs(other.off()), -other.off()) < (abs(off), -off):
                done, off = found, other.off()
    return done


class _Climb:
    """The blocks one after the other, with the row and the side that have been reached."""

    def __init__(
        self,
        settled: Settled,
        textures: tuple[Texture, ...],
        edges: tuple[Edges, ...],
        rates: list[Fraction],
        lean: int = 0,
    ) -> None:
        self.lean = lean
        self.rates = rates
        self.settled = settled
        self.textures = textures
        self.edges = edges
        self.first = textures[0].first_side
        self.periods = [_period(*each) for each in zip(settled.blocks, textures, edges, strict=True)]
        self.row = 1
        self.done: list[Height] = []
        self.reached = Fraction(0)
        self.fixed = [self.cm(place, block.rows or 0) for place, block in enumerate(settled.blocks)]

    def climb(self) -> tuple[Height, ...]:
        """Go up block by block; Stuck where a part would begin on the wrong side, or the piece gets too long."""
        for index, block in enumerate(self.settled.blocks):
            side = side_of(self.row, self.first)
            if side != self.textures[index].first_side and not self.yields(index):
                raise Stuck(self.wrong(index))
            self.refuse_step(index, 0)
            rows = block.rows if block.rows is not None else self.found(index)
            self.refuse_step(index, rows)
            self.done.append(Height(rows, self.periods[index], self.row, side))
            self.row += rows
            self.reached += self.cm(index, rows)
        self.refuse_length()
        return tuple(self.done)

    def yields(self, index: int) -> bool:
        """Say whether a block may begin on either side: a top border whose rows are all alike."""
        return self.settled.blocks[index] is self.settled.top and self.textures[index].either_side

    def tried(self) -> tuple[Height, ...] | None:
        """Go up block by block; None where that leads nowhere."""
        try:
            return self.climb()
        except Stuck:
            return None

    def off(self) -> Fraction:
        """Return the centimetres by which the piece is longer than wanted."""
        return self.reached - self.settled.request.length_cm

    def wrong(self, index: int) -> WrongSide:
        """Return the obstacle of a block that would begin on the wrong side because of the rows before it."""
        before = self.settled.blocks[index - 1]
        side = self.textures[index].first_side
        return WrongSide(self.settled.blocks[index].pointer, side, self.row - 1, before.pointer, self.done[-1].rows)

    def found(self, index: int) -> int:
        """Return the rows of a band whose rows are free, nearest its share of the length that is left."""
        block, texture = self.settled.blocks[index], self.textures[index]
        lowest = all(block.rows is not None for block in self.settled.blocks[:index])
        target = self.share(index) * self.rates[index] + lowest * self.lean * self.periods[index]
        parity = self.parity(index)
        closings = self.closings(index)
        found = stretch(self.periods[index], target, closings, parity)
        if found is None and self.yields(index + 1):
            found = stretch(self.periods[index], target, closings)
        if found is None:
            above = self.settled.blocks[index + 1]
            side = self.textures[index + 1].first_side
            raise Stuck(WrongSide(above.pointer, side, self.row - 1, block.pointer, texture.period, fixed=False))
        return found.rows

    def parity(self, index: int) -> int | None:
        """Return what the rows of a block must leave when halved so that the next begins on its side."""
        if index + 1 == len(self.textures):
            return None
        return int(self.textures[index].first_side != self.textures[index + 1].first_side)

    def closings(self, index: int) -> tuple[int, ...]:
        """Return the rows after which the last repeat may stop: none, or half where that is the first half shifted."""
        texture = self.textures[index]
        if self.periods[index] != texture.period:
            return (0,)
        half = half_repeat(texture, small_count(texture), self.settled.vocabulary)
        return (0, half) if half and not any(self.more(index, half).values()) else (0,)

    def more(self, index: int, rows: int) -> Mapping[str, int]:
        """Return by how many stitches each edge is more than its own after so many rows of a block, by its pointer."""
        beside, vocabulary = self.edges[index], self.settled.vocabulary
        bottom = self.settled.bottom
        below = bottom.rows or 0 if bottom and not self.settled.runs_beside(bottom) else 0
        done = self.row - 1 + rows
        sides = 0 if beside.whole else beside.sides.gained(done - below, side_of(below + 1, self.first), vocabulary)
        return {"/parts/sides": sides, "/parts/selvedge": beside.selvedge.gained(done, self.first, vocabulary)}

    def refuse_step(self, index: int, rows: int) -> None:
        """Raise Stuck where an edge has another count than its own after so many rows of a block."""
        block = self.settled.blocks[index]
        for edge, more in self.more(index, rows).items():
            if more:
                pointer = f"{block.pointer}/rows" if rows else edge
                raise Stuck(EdgeOutOfStep(pointer, edge, rows, more, self.in_step(index, rows) if rows else ()))

    def in_step(self, index: int, rows: int) -> tuple[int, ...]:
        """Return the numbers of rows nearest one after which a block and its edges have their own counts.

        What follows begins on the side on which it begins after that one, where it matters.
        """
        block, texture, beside = self.settled.blocks[index], self.textures[index], self.edges[index]
        stops = stops_of(texture, self.settled.vocabulary)
        free = index + 1 == len(self.textures) or self.yields(index + 1)
        far = lcm(2, texture.period, beside.selvedge.period, beside.sides.period)
        near = sorted(range(max(1, rows - far), rows + far + 1), key=lambda number: (abs(number - rows), -number))
        found = (
            number
            for number in near
            if (free or (number - rows) % 2 == 0)
            and number % texture.period in stops
            and takes(block.part.component, "rows", number)
            and not any(self.more(index, number).values())
        )
        return tuple(islice(found, 2))

    def share(self, index: int) -> Fraction:
        """Return the centimetres for a free band: the length left over, divided among the free bands still to come."""
        blocks = self.settled.blocks[index:]
        spent = self.reached + sum(self.fixed[index:], Fraction(0))
        return (self.settled.request.length_cm - spent) / sum(block.rows is None for block in blocks)

    def refuse_length(self) -> None:
        """Raise Stuck where the least body is longer than the piece is to be by more than a repeat."""
        free = [index for index, block in enumerate(self.settled.blocks) if block.rows is None]
        if free and self.off() > max(self.cm(index, self.periods[index]) for index in free):
            borders = sum(block.rows or 0 for block in self.settled.blocks)
            raise Stuck(LengthOutOfReach(self.reached, self.settled.request.length_cm, borders))

    def cm(self, index: int, rows: int) -> Fraction:
        """Return the centimetres of so many rows of a block by its own gauge."""
        return rows / self.rates[index]


def _period(block: Block, texture: Texture, edges: Edges) -> int:
    """Return the rows after which a block and the edges beside it begin again together."""
    if block.rows is not None:
        return texture.period
    period = lcm(texture.period, edges.selvedge.period, edges.sides.period)
    if period > MOST_ROWS_IN_REPEAT:
        raise Stuck(RepeatsRunApart(block.pointer, period))
    return period
