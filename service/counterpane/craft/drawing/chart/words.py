"""From a chart back to rows: what its cells say, with the columns of the box as the repeat."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from counterpane.craft.drawing.chart import Box, CannotChart, Cell, Chart, ChartRow, Nodes, piece
from counterpane.craft.rows.effects import total
from counterpane.craft.rows.tree import Node, OpenRepeat, Row, Work
from counterpane.craft.rows.turning import rs_view
from counterpane.craft.stitches import Vocabulary


def rows_of(chart: Chart, vocabulary: Vocabulary) -> tuple[Row, ...]:
    """Return the rows of a chart as they are worked; a chart of these rows is the same chart."""
    return tuple(Row(row.label, _parts(row, chart, vocabulary), row.side) for row in chart.rows)


def _parts(row: ChartRow, chart: Chart, vocabulary: Vocabulary) -> Nodes:
    seen = _together(row.cells) if chart.box is None else _repeated(row, chart.columns, chart.box, vocabulary)
    return rs_view(seen, vocabulary) if row.side == "WS" else seen


def _repeated(row: ChartRow, columns: int, box: Box, vocabulary: Vocabulary) -> Nodes:
    before, inside = piece(row.cells, 0, box.first), piece(row.cells, box.first, box.wide)
    after = piece(row.cells, box.end, columns - box.end)
    if before is None or inside is None or after is None:
        raise CannotChart("has a stitch across an end of the repeat", row.label)
    parts, rest = _together(inside), _together(after)
    if not parts:
        raise CannotChart("has no stitch in the repeat", row.label)
    stop = total(rest, vocabulary).uses
    only = parts[0]
    if len(parts) == 1 and isinstance(only, Work) and only == Work(only.stitch, only.times):
        return _plain(only.stitch, _together(before), rest, vocabulary)
    return (*_together(before), OpenRepeat(parts, stop), *rest)


def _plain(stitch: str, before: Nodes, rest: Nodes, vocabulary: Vocabulary) -> Nodes:
    """Return one stitch worked across, with the same stitches beside it, as a knitter says it."""
    while before and isinstance(before[-1], Work) and before[-1] == Work(stitch, before[-1].times):
        before = before[:-1]
    while rest and isinstance(rest[0], Work) and rest[0] == Work(stitch, rest[0].times):
        rest = rest[1:]
    return (*before, OpenRepeat((Work(stitch),), total(rest, vocabulary).uses, plain=True), *rest)


def _together(cells: Sequence[Cell]) -> Nodes:
    """Return the workings of cells, the same stitches side by side as one number."""
    return merged(node for cell in cells for node in cell.nodes)


def merged(nodes: Iterable[Node]) -> Nodes:
    """Return nodes with equal stitches side by side put together."""
    done: list[Node] = []
    for node in nodes:
        last = done[-1] if done else None
        if isinstance(node, Work) and isinstance(last, Work) and replace(last, times=node.times) == node:
            done[-1] = replace(last, times=last.times + node.times)
        else:
            done.append(node)
    return tuple(done)
