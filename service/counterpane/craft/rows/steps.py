"""The steps of a text in working order: rows, repeat lines, and where a piece begins and ends."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias

from counterpane.craft.rows.again import Again
from counterpane.craft.rows.statements import StatedCastOn, StatedEnd
from counterpane.craft.rows.tree import Row


@dataclass(frozen=True, slots=True)
class AgainStep:
    """A repeat line in working order: the indices of the listed rows that it works again."""

    again: Again
    rows: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class StartStep:
    """A cast-on or pick-up after rows: another piece begins; its count is not `known` where none is printed."""

    cast_on: StatedCastOn
    known: bool = True


@dataclass(frozen=True, slots=True)
class EndStep:
    """All stitches are bound off: the piece ends."""

    end: StatedEnd


Step: TypeAlias = Row | AgainStep | StartStep | EndStep
