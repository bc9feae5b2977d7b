"""A whole row as one map: the counts it takes by itself, and what it leaves of each.

A row without markers and turns that takes one progression of counts is walked once; after that it costs the same few
sums wherever it stands, for any count and in any size. Rows of any other kind have no map and are walked each time.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from counterpane.craft.counts.needle import MOST_STITCHES, NONE, Amount, Needle
from counterpane.craft.counts.stuck import Stuck
from counterpane.craft.counts.walking import LONGEST_SUM, walk_row
from counterpane.craft.counts.wellformed import is_deep, names_markers, within
from counterpane.craft.rows.tree import Node, Turn
from counterpane.craft.stitches import Vocabulary


@dataclass(frozen=True, slots=True)
class RowMap:
    """A row takes `least` stitches and any number of times `of` more (0: no more), and leaves `makes` and `per` more.

    `slope` is how often its repeat is worked more for each `of` stitches more, None for a row without one.
    """

    least: int
    of: int
    makes: int
    per: int
    slope: int | None

    def after(self, before: int) -> int | None:
        """Return the stitches left of a known count; None where the row does not take it."""
        if self.of == 0 or before < self.least:
            return self.makes if before == self.least else None
        steps, rest = divmod(before - self.least, self.of)
        return None if rest else self.makes + self.per * steps

    def worked(self, needle: Needle) -> Needle | None:
        """Return the needle after the row, ready for the next; None where no count left on it can be worked."""
        has = needle.all
        if self.of == 0:
            fitted = needle.exactly(has, self.least)
            return _holding(fitted, Amount(self.makes), None) if fitted else None
        enough = needle.at_least(has, self.least)
        found = enough.divided(has.plus(-self.least), self.of) if enough else None
        if found is None:
            return None
        fitted, steps = found
        slope = (steps.per * self.slope, fitted.scale) if self.slope and steps.per else None
        after = _holding(fitted, Amount(self.makes + self.per * steps.base, self.per * steps.per), slope)
        return after.pinned() if after.low == after.high and after.start.per else after


def _holding(needle: Needle, stitches: Amount, slope: tuple[int, int] | None) -> Needle:
    return Needle((stitches,), (NONE,), needle.start, needle.low, needle.high, needle.scale, slope=slope)


def is_plain(needle: Needle) -> bool:
    """Say whether all stitches wait on the left needle, with no marker between them."""
    return len(needle.left) == 1 and needle.right == (NONE,) and not needle.cable and needle.marked


class Maps:
    """The maps of the rows of one text, each derived once, for whoever counts the same rows again."""

    def __init__(self, vocabulary: Vocabulary) -> None:
        self.vocabulary = vocabulary
        # Rows are told by identity first: equality of trees takes longer, and the second entry keeps the tree alive.
        self._same: dict[int, tuple[RowMap | None, Sequence[Node]]] = {}
        self._equal: dict[tuple[Node, ...], RowMap | None] = {}

    def of(self, parts: Sequence[Node]) -> RowMap | None:
        """Return the map of a row, None for one that has none."""
        found = self._same.get(id(parts))
        if found is None:
            found = self._same[id(parts)] = (self._derived(tuple(parts)), parts)
        return found[0]

    def _derived(self, parts: tuple[Node, ...]) -> RowMap | None:
        if is_deep(parts):
            return None
        if parts not in self._equal:
            self._equal[parts] = _map_of(parts, self.vocabulary)
        return self._equal[parts]

    def needle_after(self, needle: Needle, parts: Sequence[Node], in_round: bool) -> Needle:
        """Return the needle after a row, by its map where it has one; raise Stuck where it fails at every count."""
        known = self.of(parts) if is_plain(needle) else None
        after = known.worked(needle) if known else None
        if after is not None and after.all.at(after.low) <= LONGEST_SUM:
            return after
        return walk_row(needle, parts, self.vocabulary, in_round)

    def count_after(self, needle: Needle, parts: Sequence[Node]) -> int | None:
        """Return what a row leaves of a known count; None where its map does not tell."""
        known = self.of(parts) if is_plain(needle) else None
        after = known.after(needle.left[0].base) if known else None
        return after if after is not None and after <= LONGEST_SUM else None


def _map_of(parts: tuple[Node, ...], vocabulary: Vocabulary) -> RowMap | None:
    if names_markers(parts) or any(isinstance(node, Turn) for node in within(parts)):
        return None
    try:
        after = walk_row(Needle.any_count(), parts, vocabulary)
    except Stuck:
        return None
    single = after.high is None or after.high == after.low
    if not single or not is_plain(after) or after.start.at(after.low) > MOST_STITCHES:
        return None
    slope = after.slope and after.slope[0] * (after.scale // after.slope[1])
    return RowMap(after.start.at(after.low), after.start.per, after.all.at(after.low), after.all.per, slope or None)
