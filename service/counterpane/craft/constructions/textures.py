"""Rows of a part as a construction needs them: what is worked, on which side it begins, over which counts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from counterpane.craft.component import Component, DerivedVersion, derive
from counterpane.craft.constructions.joining import CannotJoin, Nodes, closed, refuse_loose, stitch_by_stitch
from counterpane.craft.constructions.obstacles import CastsOn, CountChanges, DoesNotJoin, NoCount, Stuck
from counterpane.craft.counts import Progression
from counterpane.craft.rows.tree import Side
from counterpane.craft.sizing.lengths import side_of
from counterpane.craft.stitches import Vocabulary

MOST_LOOKED_AT = 100_000
"""Stitches of a repeat beyond which a texture's symmetry is not looked at; house figure that bounds time."""


@dataclass(frozen=True, slots=True)
class Texture:
    """One version of a part: its rows, the side of the first one, and the counts at which all of them work."""

    rows: tuple[Nodes, ...]
    first_side: Side
    starts: tuple[Progression, ...]

    @property
    def period(self) -> int:
        """Rows of one vertical repeat."""
        return len(self.rows)

    def admits(self, stitches: int) -> bool:
        """Say whether the rows can be worked over so many stitches."""
        return any(start.admits(stitches) for start in self.starts)

    def repeats(self, stitches: int) -> int:
        """Return the repeats across at a count that works."""
        start = next(start for start in self.starts if start.admits(stitches))
        return (stitches - start.plus) // start.of if start.of else 1

    @property
    def either_side(self) -> bool:
        """Whether all rows are alike, so that it is the same fabric on whichever side it begins."""
        return len(_shortest(self.rows)) == 1

    def side(self, row: int) -> Side:
        """Return the side of a row of the repeat, counted from 0."""
        return side_of(row + 1, self.first_side)


@lru_cache(maxsize=512)
def textures_of(component: Component, vocabulary: Vocabulary, pointer: str) -> tuple[Texture, ...]:
    """Return the versions of a part whose rows work; Stuck where there are none, or where rows cannot be joined."""
    found = tuple(_texture(version, pointer) for version in derive(component, vocabulary).versions)
    if not found:
        raise Stuck(NoCount(pointer))
    return found


def _texture(version: DerivedVersion, pointer: str) -> Texture:
    if version.casts_on:
        raise Stuck(CastsOn(pointer))
    if version.text.faults or not version.starts:
        raise Stuck(NoCount(pointer))
    _refuse_unfit(version, pointer)
    if version.drift != 0:
        raise Stuck(CountChanges(pointer, version.drift))
    return Texture(tuple(row.parts for row in version.rows), version.first_side, version.starts)


def _refuse_unfit(version: DerivedVersion, pointer: str) -> None:
    """Raise Stuck for rows that no whole row from edge to edge can be made of."""
    if version.first_side == "round":
        raise Stuck(DoesNotJoin(pointer, "is worked in rounds"))
    if version.repeats_part:
        raise Stuck(DoesNotJoin(pointer, "repeats only some of its rows"))
    try:
        for row in version.rows:
            refuse_loose(row.parts)
    except CannotJoin as fault:
        raise Stuck(DoesNotJoin(pointer, fault.why)) from None


def seen_from_rs(texture: Texture, stitches: int, vocabulary: Vocabulary) -> tuple[str, ...]:
    """Return each row of plain knit and purl as seen from the right side, right edge first; CannotJoin for others.

    An odd number of rows is seen twice, once from either side.
    """
    rows = texture.period * (1 + texture.period % 2)
    return tuple(_faces(texture, index, stitches, vocabulary) for index in range(rows))


def _faces(texture: Texture, index: int, stitches: int, vocabulary: Vocabulary) -> str:
    works = stitch_by_stitch(closed(texture.rows[index % texture.period], stitches, vocabulary), vocabulary)
    if any(work.stitch not in ("k", "p") or work.manner for work in works):
        raise CannotJoin("holds more than knit and purl")
    faces = "".join(work.stitch for work in works)
    return faces if texture.side(index) == "RS" else faces[::-1].translate({ord("k"): "p", ord("p"): "k"})


def changes_by_row(texture: Texture, vocabulary: Vocabulary) -> bool:
    """Say whether plain rows show other columns from row to row, as moss does and rib does not."""
    try:
        rows = seen_from_rs(texture, small_count(texture), vocabulary)
    except CannotJoin:
        return False
    return len(set(rows)) > 1


@lru_cache(maxsize=512)
def half_repeat(texture: Texture, stitches: int, vocabulary: Vocabulary) -> int | None:
    """Return half the rows of a repeat whose second half is the first one shifted, looked at over so many stitches.

    None where it is not, or where the texture is more than knit and purl.
    """
    half, odd = divmod(texture.period, 2)
    if odd or stitches * texture.period > MOST_LOOKED_AT:
        return None
    try:
        rows = seen_from_rs(texture, stitches, vocabulary)
    except CannotJoin:
        return None
    wide = next((start.of for start in texture.starts if start.admits(stitches)), 0)
    return half if any(_shifted(rows, half, by) for by in range(1, wide)) else None


def _shifted(rows: Sequence[str], half: int, by: int) -> bool:
    return all(upper[: len(upper) - by] == lower[by:] for lower, upper in zip(rows[:half], rows[half:], strict=True))


def alike(one: Component, other: Component, vocabulary: Vocabulary) -> bool:
    """Say whether two components give the same fabric by the same rows, whatever they are called."""
    try:
        return not _fabrics(one, vocabulary).isdisjoint(_fabrics(other, vocabulary))
    except Stuck:
        return False


@lru_cache(maxsize=512)
def _fabrics(component: Component, vocabulary: Vocabulary) -> frozenset[tuple[Nodes, ...]]:
    return frozenset(_shortest(texture.rows) for texture in textures_of(component, vocabulary, ""))


def _shortest(rows: tuple[Nodes, ...]) -> tuple[Nodes, ...]:
    """Return the shortest run of rows that gives all of them when repeated."""
    lengths = (length for length in range(1, len(rows) + 1) if len(rows) % length == 0)
    return next(rows[:length] for length in lengths if rows[:length] * (len(rows) // length) == rows)


def small_count(texture: Texture) -> int:
    """Return a small count that shows at least two repeats of the texture."""
    start = min(texture.starts, key=lambda start: start.least)
    return start.least + 2 * start.of
