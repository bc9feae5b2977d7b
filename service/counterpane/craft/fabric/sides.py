"""Whether a texture looks the same from both sides, told from its stitches."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal, TypeAlias

from counterpane.craft.counts import Chain, count
from counterpane.craft.rows.tree import Node
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.trace import Side, TracedRow, Worked, trace

Reversible: TypeAlias = Literal["yes", "both-good", "no"]
Keys: TypeAlias = tuple[str, ...]
Cell: TypeAlias = tuple[Keys, ...]
# Larger repeats are not compared: the answer is "not known".
LARGEST_CELL = 4_096
LARGEST_SAMPLE = 50_000


def reversible(
    rows: Sequence[Sequence[Node]], vocabulary: Vocabulary, sides: Sequence[Side | None] | None = None
) -> Reversible | None:
    """Compare both sides of the endless texture of rows that repeat: edges are left out.

    "yes": turned over a side or top edge it is the same up to a shift. "both-good": it is the mirror image of that.
    "no": the sides differ; whether the other one is good too is for eyes to say. None where the rows do not repeat,
    hold more than stitches worked one for one that have another side, or are too large to compare.
    """
    cell = _cell(rows, vocabulary, sides)
    if cell is None:
        return None
    behind = tuple(tuple(vocabulary[key].back or key for key in course) for course in cell)
    sideways = tuple(course[::-1] for course in behind)
    if _same(cell, sideways) or _same(cell, behind[::-1]):
        return "yes"
    return "both-good" if _same(cell, behind) or _same(cell, sideways[::-1]) else "no"


def _cell(rows: Sequence[Sequence[Node]], vocabulary: Vocabulary, sides: Sequence[Side | None] | None) -> Cell | None:
    """Return the stitches of one repeat in both directions, as the right side shows them."""
    chain = count(rows, vocabulary, sides)
    if len(chain.starts) != 1 or chain.drift != 0 or chain.starts[0].of == 0:
        return None
    width, edge, stitches = chain.starts[0].of, chain.starts[0].least, _sample(chain)
    flat = sides is None or "round" not in sides
    passes = 2 if flat and len(rows) % 2 else 1
    if width * len(rows) * passes > LARGEST_CELL or stitches * len(rows) * passes > LARGEST_SAMPLE:
        return None
    traced = trace(list(rows) * passes, stitches, vocabulary, sides if passes == 1 else None)
    courses = [_stitches(row, vocabulary) for row in traced.rows]
    middle = tuple(course[edge : edge + 2 * width] for course in courses if course is not None)
    if len(middle) < len(courses) or any(course[:width] != course[width:] for course in middle):
        return None
    return tuple(course[:width] for course in middle)


def _sample(chain: Chain) -> int:
    """Return a count with two whole repeats between edges as wide as the least count."""
    start = chain.starts[0]
    return start.least + start.of * (2 + -(-start.least // start.of))


def _stitches(row: TracedRow, vocabulary: Vocabulary) -> Keys | None:
    """Return the stitches of a row from its right edge on as seen from the right side; None where there are others."""
    keys = [_seen_from_rs(worked, vocabulary) for worked in row.worked if worked.takes or worked.leaves]
    known = tuple(key for key in keys if key is not None)
    if len(known) < len(keys) or any(worked.side != row.side for worked in row.worked):
        return None
    return known[::-1] if row.side == "WS" else known


def _seen_from_rs(worked: Worked, vocabulary: Vocabulary) -> str | None:
    stitch = vocabulary.stitches.get(worked.stitch)
    if stitch is None or stitch.face is None or worked.held or worked.into or stitch.uses != 1 or stitch.makes != 1:
        return None
    return stitch.back if worked.side == "WS" or stitch.back is None else stitch.key


def _same(one: Cell, other: Cell) -> bool:
    """Say whether two textures on endless fabric are the same up to a shift."""
    height, width = len(one), len(one[0])
    shifted = [[course[by:] + course[:by] for course in other] for by in range(width)]
    return any(
        all(one[row] == courses[(row + up) % height] for row in range(height))
        for courses in shifted
        for up in range(height)
    )
