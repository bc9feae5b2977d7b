"""Which side each row is worked on: as stated, or by alternation from the nearest stated row of its section."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import TypeVar, cast

from counterpane.craft.rows.sharing import Shared
from counterpane.craft.rows.tree import Row, Side

_Step = TypeVar("_Step")
_AnyRow = TypeVar("_AnyRow", bound=Row)
_OTHER: dict[Side, Side] = {"RS": "WS", "WS": "RS", "round": "round"}


def with_sides(steps: Sequence[_Step], shared: Shared) -> tuple[_Step, ...]:
    """Return the steps with the sides of their rows worked out; what is no row passes through.

    Rows that other texts have on the same side are `shared`.
    """
    rows = [(index, step) for index, step in enumerate(steps) if isinstance(step, Row)]
    if all(row.side is None for _, row in rows):
        return tuple(steps)
    out = list(steps)
    sides = _sides([row for _, row in rows])
    for (index, row), side in zip(rows, sides, strict=True):
        out[index] = cast("_Step", row if row.side == side else shared.of(_on_side, row, side))
    return tuple(out)


def _on_side(row: _AnyRow, side: Side | None) -> _AnyRow:
    return replace(row, side=side)


def _sides(rows: list[Row]) -> list[Side | None]:
    """Spread the stated sides forward and backward within each section; the nearer statement wins."""
    forward = _spread(rows, range(len(rows)))
    backward = _spread(rows, range(len(rows) - 1, -1, -1))
    out: list[Side | None] = []
    for (near, side), (far, other) in zip(forward, backward, strict=True):
        out.append(side if near <= far else other)
    return out


def _spread(rows: list[Row], order: range) -> list[tuple[int, Side | None]]:
    """Return for each row the distance to the last stated one in this order, and the side that follows from it."""
    far = len(rows) + 1
    out: list[tuple[int, Side | None]] = [(far, None)] * len(rows)
    distance, side, section = far, None, None
    for index in order:
        row = rows[index]
        if row.section != section:
            distance, side = far, None
        section = row.section
        if row.side is not None:
            distance, side = 0, row.side
        elif side is not None:
            distance, side = distance + 1, _OTHER[side]
        out[index] = (distance, side)
    return out
