"""Where a working stops: the finding of the simulation, and the error that carries it inside."""

from __future__ import annotations

from dataclasses import dataclass

from counterpane.craft.rows.tree import NOWHERE, Place


@dataclass(frozen=True, slots=True)
class Halt:
    """Row and place at which the working stops, by the slug of the fault; "unproved" is no fault of the row."""

    slug: str
    row: int
    place: Place = NOWHERE


class Halted(Exception):
    """A working stops at a place."""

    def __init__(self, slug: str, place: Place) -> None:
        super().__init__(slug)
        self.slug = slug
        self.place = place
