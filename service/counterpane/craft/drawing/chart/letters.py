"""A chart in letters, for a page that shows no picture: one sign a column, the rows from the top down, and a key.

The signs of knit, purl and yarn-over look like those of the drawn chart; every other working has a letter in the order
in which it is met, and lines of its own over the columns that it takes beside the first.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from string import ascii_uppercase

from counterpane.craft.drawing.chart import Cell, Chart, Lettered, LetteredRow
from counterpane.craft.drawing.chart.page import Named, meaning, sides_of
from counterpane.craft.rows.tree import Work
from counterpane.craft.stitches import Terms, Vocabulary

_SIGNS = {"k": "|", "p": "-"}
_YARN_OVER, _GOES_ON, _NO_STITCH = "o", "=", "."
_MORE = "?"
"""The sign where there are more workings than letters."""


def signs_of(charts: Sequence[Chart], vocabulary: Vocabulary) -> dict[Cell, str]:
    """Return a sign for each working of the charts."""
    cells = dict.fromkeys(cell for chart in charts for row in chart.rows for cell in row.cells if cell.nodes)
    letters = iter(ascii_uppercase)
    return {cell: _known(cell, vocabulary) or next(letters, _MORE) for cell in cells}


def _known(cell: Cell, vocabulary: Vocabulary) -> str | None:
    """Return the sign of a single plain stitch or yarn-over; None for any other working."""
    node = cell.nodes[0]
    if len(cell.nodes) > 1 or cell.wide > 1 or not isinstance(node, Work) or node.times > 1 or node.manner:
        return None
    return _YARN_OVER if node.stitch == "yo" else _SIGNS.get(node.stitch)


def lettered(named: Named, signs: Mapping[Cell, str]) -> Lettered:
    """Return a chart in letters."""
    chart = named.chart
    rows = tuple(LetteredRow(row.label, row.side, "".join(_cells(row.cells, signs))) for row in chart.rows)
    if chart.box is None:
        return Lettered(named.heading, named.note, rows, "")
    left = chart.columns - chart.box.end
    return Lettered(named.heading, named.note, rows, " " * left + "^" * chart.box.wide)


def _cells(cells: Sequence[Cell], signs: Mapping[Cell, str]) -> Iterator[str]:
    """Give the signs of a row from its left edge on."""
    for cell in reversed(cells):
        yield f"{signs[cell] if cell.nodes else _NO_STITCH}{_GOES_ON * (cell.wide - 1)}"


def key(
    charts: Sequence[Chart], signs: Mapping[Cell, str], vocabulary: Vocabulary, terms: Terms
) -> tuple[tuple[str, str], ...]:
    """Return each sign with what it says on the sides on which it is worked."""
    told = [(sign, meaning(cell.nodes, sides_of(charts, cell), vocabulary, terms)) for cell, sign in signs.items()]
    wide = any(cell.wide > 1 for cell in signs)
    empty = any(not cell.nodes for chart in charts for row in chart.rows for cell in row.cells)
    more = ((_GOES_ON, "the working before it goes on over this column"),) if wide else ()
    none = ((_NO_STITCH, "no stitch in this row: go on to the next sign"),) if empty else ()
    return (*told, *more, *none)
