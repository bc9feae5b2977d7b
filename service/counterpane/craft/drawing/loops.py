"""What one stitch looks like: the loop of a mark as filled shapes in a cell ten units wide and ten high.

A knit face is a loop whose two legs come up from the stitch below; a purl face the head of the stitch below and the
strand between two stitches; an opening is what a yarn-over leaves. A leg begins at the stitch it was drawn through, so
that decreases lean and crossings cross. Shapes of our own, after what the fabric shows (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from counterpane.craft.drawing.crossings import crossing_of
from counterpane.craft.drawing.paper import said
from counterpane.craft.fabric.faces import Look
from counterpane.craft.fabric.marks import FRONT, HELD_BACK, HELD_FRONT, TWISTED, Mark
from counterpane.craft.stitches import Vocabulary

CELL = 10
"""Units of a side of a stitch's cell."""
FURTHEST = 2
"""Columns from which a leg that does not cross is drawn at the most; house figure."""
CROSSED_ROWS = 3
"""Rows over which a crossing pulls its loops; common practice, no source."""
_HEAD = "M-1.4 10C-.2-1.6 10.2-1.6 11.4 10C8.8 5.4 1.2 5.4-1.4 10Z"
_STRAND = "M3.4 2C4.6 13 15.4 13 16.6 2C13.6 6.2 6.4 6.2 3.4 2Z"
_RING = "M5 .4C11 .4 11 10 5 10C-1 10-1 .4 5 .4ZM5 1.8C1 1.8 1 8.6 5 8.6C9 8.6 9 1.8 5 1.8Z"
_ACROSS = "M-1 5.4C3 2.6 7 2.6 11 5.4C7 8.4 3 8.4-1 5.4Z"
_TWISTED = (
    "M6.6 12.2C5 9 1.2 7 2.2 3.4C3.2.8 5 .6 5.4 1.6C3.6 3.6 7.4 7.6 6.6 12.2Z",
    "M3.4 12.2C5 9 8.8 7 7.8 3.4C6.8.8 5 .6 4.6 1.6C6.4 3.6 2.6 7.6 3.4 12.2Z",
)


def shapes(mark: Mark, vocabulary: Vocabulary) -> tuple[str, ...]:
    """Return the shapes of a mark as the path data of SVG, those in front last."""
    look = mark.look(vocabulary)
    if look == "open":
        return (_RING,)
    if look == "purl":
        return tuple(_purl(mark))
    if look == "slipped":
        return (*_legs((0,), 2), *((_ACROSS,) if FRONT in mark.notes else ()))
    if mark.stitch in TWISTED:
        return _TWISTED
    return tuple(_legs(_bases(mark, look, vocabulary), CROSSED_ROWS if look == "crossed" else 1))


def uncrossed(mark: Mark, vocabulary: Vocabulary) -> Mark:
    """Return a mark of a crossing with the one loop that it came from, and where that was held; others as they are."""
    stitch = vocabulary.stitches.get(mark.stitch)
    crossing = crossing_of(stitch) if stitch else None
    if crossing is None or len(mark.drawn) != crossing.stitches:
        return mark
    place = -min(mark.drawn)
    below, in_front = crossing.comes_from(place)
    return replace(mark, drawn=(below - place,), notes=(HELD_FRONT if in_front else HELD_BACK,))


def drawn_across(mark: Mark, at: int, count: int, below: int) -> Mark:
    """Return a mark with the columns it was drawn from as they lie where rows of other counts are equally wide.

    `at` is its column of `count`; the row below it has `below` of them.
    """
    if count == below:
        return mark
    half = Fraction(1, 2)
    lies = ((at + column + half) * count / below - half - at for column in mark.drawn)
    return replace(mark, drawn=tuple(sorted({round(place) for place in lies})))


def depth(mark: Mark) -> int:
    """Return how far in front a mark lies: those held behind first, those held in front last."""
    return 1 + (HELD_FRONT in mark.notes) - (HELD_BACK in mark.notes)


def _purl(mark: Mark) -> Iterator[str]:
    """Give the head of each stitch below, and the strand to the next stitch."""
    for base in sorted(mark.drawn or (0,), key=abs, reverse=True):
        shift = -min(max(base, -1), 1) * CELL
        yield f"{_moved(shift)}" if shift else _HEAD
    yield _STRAND


def _moved(shift: int) -> str:
    """Return the head of a stitch that lies a column further, drawn towards this one."""
    return f"M{shift - 1} 9C{shift + 2} 5 {5 + shift // 4} 4 10.8 7.4C{5 + shift // 4} 6 {shift + 3} 8 {shift - 1} 9Z"


def _bases(mark: Mark, look: Look, vocabulary: Vocabulary) -> Sequence[int]:
    """Return the columns from which the loop was drawn, the one on top last: the left one where it leans right."""
    bases = tuple(mark.drawn) or (0,)
    if look == "crossed":
        return bases
    # How far a row of lace shifts its stitches is spread over many rows; a leg leans to its neighbour at most.
    nearest = min(bases, key=abs)
    shift = nearest - min(max(nearest, -1), 1)
    stitch = vocabulary.stitches.get(mark.stitch)
    lean = stitch.lean if stitch else None
    near = (min(max(base - shift, -FURTHEST), FURTHEST) for base in bases)
    return sorted(dict.fromkeys(near), key=abs if lean == "centre" else None, reverse=lean in ("left", "centre"))


def _legs(bases: Sequence[int], rows: int) -> Iterator[str]:
    """Give two legs for each column from which the loop was drawn, over so many rows."""
    foot = Fraction(CELL * rows + 2)
    for base in bases:
        x = Fraction(CELL, 2) - base * CELL
        for side in (-1, 1):
            yield _leg(x, foot, side)


def _leg(x: Fraction, foot: Fraction, side: int) -> str:
    """Return one leg from its foot to the head of the loop, like a leaf; `side` is -1 for the left one."""
    top, middle = (Fraction(5) + side * Fraction(48, 10), Fraction(0)), foot / 2
    outer = (x + side * Fraction(48, 10), foot - 1), (top[0] + side * Fraction(8, 10), middle)
    inner = (top[0] - side * Fraction(52, 10), Fraction(-1, 2)), (x + side * Fraction(1, 10), middle + 2)
    points = [_point(each) for each in (*outer, top, *inner)]
    return f"M{_point((x, foot))}C{points[0]} {points[1]} {points[2]}C{points[3]} {points[4]} {_point((x, foot))}Z"


def _point(at: tuple[Fraction, Fraction]) -> str:
    return f"{said(at[0])} {said(at[1])}"
