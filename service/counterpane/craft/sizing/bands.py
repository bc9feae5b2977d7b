"""Stacked bands that must share one count: the smallest change that makes two or more of them agree."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import gcd

from counterpane.craft.counts import Progression
from counterpane.craft.measures import half_up
from counterpane.craft.sizing.classes import merged

MOST_TRIED = 20_000
"""Counts tried on either side of the target before the search for balanced bands ends; house figure."""

FEW_COUNTS = Fraction(1, 2)
"""Bands share few counts where their common multiple is more than this share of the target."""


@dataclass(frozen=True, slots=True)
class Balance:
    """A count, and the stitches each band's edges gain (or lose) to work at it."""

    count: int
    changes: tuple[int, ...]


def corrections(one: Progression, other: Progression) -> tuple[int, ...]:
    """Return the changes of the second band's edge stitches that let it share counts with the first.

    Sums of both sides, the smaller change first and adding before dropping; empty where they share counts as they are.
    """
    step = gcd(one.of, other.of)
    if merged(one, other):
        return ()
    short = (one.plus - other.plus) % step
    return tuple(sorted((short, short - step), key=lambda change: (abs(change), -change)))


def even_correction(one: Progression, other: Progression) -> int | None:
    """Return the smallest change that can be halved over both sides; None where no even change helps."""
    step = gcd(one.of, other.of)
    short = (one.plus - other.plus) % step
    even = [change for change in (short, short - step, short + step) if change % 2 == 0]
    return min(even, key=lambda change: (abs(change), -change), default=None)


def change_at(counts: Progression, count: int) -> int:
    """Return the edge stitches, nearest none, by which a band must grow to work at this count; 0 where it fits."""
    if counts.of == 0:
        return count - counts.least
    over = (count - counts.plus) % counts.of
    change = over if 2 * over <= counts.of else over - counts.of
    return change if count - change >= counts.least else count - counts.least - (count - counts.least) % counts.of


def _outwards(target: Fraction) -> Iterator[int]:
    middle = int(half_up(target))
    yield middle
    for step in range(1, MOST_TRIED + 1):
        yield middle + step
        if step < middle:
            yield middle - step


def balanced(bands: Sequence[Progression], target: Fraction) -> Balance:
    """Return the count near the target that asks for the least change of the bands' edges.

    The cost is the distance from the target plus the sum of the changes; of two that cost the same the one that changes
    fewer bands, then the larger count. There is always an answer.
    """
    best: tuple[Fraction, int, int] | None = None
    found = Balance(0, ())
    for count in _outwards(target):
        if best and abs(count - target) - 1 > best[0]:
            break
        changes = tuple(change_at(band, count) for band in bands)
        cost = (abs(count - target) + sum(map(abs, changes)), sum(change != 0 for change in changes), -count)
        if best is None or cost < best:
            best, found = cost, Balance(count, changes)
    return found


def share_few_counts(common: Progression, target: Fraction) -> bool:
    """Say whether the counts that the bands share lie further apart than half the target."""
    return common.of > target * FEW_COUNTS
