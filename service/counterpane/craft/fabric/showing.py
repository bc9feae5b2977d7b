"""What a texture shows in one repeat: faces, ridges, openings, yarn past slipped stitches, twists and crossings."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby

from counterpane.craft.fabric.faces import Look
from counterpane.craft.fabric.marks import TWISTED
from counterpane.craft.fabric.structure import WRAPPED_TWICE
from counterpane.craft.fabric.texture import Texture


@dataclass(frozen=True, slots=True)
class Showing:
    """What stands in the smallest upright cell of a texture, seen from the right side.

    `ridges` are those on the right and on the wrong side. `openings` are the yarn-overs of each opening. `strand` is
    the most stitches that the yarn passes in one go, slipped next to one another, `rows_slipped` the most rows over
    which one loop is slipped; both are None where they have no end.
    """

    looks: Mapping[Look, int]
    ridges: tuple[int, int]
    openings: tuple[int, ...]
    strand: int | None
    rows_slipped: int | None
    twisted: int
    crossed: int


def showing(texture: Texture) -> Showing:
    """Count what one smallest upright cell shows."""
    rows = [[texture.looks[label] for label in row] for row in texture.cell]
    stitches = [texture.marks[label] for row in texture.cell for label in row]
    looks = Counter(look for row in rows for look in row)
    return Showing(
        dict(looks),
        (_ridges(rows, "purl"), _ridges(rows, "knit")),
        tuple(opening for row in texture.cell for opening in _openings(texture, row)),
        _most([run for row in rows for run in _runs([look == "slipped" for look in row])]),
        _most([_slipped_down(texture, row, at) for row in range(len(rows)) for at in range(len(rows[0]))]),
        sum(mark.stitch in TWISTED for mark in stitches),
        looks["crossed"],
    )


def _ridges(rows: Sequence[Sequence[Look]], face: Look) -> int:
    """Return the rows that show this face throughout and stand alone; above one another they are no ridge."""
    return sum(run == 1 for run in _runs([set(row) == {face} for row in rows]))


def _openings(texture: Texture, row: Sequence[str]) -> Iterator[int]:
    """Give the yarn-overs of each opening of a row; one wrapped twice counts as two."""
    opens = [texture.looks[label] == "open" for label in row]
    start = next((at for at, is_open in enumerate(opens) if not is_open), 0)
    for is_open, run in groupby((*row[start:], *row[:start]), key=lambda label: texture.looks[label] == "open"):
        if is_open:
            yield sum(2 if texture.marks[label].stitch == WRAPPED_TWICE else 1 for label in run)


def _runs(flags: Sequence[bool]) -> list[int | None]:
    """Return the lengths of the runs of True round a circle; None for one without an end."""
    if all(flags):
        return [None]
    start = flags.index(False)
    turned = (*flags[start:], *flags[:start])
    return [len(list(run)) for is_on, run in groupby(turned) if is_on]


def _slipped_down(texture: Texture, row: int, at: int) -> int | None:
    """Return over how many rows the loop of this place has been slipped, this row and those below it."""
    height, width = len(texture.cell), len(texture.cell[0])
    for rows in range(height * width + 1):
        label = texture.cell[(row - rows) % height][at % width]
        if texture.looks[label] != "slipped":
            return rows
        at += texture.marks[label].drawn[0]
    return None


def _most(lengths: Sequence[int | None]) -> int | None:
    known = [length for length in lengths if length is not None]
    return None if len(known) < len(lengths) else max(known, default=0)
