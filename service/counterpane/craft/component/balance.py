"""How a texture stands between its edges: repeat, balancing and edge stitches, and whether it ends as it begins.

Everything is looked at from the right side over a count of several repeats. A stitch counts as an edge stitch where its
column breaks the repeat of the columns beside it; what is left over is there to balance the repeat.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import takewhile
from typing import Literal, TypeAlias

from counterpane.craft.component.worked import NotPlain, Worked, as_worked, from_right, unleaning
from counterpane.craft.counts import Progression
from counterpane.craft.counts.effects import total
from counterpane.craft.rows.tree import OpenRepeat, Row
from counterpane.craft.stitches import Vocabulary

Cell: TypeAlias = tuple[Worked, int]
Column: TypeAlias = tuple[Cell, ...]

REPEATS = 4
"""Repeats over which a texture is looked at, beyond its least count; any number above two serves; house figure."""

MOST_CELLS = 40_000
"""Stitches of all rows beyond which a texture is not laid out; house figure that bounds time."""

_SMALL = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")


@dataclass(frozen=True, slots=True)
class Balance:
    """Whether the left end of a texture mirrors its right end.

    `stray` stitches are too many on that `side`; None where no number of them would help, since the texture is not its
    own mirror image.
    """

    stray: int | None
    side: Literal["left", "right"] | None = None

    @property
    def said(self) -> str:
        """The same in words."""
        if self.stray is None:
            return "the texture is not its own mirror image, so that its two edges cannot match"
        if not self.stray:
            return "it ends at the left as it begins at the right"
        number = _SMALL[self.stray] if self.stray < len(_SMALL) else str(self.stray)
        return f"{number} stray stitch{'' if self.stray == 1 else 'es'} at the {self.side}"


@dataclass(frozen=True, slots=True)
class Layout:
    """The stitches of one repeat, those that balance it, and the edge stitches at the right and at the left.

    `balance` and `closing_rows` are None where they cannot be told from plain columns of stitches. `closing_rows` more
    rows after whole repeats let the top end as the bottom begins.
    """

    repeat: int
    balancing: int
    edges: tuple[int, int]
    balance: Balance | None
    closing_rows: int | None


def layout_of(rows: Sequence[Row], rs: Sequence[bool], start: Progression, vocabulary: Vocabulary) -> Layout | None:
    """Return the layout of rows that work over a progression of counts; None for one count, or rows not plain enough.

    `rs` tells of each row whether it is worked on the right side.
    """
    count = start.least + REPEATS * start.of
    if not start.of or count * len(rows) > MOST_CELLS:
        return None
    try:
        columns = _columns(rows, rs, count, vocabulary)
        edges = _broken(columns, start.of) if columns else _constant(rows, rs, count, vocabulary)
    except NotPlain:
        return None
    balancing = (start.plus - sum(edges)) % start.of
    inner = columns[edges[0] : len(columns) - edges[1]]
    balance = _balance(inner, start.of, vocabulary) if columns else None
    return Layout(start.of, balancing, edges, balance, _closing(inner))


def _columns(rows: Sequence[Row], rs: Sequence[bool], count: int, vocabulary: Vocabulary) -> list[Column]:
    """Return the columns, right edge first; none where a row changes the count within itself."""
    seen = []
    for row, right_side in zip(rows, rs, strict=True):
        works = from_right(row, right_side, count, vocabulary)
        if any(work.uses != work.makes for work in works):
            return []
        seen.append([(work, place) for work in works for place in range(work.uses)])
    return list(zip(*seen, strict=True))


def _broken(columns: Sequence[Column], of: int) -> tuple[int, int]:
    """Return how many columns at the right and at the left break the repeat."""
    middle = len(columns) // 2
    breaks = [place for place in range(len(columns) - of) if columns[place] != columns[place + of]]
    right = max((place + 1 for place in breaks if place < middle), default=0)
    left = max((len(columns) - place - of for place in breaks if place >= middle), default=0)
    return right, left


def _constant(rows: Sequence[Row], rs: Sequence[bool], count: int, vocabulary: Vocabulary) -> tuple[int, int]:
    """Return how many stitches at the right and at the left are worked alike, one to one, in every row.

    A stitch inside the repeat of any row is none of them.
    """
    worked = [as_worked(row, right_side, count, vocabulary) for row, right_side in zip(rows, rs, strict=True)]
    right, left = (_alike(sequences) for sequences in (worked, [works[::-1] for works in worked]))
    outside = [_outside(row, right_side, vocabulary) for row, right_side in zip(rows, rs, strict=True)]
    caps = [cap for cap in outside if cap is not None]
    return min(right, *(cap[0] for cap in caps), count), min(left, *(cap[1] for cap in caps), count)


def _outside(row: Row, rs: bool, vocabulary: Vocabulary) -> tuple[int, int] | None:
    """Return the stitches right and left of a row's repeat; None where it is one plain stitch, or none."""
    opens = [place for place, node in enumerate(row.parts) if isinstance(node, OpenRepeat) and not node.plain]
    if not opens:
        return None
    ends = total(row.parts[: opens[0]], vocabulary).uses, total(row.parts[opens[-1] + 1 :], vocabulary).uses
    return ends if rs else ends[::-1]


def _alike(sequences: Sequence[Sequence[Worked]]) -> int:
    return len(list(takewhile(_one_to_one, zip(*sequences, strict=False))))


def _one_to_one(works: Sequence[Worked]) -> bool:
    return len(set(works)) == 1 and works[0].uses == works[0].makes == 1


def _balance(columns: Sequence[Column], of: int, vocabulary: Vocabulary) -> Balance:
    plain = [tuple((unleaning(work, vocabulary), place) for work, place in column) for column in columns]
    mirrored = [tuple((work, work.uses - 1 - place) for work, place in column) for column in plain[::-1]]
    size = len(plain)
    for stray in range(min(of, size)):
        if plain[: size - stray] == mirrored[stray:]:
            return Balance(stray, "left" if stray else None)
        if plain[stray:] == mirrored[: size - stray]:
            return Balance(stray, "right")
    return Balance(None)


def _closing(columns: Sequence[Column]) -> int | None:
    """Return the fewest rows to add for a top that mirrors the bottom; None unless all is knit and purl."""
    if any(work.key not in ("k", "p") for column in columns for work, _ in column):
        return None
    rows = list(zip(*columns, strict=True))
    longer = (rows + rows[:more] for more in range(len(rows)))
    return next((len(tried) - len(rows) for tried in longer if tried == tried[::-1]), None)
