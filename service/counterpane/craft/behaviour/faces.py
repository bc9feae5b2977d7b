"""The smallest repeat of a texture as faces, and what follows from them alone: surplus, runs, columns, crossings.

One upright cell is looked at; nothing here grows with a blanket.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from itertools import groupby
from typing import TypeAlias

from counterpane.craft.component import Component, textures
from counterpane.craft.fabric import Course, Look, Texture
from counterpane.craft.fabric.marks import Mark
from counterpane.craft.stitches import Vocabulary

KEPT = 512
"""Components whose repeat is kept at hand; house figure."""

SIMPLE = frozenset({Mark("k"), Mark("p")})
"""The loops that a simple fabric is made of: knit and purl, drawn straight up, none twisted."""

Run: TypeAlias = int | None
"""Stitches or rows of one face side by side at most; None for a face that never changes."""


@dataclass(frozen=True, slots=True)
class Repeat:
    """One repeat of a texture as the right side shows it: courses from the bottom, each from its right edge.

    `crossed` is how many of its columns are crossed in any row, 0 where stitches change the count, which moves columns.
    `simple` says that all is plain knit and purl, none of it twisted.
    """

    courses: tuple[Course, ...]
    crossed: int
    simple: bool

    @property
    def wide(self) -> int:
        """Stitches of the repeat."""
        return len(self.courses[0])

    @property
    def knit(self) -> Fraction:
        """Share of knit faces in all faces."""
        faces = [look for course in self.courses for look in course]
        return Fraction(faces.count("knit"), len(faces))

    @property
    def surplus(self) -> Fraction:
        """Surplus of one face over the other as a share of all, for a plain repeat."""
        return abs(2 * self.knit - 1)

    @property
    def across(self) -> Run:
        """The longest run of one face in a course."""
        return _longest(self.courses)

    @property
    def upright(self) -> Run:
        """The longest run of one face in a column."""
        return _longest(self.columns)

    @property
    def columns(self) -> tuple[Course, ...]:
        """The columns of the repeat, right edge first."""
        return tuple(zip(*self.courses, strict=True))

    @property
    def ribs(self) -> tuple[int, ...] | None:
        """How many neighbouring columns show one face, right edge first; None where any column changes its face."""
        return None if self.across is None or len(set(self.courses)) > 1 else _runs(self.courses[0])


@lru_cache(maxsize=KEPT)
def repeat_of(component: Component, vocabulary: Vocabulary) -> Repeat | None:
    """Return the repeat of a component's first version that can be laid out; None where there is none."""
    found = (_repeat(texture) for texture in textures(component, vocabulary) if texture is not None)
    return next(found, None)


def _repeat(texture: Texture) -> Repeat:
    courses = tuple(tuple(texture.looks[label] for label in row) for row in texture.cell)
    simple = all(texture.marks[label] in SIMPLE for row in texture.cell for label in row)
    return Repeat(courses, _crossed(texture), simple)


def _crossed(texture: Texture) -> int:
    """Return the columns in which a loop was crossed, or drawn through one beside the one below it."""
    rows = [[(texture.marks[label], texture.looks[label]) for label in row] for row in texture.cell]
    if any(len(mark.drawn) != 1 and look != "crossed" for row in rows for mark, look in row):
        return 0
    return sum(
        any(look == "crossed" or mark.drawn != (0,) for mark, look in column) for column in zip(*rows, strict=True)
    )


def _longest(lines: Sequence[Course]) -> Run:
    """Return the longest run in lines that go round; None where one of them never changes."""
    runs = [_runs(line) for line in lines]
    return None if any(len(each) < 2 for each in runs) else max(max(each) for each in runs)


def _runs(line: Sequence[Look]) -> tuple[int, ...]:
    """Return the lengths of the runs of one look in a line that goes round."""
    first = next((at for at in range(len(line)) if line[at] != line[at - 1]), 0)
    return tuple(len(list(run)) for _, run in groupby((*line[first:], *line[:first])))
