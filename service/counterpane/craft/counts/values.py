"""What the closed form says: the counts that work, and where a row fails."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from counterpane.craft.records import record
from counterpane.craft.rows.tree import NOWHERE, Place

Slug = Literal[
    "row-runs-short",
    "row-leaves-stitches",
    "repeat-does-not-fit",
    "rows-do-not-join",
    "two-open-repeats",
    "repeat-inside-repeat",
    "repeat-uses-nothing",
    "group-uses-several",
    "unproved",
]
UNPROVED: Slug = "unproved"
Verdict = Literal["right", "wasteful", "wrong"]


@dataclass(frozen=True, slots=True)
class Progression:
    """Every count n ≥ least with n ≡ plus (mod of); `of` 0 means the one count `least`."""

    of: int
    plus: int
    least: int

    @classmethod
    def only(cls, count: int) -> Progression:
        """Return the progression that holds this count alone."""
        return cls(0, count, count)

    def admits(self, count: int) -> bool:
        """Say whether the count belongs to the progression."""
        if self.of == 0:
            return count == self.least
        return count >= self.least and (count - self.plus) % self.of == 0

    def below(self, count: int) -> int | None:
        """Return the largest member up to the count, None where there is none."""
        if count < self.least:
            return None
        return count - (count - self.least) % self.of if self.of else self.least

    def above(self, count: int) -> int | None:
        """Return the smallest member from the count on, None where there is none."""
        if count <= self.least:
            return self.least
        return count + (self.least - count) % self.of if self.of else None


def judge(of: int, plus: int, true: Progression) -> Verdict:
    """Judge a stated "multiple of `of` plus `plus`" against the derived one; `plus` may be `of` or more.

    "wasteful" promises only counts that work, and leaves out some that would.
    """
    if true.of == 0 or of < 1 or of % true.of or (plus - true.plus) % true.of:
        return "wrong"
    return "right" if of == true.of else "wasteful"


@dataclass(frozen=True, slots=True)
class Misfit:
    """Where and why a row cannot be worked.

    `place` is the first stitch or repeat that fails; it asks for `asked` stitches and `left` remain for it. `has` is
    the count on the needles as the row begins. `needs` is the least count the row takes by itself, `multiple` the
    stitches of its repeat (0: one count only), `below` and `above` the nearest counts that fit it.
    For `rows-do-not-join`: the rows before always leave `residue` more than a multiple of `modulus`, and this row takes
    only `wanted` more; the three are None where the counts differ for another reason.
    """

    slug: Slug
    row: int
    place: Place = NOWHERE
    asked: int | None = None
    left: int | None = None
    has: int | None = None
    needs: int | None = None
    multiple: int | None = None
    below: int | None = None
    above: int | None = None
    modulus: int | None = None
    residue: int | None = None
    wanted: int | None = None


@record
class Step:
    """One row at one count: stitches on the needles before and after.

    `segments` are those between markers after it, in the order in which the next row meets them; none without markers
    or after a turn.
    """

    before: int | None
    after: int | None
    misfit: Misfit | None = None
    segments: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Chain:
    """What the rows do together, for every count.

    `starts` are the counts that work for one pass, none where there are none or nothing is proved. `drift` is end less
    start where it is the same for all of them, `ratio` the stitches gained per stitch of the start.
    `weights` tell how often the repeat of each row is worked per step of the multiple, None for a row without one.
    `proved_at_count_only` says that no closed form was found and only `work` at a given count can tell.
    """

    starts: tuple[Progression, ...]
    drift: int | None = None
    ratio: Fraction | None = None
    weights: tuple[int | None, ...] = ()
    misfit: Misfit | None = None
    proved_at_count_only: bool = False
    ends: tuple[int, ...] = ()

    @property
    def suspicious(self) -> bool:
        """Say whether no repeat is worked exactly once per step: the repeats do not nest, one is likely misprinted."""
        worked = [weight for weight in self.weights if weight is not None]
        return bool(worked) and any(start.of for start in self.starts) and 1 not in worked

    def admits(self, count: int) -> bool:
        """Say whether the rows can be worked once over this count."""
        return any(start.admits(count) for start in self.starts)

    def after(self, count: int) -> int:
        """Return the stitches after one pass over a count that works; ValueError for one that does not."""
        for start, end in zip(self.starts, self.ends, strict=True):
            if start.admits(count) and self.ratio is not None:
                return end + int((count - start.least) * self.ratio)
        raise ValueError(f"the rows cannot be worked over {count} stitches")


def nearest(starts: Iterable[Progression], count: int) -> tuple[int | None, int | None]:
    """Return the nearest admissible counts up to the count and from it on, None where there is none."""
    known = tuple(starts)
    below = [found for start in known if (found := start.below(count)) is not None]
    above = [found for start in known if (found := start.above(count)) is not None]
    return max(below, default=None), min(above, default=None)
