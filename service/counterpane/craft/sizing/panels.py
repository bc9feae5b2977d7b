"""Panels side by side: which sums of their widths exist, and the repeats that come nearest a target."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import gcd

from counterpane.craft.measures import half_up

WIDEST_TABLE = 100_000
"""Largest step for which the table of sums is made; house figure that bounds time and memory."""


@dataclass(frozen=True, slots=True)
class Panel:
    """A panel of `of` stitches a repeat plus `plus`, at least `least` repeats, that occurs `times` in the row."""

    of: int
    plus: int
    least: int = 1
    times: int = 1

    def stitches(self, repeats: int) -> int:
        """Return the stitches of all its occurrences at this many repeats."""
        return self.times * (self.of * repeats + self.plus)

    @property
    def step(self) -> int:
        """Stitches that one more repeat of every occurrence adds."""
        return self.times * self.of


@dataclass(frozen=True, slots=True)
class Arrangement:
    """Repeats of each panel, and the whole stitch count."""

    repeats: tuple[int, ...]
    count: int


def least_sums(steps: Sequence[int]) -> tuple[int | None, ...]:
    """Return for each class modulo the smallest step the least sum of steps in it; None where no sum ever is.

    Shortest paths round each cycle twice: a step for each class and panel. ValueError for a step below 1 or too wide.
    """
    smallest = min(steps)
    if smallest < 1 or smallest > WIDEST_TABLE:
        raise ValueError("panel repeats must be of 1 to 100,000 stitches")
    least: list[int | None] = [0, *[None] * (smallest - 1)]
    for step in steps:
        for start in range(gcd(step, smallest)):
            _go_round(least, start, step)
    return tuple(least)


def _go_round(least: list[int | None], start: int, step: int) -> None:
    place = start
    for _ in range(2 * len(least) // gcd(step, len(least))):
        here, onward = least[place], (place + step) % len(least)
        there = least[onward]
        if here is not None and (there is None or here + step < there):
            least[onward] = here + step
        place = onward


def reachable(steps: Sequence[int], total: int) -> bool:
    """Say whether repeats of these steps can add up to the total."""
    least = least_sums(steps)[total % min(steps)]
    return least is not None and least <= total


def largest_missing(steps: Sequence[int]) -> int | None:
    """Return the largest sum that the steps cannot make; None where there are endlessly many."""
    least = least_sums(steps)
    known = [sum_ for sum_ in least if sum_ is not None]
    return max(known) - min(steps) if len(known) == len(least) else None


def arrange(panels: Sequence[Panel], edges: int, target: Fraction) -> Arrangement:
    """Return the repeats of two or three kinds of panel whose sum with the edges comes nearest the target.

    Of sums as near: repeats (times occurrences) that differ least between the panels, then more of the first panel,
    then the larger sum. A target below the least sum gives the least.
    """

    def worth(found: Arrangement) -> tuple[Fraction, int, int, int]:
        shares = [panel.times * repeats for panel, repeats in zip(panels, found.repeats, strict=True)]
        return abs(found.count - target), max(shares) - min(shares), -found.repeats[0], -found.count

    return min(_arrangements(panels, edges, target), key=worth)


def _arrangements(panels: Sequence[Panel], edges: int, target: Fraction) -> Iterator[Arrangement]:
    *others, last = panels
    for chosen in _choices(others, target):
        spent = edges + sum(panel.stitches(repeats) for panel, repeats in zip(others, chosen, strict=True))
        middle = int(half_up((target - spent - last.times * last.plus) / last.step))
        for repeats in (max(last.least, middle + off) for off in (-1, 0, 1)):
            yield Arrangement((*chosen, repeats), spent + last.stitches(repeats))


def _choices(panels: Sequence[Panel], target: Fraction) -> Iterator[tuple[int, ...]]:
    if not panels:
        yield ()
        return
    first, *rest = panels
    most = max(first.least, int((target - first.times * first.plus) // first.step) + 1)
    for repeats in range(first.least, min(most, first.least + WIDEST_TABLE) + 1):
        for others in _choices(rest, target):
            yield (repeats, *others)
