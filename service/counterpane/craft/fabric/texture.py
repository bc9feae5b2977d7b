"""The endless texture of rows that repeat, loop by loop, as a cell on a torus; edges are left out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from counterpane.craft.counts import Chain, count, work
from counterpane.craft.fabric.faces import SLIP, Look
from counterpane.craft.fabric.marks import BACK, FRONT, HELD_BACK, HELD_FRONT, PASSED, Mark, signs_of, with_images
from counterpane.craft.rows.tree import Node, Side, Work
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.texture import Cell, Signs, straight
from counterpane.craft.trace import Loop, Traced, TracedRow, Worked, trace
from counterpane.craft.trace.meaning import everything

LARGEST_CELL = 4_096
"""Stitches of one repeat beyond which a texture is not laid out; house figure that bounds time."""

LARGEST_SAMPLE = 50_000
"""Stitches of all rows that are worked to lay out a texture; house figure that bounds time."""

PASTS: Mapping[str, str] = {"wyif": FRONT, "wyib": BACK}
UNKNOWN = "patt"
"""A stitch that is whatever the pattern has there: nothing to look at by itself."""


@dataclass(frozen=True, slots=True)
class Texture:
    """The smallest upright cell of a texture as the right side shows it, and what its labels stand for.

    `marks` are those of the labels and of all that they become by the moves of `signs`; `looks` what each shows.
    """

    cell: Cell
    marks: Mapping[str, Mark]
    looks: Mapping[str, Look]
    signs: Signs


def texture_of(
    rows: Sequence[Sequence[Node]],
    vocabulary: Vocabulary,
    sides: Sequence[Side | None] | None = None,
    chain: Chain | None = None,
) -> Texture | None:
    """Lay out the endless texture of rows that repeat; `chain` are their counts, where somebody has counted them.

    None where the rows do not repeat, change the count between them by more with more repeats, turn before their end,
    name colours, or are too large.
    """
    chain = chain or count(rows, vocabulary, sides)
    found = None if any(map(_coloured, rows)) else _laid_out(rows, chain, vocabulary, sides)
    if found is None:
        return None
    marks = with_images((mark for row in found for mark in row), vocabulary)
    if any(mark.stitch == UNKNOWN for mark in marks):
        return None
    return Texture(
        straight(tuple(tuple(mark.label for mark in row) for row in found)),
        {mark.label: mark for mark in marks},
        {mark.label: mark.look(vocabulary) for mark in marks},
        signs_of(marks, vocabulary),
    )


def may_hold(cell: Cell, rows: int, chain: Chain, sides: Sequence[Side | None]) -> bool:
    """Say whether so many rows may have this canonical cell: one repeat of them is whole repeats of it both ways.

    No move turns rows into columns, so a texture keeps the size of its smallest upright cell through all of them.
    """
    width = chain.starts[0].of if len(chain.starts) == 1 else 0
    return width > 0 and width % len(cell[0]) == 0 and _times(rows, sides) * rows % len(cell) == 0


def _laid_out(
    rows: Sequence[Sequence[Node]], chain: Chain, vocabulary: Vocabulary, sides: Sequence[Side | None] | None
) -> list[tuple[Mark, ...]] | None:
    """Return the marks of one repeat in both directions, taken from between the edges of a wider piece."""
    if len(chain.starts) != 1 or chain.drift != 0 or chain.starts[0].of == 0:
        return None
    width, edge, stitches = chain.starts[0].of, chain.starts[0].least, _sample(chain)
    rows, sides = _both_ways(rows, sides)
    if width * len(rows) > LARGEST_CELL or stitches * len(rows) > LARGEST_SAMPLE:
        return None
    if not _keeps_width(rows, stitches, width, vocabulary, sides):
        return None
    traced = trace(rows, stitches, vocabulary, sides)
    if len(traced.rows) < len(rows) or any(map(_turns, traced.rows)):
        return None
    middle = [row[edge : edge + 2 * width] for row in marked(traced, stitches, vocabulary)]
    if any(len(row) < 2 * width or row[:width] != row[width:] for row in middle):
        return None
    return [row[:width] for row in middle]


def _sample(chain: Chain) -> int:
    """Return a count with two whole repeats between edges as wide as the least count."""
    start = chain.starts[0]
    return start.least + start.of * (2 + -(-start.least // start.of))


def _both_ways(
    rows: Sequence[Sequence[Node]], sides: Sequence[Side | None] | None
) -> tuple[Sequence[Sequence[Node]], list[Side]]:
    """Return the rows with their sides; an odd number of rows worked flat twice, since each comes on both sides."""
    first = next((side for side in sides or () if side is not None), "RS")
    if first == "round":
        return rows, ["round"] * len(rows)
    place = next((place for place, side in enumerate(sides or ()) if side is not None), 0)
    twice = list(rows) * _times(len(rows), sides or ())
    return twice, ["RS" if (first == "RS") == ((row - place) % 2 == 0) else "WS" for row in range(len(twice))]


def _times(rows: int, sides: Sequence[Side | None]) -> int:
    """Return how often rows are worked until their first comes on its own side again."""
    first = next((side for side in sides if side is not None), "RS")
    return 1 if first == "round" or rows % 2 == 0 else 2


def _keeps_width(
    rows: Sequence[Sequence[Node]], stitches: int, width: int, vocabulary: Vocabulary, sides: Sequence[Side]
) -> bool:
    """Say whether one repeat more makes every row longer by just one repeat."""
    few, more = (work(rows, before, vocabulary, sides) for before in (stitches, stitches + width))
    pairs = [(one.after, other.after) for one, other in zip(few, more, strict=True)]
    return all(one is not None and other is not None and other - one == width for one, other in pairs)


def _coloured(row: Sequence[Node]) -> bool:
    return any(isinstance(node, Work) and node.colour is not None for node in everything(row))


def _turns(row: TracedRow) -> bool:
    """Tell whether a row is turned before its end, with stitches beside it that it does not work."""
    made = {loop.number for worked in row.worked for loop in worked.leaves}
    return any(worked.side != row.side for worked in row.worked) or any(loop.number not in made for loop in row.loops)


def marked(traced: Traced, stitches: int, vocabulary: Vocabulary) -> Iterator[tuple[Mark, ...]]:
    """Give the marks of each row from its right edge on."""
    below = {-1 - place: place for place in range(stitches)}
    if traced.rows and traced.rows[0].side == "WS":
        below = {number: stitches - 1 - place for number, place in below.items()}
    for row in traced.rows:
        loops = row.loops if row.side != "RS" else row.loops[::-1]
        columns = {loop.number: place for place, loop in enumerate(loops)}
        made = dict(_made(row, columns, below))
        marks = [made[loop.number] for loop in loops]
        if row.side == "WS":
            seen = {mark: _from_right(mark, vocabulary) for mark in set(marks)}
            marks = [seen[mark] for mark in marks]
        yield tuple(marks)
        below = columns


def _from_right(mark: Mark, vocabulary: Vocabulary) -> Mark:
    """Return a mark of a wrong-side row as the right side shows it, its columns as they are."""
    seen = mark.from_behind(vocabulary)
    return Mark(seen.stitch, mark.drawn, seen.notes, seen.behind)


def _made(row: TracedRow, columns: Mapping[int, int], below: Mapping[int, int]) -> Iterator[tuple[int, Mark]]:
    """Give the number of each loop with its mark as worked, columns from the right edge; the last one given holds."""
    yarn, tip = "", None
    for worked in row.worked:
        yarn = _yarn(worked, yarn)
        for loop in worked.leaves:
            if loop.number in columns:
                tip = loop.number, _mark(worked, loop, yarn, columns, below)
                yield tip
        if not worked.leaves and worked.takes and tip is not None:
            number, mark = tip
            tip = number, Mark(mark.stitch, mark.drawn, (*mark.notes, f"{len(worked.takes)} {PASSED}"), mark.behind)
            yield tip


def _yarn(worked: Worked, yarn: str) -> str:
    """Return where the yarn was said to lie: a word holds until a stitch is worked with the yarn."""
    if worked.stitch in PASTS:
        return PASTS[worked.stitch]
    return yarn if worked.stitch == SLIP or not worked.leaves else ""


def _mark(worked: Worked, loop: Loop, yarn: str, columns: Mapping[int, int], below: Mapping[int, int]) -> Mark:
    parents = [taken.number for taken in worked.takes] if worked.stitch == SLIP else loop.parents
    drawn = tuple(sorted(below[parent] - columns[loop.number] for parent in parents if parent in below))
    return Mark(worked.stitch, drawn, tuple(sorted(_notes(worked, yarn))))


def _notes(worked: Worked, yarn: str) -> Iterator[str]:
    if worked.stitch == SLIP:
        past = next((PASTS[word] for word in worked.manner if word in PASTS), yarn)
        yield from filter(None, (past, "knitwise" if "kwise" in worked.manner else ""))
    if worked.held:
        yield HELD_FRONT if worked.in_front else HELD_BACK
    if worked.into:
        yield "with others into one"
