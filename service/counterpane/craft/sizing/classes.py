"""Counts that work as classes of numbers: the nearest ones to a target, and what two classes have in common."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from functools import reduce
from heapq import nsmallest
from math import gcd

from counterpane.craft.counts import Progression

ANY = Progression(1, 0, 1)


def rank(count: int, target: Fraction) -> tuple[Fraction, int]:
    """Return the key that sorts counts by their distance from the target, the larger of two as near first."""
    return abs(count - target), -count


def nearest(counts: Progression, target: Fraction, how_many: int = 1) -> tuple[int, ...]:
    """Return the members nearest the target, nearest first and the larger of a tie first, in constant time."""
    if counts.of == 0:
        return (counts.least,)
    below = counts.below(target.numerator // target.denominator)
    above = counts.least if below is None else below + counts.of
    near: list[int] = []
    while len(near) < how_many:
        if below is None or below + above <= 2 * target:
            near.append(above)
            above += counts.of
        else:
            near.append(below)
            below = below - counts.of if below > counts.least else None
    return tuple(near)


def nearest_of(classes: Iterable[Progression], target: Fraction, how_many: int = 1) -> tuple[int, ...]:
    """Return the members nearest the target over several classes; a count in two classes is named once."""
    found = {count for counts in classes for count in nearest(counts, target, how_many)}
    if len(found) < 2:
        return tuple(found)
    return tuple(nsmallest(how_many, found, key=lambda count: rank(count, target)))


def shifted(counts: Progression, by: int) -> Progression:
    """Return the class with `by` stitches added to every count; the least stays at 1 or more."""
    if counts.of == 0:
        return Progression(0, counts.plus + by, counts.least + by)
    least = counts.least + by
    least += max(0, -((least - 1) // counts.of)) * counts.of
    return Progression(counts.of, least % counts.of, least)


def merged(one: Progression, other: Progression) -> Progression | None:
    """Return the counts that both classes hold, by the Chinese remainder theorem; None where there are none."""
    if one.of == 0 or other.of == 0:
        single, wide = (one, other) if one.of == 0 else (other, one)
        return single if wide.admits(single.least) else None
    common = gcd(one.of, other.of)
    if (other.plus - one.plus) % common:
        return None
    of = one.of // common * other.of
    step = (other.plus - one.plus) // common * pow(one.of // common, -1, other.of // common) % (other.of // common)
    plus = (one.plus + one.of * step) % of
    floor = max(one.least, other.least)
    return Progression(of, plus, floor + (plus - floor) % of)


def common(classes: Iterable[Progression]) -> Progression | None:
    """Return the counts that all classes hold; None where there are none, every count where there is no class."""
    start: Progression | None = ANY
    return reduce(lambda one, other: merged(one, other) if one else None, classes, start)
