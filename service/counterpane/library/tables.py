"""A table of words as aligned text and as Markdown."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from dataclasses import dataclass

LEAST_WIDTH = 30
"""A column is not made narrower than this to fit a page; house."""


@dataclass(frozen=True, slots=True)
class Column:
    """A heading, the cells under it, and whether they are numbers."""

    title: str
    cells: tuple[str, ...]
    number: bool = False

    @property
    def width(self) -> int:
        """The characters of its longest cell."""
        return max(map(len, (self.title, *self.cells)))


def aligned(columns: Sequence[Column], page: int | None = None) -> str:
    """Return a table with its columns aligned; the widest ones are wrapped where the table is wider than the page."""
    widths = [column.width for column in columns]
    if page is not None:
        _narrow(widths, page - 2 * (len(widths) - 1))
    heading = _lines([[column.title] for column in columns], widths, columns)
    rule = "  ".join("─" * width for width in widths)
    body = []
    for row in zip(*(column.cells for column in columns), strict=True):
        body += _lines([_cut(cell, width) for cell, width in zip(row, widths, strict=True)], widths, columns)
    return "\n".join([*heading, rule, *body]) + "\n"


def _narrow(widths: list[int], room: int) -> None:
    """Take from the widest columns what is over the room, and no more than that."""
    while sum(widths) > room and max(widths) > LEAST_WIDTH:
        widest = widths.index(max(widths))
        next_to = max((width for width in widths if width < widths[widest]), default=0)
        least = max(LEAST_WIDTH, next_to if widths.count(widths[widest]) == 1 else widths[widest] - 1)
        widths[widest] -= max(1, min(sum(widths) - room, widths[widest] - least))


def _cut(cell: str, width: int) -> list[str]:
    return textwrap.wrap(cell, width) or [""]


def _lines(cells: Sequence[Sequence[str]], widths: Sequence[int], columns: Sequence[Column]) -> list[str]:
    """Return the lines of one row of cells, each cell a list of lines."""
    out = []
    for index in range(max(map(len, cells))):
        words = [cell[index] if index < len(cell) else "" for cell in cells]
        laid = [
            word.rjust(width) if column.number else word.ljust(width)
            for word, width, column in zip(words, widths, columns, strict=True)
        ]
        out.append("  ".join(laid).rstrip())
    return out


def markdown(columns: Sequence[Column]) -> str:
    """Return a table in Markdown; stars and brackets of a row are no layout."""
    rows = [[column.title for column in columns], ["---:" if column.number else "---" for column in columns]]
    rows += [[_plain(cell) for cell in row] for row in zip(*(column.cells for column in columns), strict=True)]
    return "".join(f"| {' | '.join(row)} |\n" for row in rows)


def _plain(cell: str) -> str:
    for sign in "\\*_[]|":
        cell = cell.replace(sign, f"\\{sign}")
    return cell
