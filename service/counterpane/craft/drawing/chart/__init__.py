"""A chart: rows as cells on columns, as the right side shows them; what a cell holds is the working itself.

Columns count from the right edge and rows from the lowest. A row may have cells without a stitch, where another row has
more stitches than it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from counterpane.craft.rows.tree import Node, Side

Nodes = tuple[Node, ...]


class CannotChart(Exception):
    """Rows that have no chart: `why` says it of the row whose label is `row`."""

    def __init__(self, why: str, row: str = "") -> None:
        super().__init__(f"Row {row} {why}." if row else f"{why}.")
        self.why = why
        self.row = row


@dataclass(frozen=True, slots=True)
class Cell:
    """A working as the right side shows it, on so many columns; no nodes where the row has no stitch."""

    nodes: Nodes
    wide: int = 1


NO_STITCH = Cell(())


@dataclass(frozen=True, slots=True)
class ChartRow:
    """A row of the chart, its cells from the right edge on."""

    label: str
    side: Side
    cells: tuple[Cell, ...]


@dataclass(frozen=True, slots=True)
class Box:
    """The columns that repeat: the first of them from the right edge, and how many."""

    first: int
    wide: int

    @property
    def end(self) -> int:
        """The column after the last."""
        return self.first + self.wide


@dataclass(frozen=True, slots=True)
class Chart:
    """Rows over columns; `box` are the columns that are worked again, None where there are none."""

    rows: tuple[ChartRow, ...]
    columns: int
    box: Box | None


def piece(cells: Sequence[Cell], first: int, wide: int) -> tuple[Cell, ...] | None:
    """Return the cells on the columns from `first` on; None where one lies across an end of them."""
    at, found = 0, []
    for cell in cells:
        begin, at = at, at + cell.wide
        if begin >= first and at <= first + wide:
            found.append(cell)
        elif begin < first + wide and at > first:
            return None
    return tuple(found)
