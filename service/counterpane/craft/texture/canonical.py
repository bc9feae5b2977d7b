"""The canonical form: one cell that stands for all that are the same up to a shift, or up to given moves."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from counterpane.craft.texture.torus import Cell


def canonical(cells: Iterable[Cell]) -> Cell:
    """Return the least cell that any shift of any of these cells gives, labels compared as text.

    For each shift along the rows the rows are turned about to their least rotation, so m rows of n stitches cost
    about m n comparisons of rows.
    """
    given = list(cells)
    labels = sorted({label for cell in given for row in cell for label in row})
    letters = {label: chr(place) for place, label in enumerate(labels)}
    spelt = (["".join(letters[label] for label in row) for row in cell] for cell in given)
    least = min(_least_shift(rows) for rows in spelt)
    return tuple(tuple(labels[ord(letter)] for letter in row) for row in least)


def _least_shift(rows: Sequence[str]) -> list[str]:
    """Return the least of all shifts; only shifts along that bring the least row about can give it."""
    shifted = [[row[by:] + row[:by] for row in rows] for by in range(len(rows[0]))]
    lowest = [min(each) for each in shifted]
    first = min(lowest)
    return min(_least_rotation(each) for each, low in zip(shifted, lowest, strict=True) if low == first)


def _least_rotation(rows: Sequence[str]) -> list[str]:
    """Return the least rotation of the rows: two starts run side by side, and the greater one jumps past its loss."""
    count, one, other, same = len(rows), 0, 1, 0
    while one < count and other < count and same < count:
        left, right = rows[(one + same) % count], rows[(other + same) % count]
        if left == right:
            same += 1
            continue
        if left > right:
            one += same + 1
        else:
            other += same + 1
        other += one == other
        same = 0
    start = min(one, other)
    return [*rows[start:], *rows[:start]]
