"""Extra rows of a side border beside a body whose rows are higher: pairs worked with a turn, spread evenly.

A pair stands before a row of the body: on the right edge before a RS row, on the left edge before a WS row. It turns
twice and comes back to where it began, so that the row after it is worked whole and no count changes.
"""

from __future__ import annotations

from dataclasses import dataclass

from counterpane.craft.behaviour.figures import Figure
from counterpane.craft.behaviour.places import band_section, edges_of
from counterpane.craft.behaviour.widths import Ratios
from counterpane.craft.constructions import Plan, Section
from counterpane.craft.constructions.joining import CannotJoin, Nodes, closed, head, tail
from counterpane.craft.constructions.obstacles import Stuck
from counterpane.craft.constructions.textures import textures_of
from counterpane.craft.measures import half_up
from counterpane.craft.rows.tree import Row, Side, Turn
from counterpane.craft.sizing.takeup import places, spacing
from counterpane.craft.stitches import Vocabulary

MOST_PLACES = 2_000
"""Rows before which a pair stands that are listed one by one; house figure that bounds an answer."""


@dataclass(frozen=True, slots=True)
class Pair:
    """The start of a row with a pair before it: the border's stitches, turn, and back, turn; then the row goes on.

    `side` is that of the row that it stands before: RS at the right edge, WS at the left edge.
    """

    side: Side
    parts: Nodes
    stitches: int


@dataclass(frozen=True, slots=True)
class ExtraRows:
    """Pairs of rows that a side border takes more than a band of the body: all that may be meant, and those chosen.

    `before` are the rows of the section that a pair of the right edge stands before, each a RS row; on the left edge it
    stands before the row after it. Empty for more than are listed. `every` are the smallest and the largest number of
    rows between two pairs. `pairs_in_words` is empty where the border's rows do not come round in two.
    """

    pairs: Figure
    chosen: int
    before: tuple[int, ...]
    every: tuple[int, int]
    pairs_in_words: tuple[Pair, ...]


def extra_rows(plan: Plan, band: int, found: Ratios, vocabulary: Vocabulary) -> ExtraRows | None:
    """Return the extra pairs of the side borders beside a band of the body.

    None where none are wanted, and where it is not sure that the border is the lower of the two.
    """
    section, rows = band_section(plan, band), found.rows
    starts = (section.rows + (section.first_row_side == "RS")) // 2
    if rows is None or rows.low is None or rows.high is None or rows.low <= 1:
        return None
    pairs = Figure(
        (rows.low - 1) * section.rows / 2, (rows.high - 1) * section.rows / 2, "pairs of rows", rows.basis, rows.source
    )
    chosen = min(int(half_up((found.likely_rows - 1) * section.rows / 2)), starts)
    if chosen < 1:
        return None
    first = 1 if section.first_row_side == "RS" else 2
    before = tuple(first + 2 * slot for slot in places(chosen, starts)) if chosen <= MOST_PLACES else ()
    _, low, high = spacing(chosen, starts)
    words = _in_words(plan, band, section, vocabulary)
    return ExtraRows(pairs, chosen, before, (2 * low, 2 * high), words)


def _in_words(plan: Plan, band: int, section: Section, vocabulary: Vocabulary) -> tuple[Pair, ...]:
    """Return the pair of either edge; none where a pair would break the border's own repeat of rows."""
    part = plan.request.sides
    ways: dict[Side | None, Row] = {row.side: row for row in section.cycle[:2]}
    try:
        textures = () if part is None else textures_of(part.component, vocabulary, "")
        if any(2 % texture.period for texture in textures):
            return ()
        here, there = (closed(ways[side].parts, section.before, vocabulary) for side in ("RS", "WS"))
        right, left = edges_of(plan, band)
        return (
            _pair("RS", head(here, right, vocabulary), tail(there, right, vocabulary), right),
            _pair("WS", head(there, left, vocabulary), tail(here, left, vocabulary), left),
        )
    except (Stuck, CannotJoin, KeyError):
        return ()


def _pair(side: Side, out: Nodes, back: Nodes, stitches: int) -> Pair:
    return Pair(side, (*out, Turn(), *back, Turn()), stitches)
