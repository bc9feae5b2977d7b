"""Rows put into working order: by number, each kind of row that a label stands for filled in."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from counterpane.craft.rows.labels import MOST_ROWS_AT_ONCE, Label
from counterpane.craft.rows.tree import Row


@dataclass(frozen=True, slots=True)
class Wanted:
    """A label that stands for further rows ("and all WS rows"), the row they repeat, and the rows listed before it."""

    label: Label
    row: Row
    listed: int


def in_order(block: Sequence[Row], wanted: Sequence[Wanted], limit: int | None) -> list[Row]:
    """Return the rows of a block as they are worked; `limit` is the last row of the repeat line, if one is printed.

    A row named by a word ("setup") keeps its place, and the numbered rows on either side of it are ordered apart.
    """
    parts = _parts(block)
    placed = [(part, row) for part, row in zip(parts, block, strict=True)]
    for want in wanted:
        part = parts[min(want.listed, len(parts) - 1)] if parts else 0
        placed += [(part, row) for row in _filled(want, [row for _, row in placed], limit)]
    return [row for _, row in sorted(placed, key=_order)]


def _order(placed: tuple[int, Row]) -> tuple[int, int]:
    part, row = placed
    return part, int(row.label) if row.label.isdigit() else 0


def _parts(block: Sequence[Row]) -> list[int]:
    """Return the part of each row: a worded row begins a part of its own."""
    part, out = 0, []
    for row in block:
        part += not row.label.isdigit()
        out.append(part)
    return out


def _filled(want: Wanted, printed: Sequence[Row], limit: int | None) -> Iterator[Row]:
    """Yield the rows that a label stands for and that no line of their own gives."""
    first, step = want.label.also or (2, 2)
    numbers = {int(row.label) for row in printed if row.label.isdigit()}
    if first == 0:
        first = 1 if sum(number % 2 for number in numbers) * 2 < len(numbers) else 2
    others = [number for number in numbers if (number - first) % step]
    last = limit or (max(others, default=first) + (1 if first % 2 == 0 else 0))
    start = first + step if want.label.numbers else first
    for number in range(start, min(last, first + MOST_ROWS_AT_ONCE) + 1, step):
        if number not in numbers:
            yield replace(want.row, label=str(number))
