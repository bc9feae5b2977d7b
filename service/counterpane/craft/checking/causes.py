"""What probably lies behind a misfit: the one row whose repeat differs from all the others."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from counterpane.craft.counts import Maps, count
from counterpane.craft.rows.tree import Row

MOST_ROWS_COMPARED = 400  # House.


def odd_row(rows: Sequence[Row], maps: Maps, promised: int = 0) -> int | None:
    """Return the index of the row without which the others nest, None where none or several would do.

    Several rows that repeat the same stitches count as one; the smaller group is the odd one. The multiple that a text
    promises speaks for the rows that repeat so many stitches.
    """
    if not 2 < len(rows) <= MOST_ROWS_COMPARED:
        return None
    repeats = [_repeat(row, maps) for row in rows]
    groups = Counter(of for of in repeats if of > 1)
    groups[promised] += promised in groups
    for of, _ in sorted(groups.items(), key=lambda item: (item[1], item[0])):
        rest = [row for row, other in zip(rows, repeats, strict=True) if other != of]
        if 2 * groups[of] >= sum(groups.values()):
            return None
        if _nests(rest, maps):
            return repeats.index(of)
    return None


def repeat_of_others(rows: Sequence[Row], odd: int, maps: Maps) -> int:
    """Return the stitches of the repeat that most other rows have."""
    found = Counter(of for i, row in enumerate(rows) if i != odd and (of := _repeat(row, maps)) > 1)
    return max(found, key=lambda of: (found[of], of), default=1)


def _repeat(row: Row, maps: Maps) -> int:
    known = maps.of(row.parts)
    if known is not None:
        return known.of
    starts = count([row.parts], maps.vocabulary, maps=maps).starts
    return starts[0].of if starts else 0


def _nests(rows: Sequence[Row], maps: Maps) -> bool:
    chain = count([row.parts for row in rows], maps.vocabulary, maps=maps)
    return bool(chain.starts) and not chain.suspicious
