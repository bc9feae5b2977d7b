"""From rows to a chart: each row written out, seen from the right side, and laid on columns; then the repeat is found.

The repeat is the columns that can be cut out of the chart at one count so that the chart at the count below is left.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import chain, groupby

from counterpane.craft.counts import Progression, count
from counterpane.craft.counts.writing_out import WrittenOut, write_out
from counterpane.craft.drawing.chart import NO_STITCH, Box, CannotChart, Cell, Chart, ChartRow, Nodes, piece
from counterpane.craft.drawing.chart.columns import Columns
from counterpane.craft.drawing.chart.words import rows_of
from counterpane.craft.fabric.faces import SLIP
from counterpane.craft.rows.effects import Effect, total
from counterpane.craft.rows.tree import BindOff, Group, IntoOne, Marker, Node, OpenRepeat, Row, Side, Turn, Work
from counterpane.craft.rows.turning import CannotTurn, rs_view, units
from counterpane.craft.stitches import Vocabulary

MOST_CELLS = 20_000
"""Cells beyond which a chart is not drawn; house figure that bounds time."""

MOST_REPEATS = 3
"""Repeats more than the least count has, up to which the repeat is looked for; house figure."""

MOST_ROUNDS = 4
"""Times that a chart is laid out anew from its own words; house figure."""


@dataclass(frozen=True, slots=True)
class Grid:
    """The rows of a chart at one count."""

    rows: tuple[ChartRow, ...]
    columns: int


@dataclass(frozen=True, slots=True)
class Working:
    """What one cell will hold, with the stitches that it takes and leaves."""

    nodes: Nodes
    effect: Effect

    @property
    def moves_yarn(self) -> bool:
        """Say whether no stitch is worked."""
        return self.effect.uses == self.effect.makes == self.effect.held == 0

    def with_more(self, before: Nodes, after: Nodes, vocabulary: Vocabulary) -> Working:
        """Return the working with others before and after it in the same cell."""
        nodes = (*before, *self.nodes, *after)
        return Working(nodes, total(nodes, vocabulary))


def chart_of(rows: Sequence[Row], counts: Progression, vocabulary: Vocabulary) -> Chart:
    """Return the chart of rows that work at these counts, as narrow as it can be with its repeat shown.

    It is the chart of its own words: where the repeat lies elsewhere in them, the columns are those of the words.
    Raises CannotChart for rows that turn, bind all stitches off or have no side, and for charts of too many cells.
    """
    chart = _laid_out(rows, counts, vocabulary)
    for _ in range(MOST_ROUNDS):
        words = rows_of(chart, vocabulary)
        theirs = _counts(words, vocabulary)
        again = chart if (theirs, _said(words)) == (counts, _said(rows)) else _laid_out(words, theirs, vocabulary)
        if again == chart:
            return chart
        chart, rows, counts = again, words, theirs
    raise CannotChart("The repeat does not lie on the same columns in all rows")


def _said(rows: Sequence[Row]) -> list[tuple[object, ...]]:
    """Return what a chart is made of: two lists of rows that are alike in it have the same chart."""
    return [(row.label, row.side, row.parts) for row in rows]


def _counts(rows: Sequence[Row], vocabulary: Vocabulary) -> Progression:
    """Return the counts at which the words of a chart work, which are always one progression.

    The box is what the wider of two charts has more than the other, so in each row it takes as many stitches as it
    leaves in the row below; no cell leaves none, and so it takes one at least. What stands beside it is of a fixed
    number, so all rows work its stitches equally often, and whatever works once works more often too.
    """
    return count([row.parts for row in rows], vocabulary, [row.side for row in rows]).starts[0]


def _laid_out(rows: Sequence[Row], counts: Progression, vocabulary: Vocabulary) -> Chart:
    few = _grid(rows, counts.least, vocabulary)
    if counts.of == 0:
        return Chart(few.rows, few.columns, None)
    for wider in range(1, MOST_REPEATS + 1):
        more = _grid(rows, counts.least + wider * counts.of, vocabulary)
        box = _box(rows, few, more, vocabulary)
        if box is not None:
            shown = few if _repeats(few, more, box) else more
            return Chart(shown.rows, shown.columns, box)
        few = more
    return Chart(few.rows, few.columns, None)


def _box(rows: Sequence[Row], few: Grid, more: Grid, vocabulary: Vocabulary) -> Box | None:
    """Return the columns that the wider chart has more than the other; None where no columns can be cut out of it."""
    wide = more.columns - few.columns
    return next((Box(at, wide) for at in _firsts(rows, few, vocabulary) if cut(more, at, wide) == few.rows), None)


def _firsts(rows: Sequence[Row], few: Grid, vocabulary: Vocabulary) -> Iterator[int]:
    """Give where the repeat may begin: first where the words of a RS row begin it, then from the right edge on."""
    for row in rows:
        opens = [(index, node.plain) for index, node in enumerate(row.parts) if isinstance(node, OpenRepeat)]
        # What lies before a second repeat is of no fixed number.
        if opens and not opens[0][1] and row.side != "WS":
            yield total(row.parts[: opens[0][0]], vocabulary).makes
            break
    yield from range(few.columns + 1)


def _repeats(few: Grid, more: Grid, box: Box) -> bool:
    """Say whether the narrower chart holds a whole repeat at the same place."""
    if box.end > few.columns:
        return False
    ahead = [piece(row.cells, box.first, box.wide) for row in few.rows]
    twice = [(piece(row.cells, box.first, box.wide), piece(row.cells, box.end, box.wide)) for row in more.rows]
    return all(one is not None and both == (one, one) for one, both in zip(ahead, twice, strict=True))


def cut(grid: Grid, first: int, wide: int) -> tuple[ChartRow, ...] | None:
    """Return the rows with these columns cut out; None where a cell lies across an end of them."""
    done = []
    for row in grid.rows:
        before = piece(row.cells, 0, first)
        after = piece(row.cells, first + wide, grid.columns - first - wide)
        if before is None or after is None or piece(row.cells, first, wide) is None:
            return None
        done.append(replace(row, cells=before + after))
    return tuple(done)


def _grid(rows: Sequence[Row], stitches: int, vocabulary: Vocabulary) -> Grid:
    columns, earlier, placed = Columns.of(stitches), None, []
    for row in rows:
        out = write_out(row.parts, stitches if earlier is None else earlier.after or 0, vocabulary, row.side, earlier)
        stretches = _stretches(row, out, vocabulary)
        where = columns.place([[(own.effect.uses, own.effect.makes) for own in stretch] for stretch in stretches])
        placed.append((row, tuple(chain(*stretches)), where))
        if len(columns.all) * len(rows) > MOST_CELLS:
            raise CannotChart(f"The chart would have more than {MOST_CELLS} cells")
        earlier = out
    at = {column: place for place, column in enumerate(columns.all)}
    laid = tuple(ChartRow(row.label, _side(row), _laid(cells, where, at)) for row, cells, where in placed)
    return Grid(laid, len(at))


def _side(row: Row) -> Side:
    if row.side is None:
        raise CannotChart("has no side", row.label)
    return row.side


def _stretches(row: Row, out: WrittenOut, vocabulary: Vocabulary) -> list[list[Working]]:
    """Return the workings of a row from the right edge on, as the right side shows them, repeat by repeat."""
    if out.parts is None:
        raise CannotChart("cannot be worked at this count", row.label)
    if any(isinstance(node, Turn) or (isinstance(node, BindOff) and node.times is None) for node in out.parts):
        raise CannotChart("turns before its end, or binds all stitches off", row.label)
    worked = list(_workings(row.parts, out))
    try:
        seen = [rs_view(each, vocabulary) for each in reversed(worked)] if row.side == "WS" else worked
    except CannotTurn as problem:
        raise CannotChart(f"has no form as the right side shows it: {problem}", row.label) from problem
    return _joined([units(tuple(_flat(each))) for each in seen], vocabulary)


def _workings(parts: Sequence[Node], out: WrittenOut) -> Iterator[Nodes]:
    """Give each working of each open repeat, and what lies between repeats; the whole row where repeats are nested."""
    opens = sum(isinstance(node, OpenRepeat) for node in parts)
    if opens != len(out.times):
        yield out.parts or ()
        return
    times = iter(out.times)
    for opened, nodes in groupby(parts, lambda node: isinstance(node, OpenRepeat)):
        between = tuple(nodes)
        if not opened:
            yield between
        for node in between:
            if isinstance(node, OpenRepeat):
                yield from (node.parts,) * next(times)
                yield node.last or ()


def _flat(parts: Sequence[Node]) -> Iterator[Node]:
    """Give fixed parts one by one, without groups and markers."""
    for node in parts:
        match node:
            case Work():
                yield from (node if node.times == 1 else replace(node, times=1),) * node.times
            case Group():
                for _ in range(node.times):
                    yield from _flat(node.parts)
            case Marker():
                pass
            case IntoOne():
                yield replace(node, parts=tuple(_flat(node.parts)))
            case _:
                yield node


def _joined(stretches: Sequence[Sequence[Nodes]], vocabulary: Vocabulary) -> list[list[Working]]:
    """Return the workings with those in one cell that belong together: a pass-over with what it passes and follows.

    Words that move the yarn stand in the cell of a slipped stitch beside them, else of the stitch after them.
    """
    found: list[tuple[Working, int]] = []
    ahead: Nodes = ()
    for unit, stretch in ((unit, number) for number, units_of in enumerate(stretches) for unit in units_of):
        own = Working(unit, total(unit, vocabulary))
        if own.moves_yarn:
            if not ahead and found and _slips(found[-1][0].nodes):
                found[-1] = found[-1][0].with_more((), unit, vocabulary), found[-1][1]
            else:
                ahead += unit
            continue
        if ahead:
            own, ahead = own.with_more(ahead, (), vocabulary), ()
        while found and own.effect.needs:
            own = own.with_more(found.pop()[0].nodes, (), vocabulary)
        found.append((own, stretch))
    if ahead and found:
        found[-1] = found[-1][0].with_more((), ahead, vocabulary), found[-1][1]
    cells: list[list[Working]] = [[] for _ in stretches]
    for own, stretch in found:
        cells[stretch].append(own)
    return cells


def _slips(nodes: Nodes) -> bool:
    last = nodes[-1]
    return isinstance(last, Work) and last.stitch == SLIP


def _laid(cells: Sequence[Working], where: Sequence[Sequence[int]], at: dict[int, int]) -> tuple[Cell, ...]:
    """Return the cells with those between them that hold no stitch."""
    done: list[Cell] = []
    filled = 0
    for cell, own in zip(cells, where, strict=True):
        places = [at[column] for column in own]
        if not places:
            raise CannotChart("A working leaves no stitch to draw")
        done += [NO_STITCH] * (places[0] - filled)
        filled = places[-1] + 1
        done.append(Cell(cell.nodes, filled - places[0]))
    return (*done, *[NO_STITCH] * (len(at) - filled))
