"""Which column each stitch of a row stands on, where rows have more and fewer stitches.

A stretch of a row that keeps the count keeps its columns, whatever its increases and decreases do on the way. Where the
count grows for good within a stretch a column begins, where it shrinks for good one ends; one that has ended is used
again by stitches that come to lie there. A stretch is one working of a repeat, or what lies between repeats.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate, chain


@dataclass(slots=True)
class Columns:
    """All columns from the right edge on, by name, and those on which the stitches of the last row stand."""

    all: list[int]
    live: list[int]

    @classmethod
    def of(cls, stitches: int) -> Columns:
        """Return a column for each stitch."""
        return cls(list(range(stitches)), list(range(stitches)))

    def place(self, stretches: Sequence[Sequence[tuple[int, int]]]) -> list[list[int]]:
        """Return the columns of what each working of the next row leaves; each uses and makes so many stitches."""
        below, placed, last = list(reversed(self.live)), [], -1
        changes = [for_good([makes - uses for uses, makes in stretch]) for stretch in stretches]
        for (_, makes), change in zip(chain(*stretches), chain(*changes), strict=True):
            own = [below.pop() for _ in range(makes - max(change, 0))]
            for _ in range(change):
                own.append(self._begin(own[-1] if own else last, below[-1] if below else None))
            for _ in range(-change):
                below.pop()
            last = own[-1] if own else last
            placed.append(own)
        self.live = [column for own in placed for column in own]
        return placed

    def _begin(self, after: int, before: int | None) -> int:
        """Return a column between two: one that has ended there, else a new one."""
        first = self.all.index(after) + 1 if after >= 0 else 0
        end = len(self.all) if before is None else self.all.index(before)
        if first < end:
            return self.all[first]
        self.all.insert(first, len(self.all))
        return self.all[first]


def for_good(changes: Sequence[int]) -> list[int]:
    """Return how much of each change of the count is not undone later in the stretch; the sum stays."""
    if sum(changes) < 0:
        return [-kept for kept in for_good([-change for change in changes])]
    after = list(accumulate(changes, initial=0))
    lowest = list(accumulate(reversed(after), min))[::-1]
    return [max(0, lowest[index + 1] - max(before, 0)) for index, before in enumerate(after[:-1])]
