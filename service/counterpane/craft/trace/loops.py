"""Loops, what was worked, and the needles they lie on."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from counterpane.craft.rows.tree import NOWHERE, Place
from counterpane.craft.trace.halts import Halted

Side = Literal["RS", "WS", "round"]
CAST_ON = "cast on"
# A simulation is for small pieces; beyond this many loops or movements it stops and proves nothing; house bound.
MOST_LOOPS = 200_000


@dataclass(frozen=True, slots=True)
class Loop:
    """One loop: its number, the row (-1: the cast-on) and stitch that made it, and the loops it was drawn through."""

    number: int
    row: int
    stitch: str
    parents: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Worked:
    """One stitch as it was worked: on which side, the loops it took and those it left.

    A slipped stitch leaves the loop it took. A pass-over takes the loops it passes and leaves none. `into` is 1 or 2
    for a stitch worked with others into one stitch or into a double yarn-over; the first of them takes the loops.
    `in_front` says of one that was `held` that the cable needle hung in front of the work.
    """

    stitch: str
    row: int
    side: Side
    takes: tuple[Loop, ...]
    leaves: tuple[Loop, ...]
    manner: tuple[str, ...] = ()
    held: bool = False
    place: Place = NOWHERE
    into: int = 0
    in_front: bool = False


@dataclass(slots=True)
class Needles:
    """Left, right and cable needle, tips last; None hangs where a marker does.

    `in_front` are the numbers of the loops that were held in front of the work.

    An `endless` left needle never runs out and an endless right one always has loops to pass over: a trial on it shows
    what a list of stitches uses, by `drawn`.
    """

    left: list[Loop | None] = field(default_factory=list)
    right: list[Loop | None] = field(default_factory=list)
    cable: list[Loop] = field(default_factory=list)
    in_front: set[int] = field(default_factory=set)
    endless: bool = False
    drawn: int = 0
    made: int = 0
    spent: int = 0
    budget: int = MOST_LOOPS

    def new(self, row: int, stitch: str, parents: tuple[Loop, ...], place: Place) -> Loop:
        """Make a loop; it lies on no needle yet."""
        self.spend(place)
        self.made += 1
        return Loop(self.made, row, stitch, tuple(parent.number for parent in parents))

    def spend(self, place: Place) -> None:
        """Count one more movement; raise Halted where there were too many."""
        self.spent += 1
        if self.spent > self.budget:
            raise Halted("unproved", place)

    def take(self, place: Place, over_markers: bool) -> Loop:
        """Take the loop at the tip of the left needle, slipping a marker before it where that is allowed."""
        self.drawn += 1
        if self.endless:
            return self.new(-1, CAST_ON, (), place)
        if over_markers:
            self.slip_markers()
        loop = self.left.pop() if self.left else None
        if loop is None:
            raise Halted("row-runs-short", place)
        return loop

    def slip_markers(self) -> None:
        """Slip the markers at the tip of the left needle."""
        while self.left and self.left[-1] is None:
            self.right.append(self.left.pop())

    def take_held(self, place: Place) -> Loop:
        """Take the loop that was held first from the cable needle."""
        if not self.cable:
            raise Halted("row-runs-short", place)
        return self.cable.pop(0)

    def holds_behind(self, many: int) -> bool:
        """Say whether the right needle holds so many loops since its last marker; no more than these are looked at."""
        first = len(self.right) - many
        return self.endless or (first >= 0 and None not in self.right[first:])

    def pass_over(self, row: int, stitch: str, place: Place) -> Loop:
        """Pass the loop behind the last one over it; an endless needle has one to pass that lies further back."""
        passed = self.right.pop(-2) if len(self.right) > 1 else None
        return passed if passed is not None else self.new(row, stitch, (), place)

    def count(self) -> int:
        """Return the loops on all needles."""
        return sum(loop is not None for needle in (self.left, self.right) for loop in needle) + len(self.cable)

    def ahead(self, to_marker: bool) -> int:
        """Return the loops still to work, up to the next marker or the end."""
        count = 0
        for loop in reversed(self.left):
            if loop is None and to_marker:
                break
            count += loop is not None
        return count

    def has_markers(self) -> bool:
        """Say whether a marker hangs on the needles."""
        return None in self.left or None in self.right

    def drop_markers(self) -> None:
        """Take all markers off."""
        self.left = [loop for loop in self.left if loop is not None]
        self.right = [loop for loop in self.right if loop is not None]

    def segments(self) -> tuple[int, ...]:
        """Return the loops between markers from the tip of the left needle on; nothing without markers."""
        if not self.has_markers() or self.right:
            return ()
        counts = [0]
        for loop in reversed(self.left):
            if loop is None:
                counts.append(0)
            else:
                counts[-1] += 1
        return tuple(counts)
