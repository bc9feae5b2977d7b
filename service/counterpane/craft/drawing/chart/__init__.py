"""A chart: rows as cells on columns, as the right side shows them; what a cell holds is the working itself.

Columns count from the right edge and rows from the lowest. A row may have cells without a stitch, where another row has
more stitches than it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
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


@dataclass(frozen=True, slots=True)
class LetteredRow:
    """A row of a chart: its label, its side, and a sign for each column, the left edge first."""

    label: str
    side: str
    cells: str


@dataclass(frozen=True, slots=True)
class Lettered:
    """A chart in letters; rows go from the lowest up, `framed` marks the columns that repeat, "" where none do."""

    heading: str
    note: str
    rows: tuple[LetteredRow, ...]
    framed: str

    def lines(self) -> Iterator[str]:
        """Give the rows from the top down, with their labels on the side on which they begin."""
        wide = max(len(row.label) for row in self.rows)
        for row in reversed(self.rows):
            left, right = ("", row.label) if row.side != "WS" else (row.label, "")
            yield f"{left:>{wide}}  {row.cells}  {right}".rstrip()
        if self.framed:
            yield f"{'':{wide}}  {self.framed}".rstrip()


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
