"""Follow rows with an unknown count: the counts that work, what they gain, and the first row that no count passes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from math import gcd

from counterpane.craft.counts.maps import Maps
from counterpane.craft.counts.needle import MOST_STITCHES, Needle
from counterpane.craft.counts.stuck import Stuck
from counterpane.craft.counts.values import UNPROVED, Chain, Misfit, Progression, Slug
from counterpane.craft.rows.tree import Node, Place, Side
from counterpane.craft.stitches import Vocabulary

# Rows that pass over more than they work allow finitely many counts; that many are listed one by one; house.
MOST_LISTED = 64
JOINS: tuple[Slug, ...] = ("row-runs-short", "row-leaves-stitches", "repeat-does-not-fit")
_AT_A_COUNT_ONLY = Chain((), proved_at_count_only=True)


@dataclass(frozen=True, slots=True)
class _Repeat:
    """The workings of a row's repeat per step, and the scale at which they were counted."""

    slope: int
    scale: int

    def weight(self, scale: int) -> int | None:
        return self.slope * (scale // self.scale) or None


def count(
    rows: Sequence[Sequence[Node]],
    vocabulary: Vocabulary,
    sides: Sequence[Side | None] | None = None,
    maps: Maps | None = None,
) -> Chain:
    """Derive the counts at which the rows can be worked one after the other, once.

    `sides` matter only with markers and turns: "round" says that the work is not turned after the row. `maps` are those
    of rows that are counted again.
    """
    maps = maps or Maps(vocabulary)
    needle = Needle.any_count()
    repeats: list[_Repeat | None] = []
    for index, parts in enumerate(rows):
        try:
            after = _worked(needle, parts, maps, in_round=goes_round(sides, index))
        except Stuck as stuck:
            return _refused(needle, index, parts, stuck, maps)
        if after is None:
            return _AT_A_COUNT_ONLY
        repeats.append(_Repeat(*after.slope) if after.slope else None)
        needle = after
    return _proved(needle, repeats)


def gone_on(needle: Needle | None, rows: Sequence[Sequence[Node]], maps: Maps) -> Needle | None:
    """Return the needle after further rows, worked flat; None where no count is known to pass them.

    It tells what `count` tells of all rows together, and not why.
    """
    for parts in rows:
        if needle is None:
            return None
        try:
            needle = _worked(needle, parts, maps, in_round=False)
        except Stuck:
            return None
    return needle


def _worked(needle: Needle, parts: Sequence[Node], maps: Maps, *, in_round: bool) -> Needle | None:
    """Return the needle after a row, None for counts larger than are looked at; raise Stuck where none passes."""
    after = maps.needle_after(needle, parts, in_round)
    if after.start.at(after.low) > MOST_STITCHES:
        return None
    return after.pinned() if after.start.per > MOST_STITCHES else after


def is_listed(needle: Needle) -> bool:
    """Tell whether the counts that a needle may hold are one progression, or so few that each is listed."""
    return needle.high is None or needle.high - needle.low < MOST_LISTED


def goes_round(sides: Sequence[Side | None] | None, index: int) -> bool:
    """Say whether the row of this index is worked in the round."""
    return sides is not None and sides[index] == "round"


def _proved(needle: Needle, repeats: Sequence[_Repeat | None]) -> Chain:
    start, end = needle.start, needle.all
    ratio = Fraction(end.per, start.per) if start.per else Fraction(1)
    drift = end.base - start.base if end.per == start.per else None
    weights = tuple(repeat.weight(needle.scale) if repeat else None for repeat in repeats)
    if needle.high is None:
        least, of = start.at(needle.low), start.per
        return Chain((Progression(of, least % of, least),), drift, ratio, weights, ends=(end.at(needle.low),))
    if not is_listed(needle):
        return _AT_A_COUNT_ONLY
    values = range(needle.low, needle.high + 1)
    starts = tuple(Progression.only(start.at(t)) for t in values)
    return Chain(starts, drift, ratio, weights, ends=tuple(end.at(t) for t in values))


def _refused(needle: Needle, index: int, parts: Sequence[Node], stuck: Stuck, maps: Maps) -> Chain:
    if stuck.slug == UNPROVED:
        return _AT_A_COUNT_ONLY
    misfit = Misfit(stuck.slug, index, stuck.place, stuck.asked, stuck.left)
    if index == 0 or stuck.slug not in JOINS:
        return Chain((), misfit=misfit)
    alone = count([parts], maps.vocabulary, maps=maps)
    if alone.misfit is None or needle.has_markers:
        return Chain((), misfit=unjoined(needle, index, stuck.place, alone))
    return Chain((), misfit=replace(alone.misfit, row=index))


def unjoined(needle: Needle, index: int, place: Place, alone: Chain) -> Misfit:
    """Return the finding for a row that no count left by the rows before can pass, with the numbers that show it."""
    has = needle.all
    takes = alone.starts[0] if alone.starts else None
    misfit = Misfit("rows-do-not-join", index, place, has=has.at(needle.low))
    if takes is None:
        return misfit
    misfit = replace(misfit, needs=takes.least, multiple=takes.of)
    if not has.per:
        return replace(misfit, below=takes.below(has.base), above=takes.above(has.base))
    common = gcd(has.per, takes.of)
    if (has.base - takes.least) % common == 0:
        return misfit
    return replace(misfit, modulus=common, residue=has.base % common, wanted=takes.least % common)
