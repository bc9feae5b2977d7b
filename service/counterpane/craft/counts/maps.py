"""A whole row as one map: the counts it takes by itself, and what it leaves of each.

A row that takes one progression of counts and leaves no marker or waiting stitch is walked once; after that it costs
the same few sums wherever it stands, for any count and in any size. Any other row has no map and is walked each time.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from counterpane.craft.counts.effects import Effect, total
from counterpane.craft.counts.needle import MOST_STITCHES, NONE, Amount, Needle
from counterpane.craft.counts.stuck import Stuck
from counterpane.craft.counts.values import Misfit
from counterpane.craft.counts.walking import LONGEST_SUM, walk_row
from counterpane.craft.counts.wellformed import is_deep, malformed
from counterpane.craft.records import record
from counterpane.craft.rows.tree import Group, Node, OpenRepeat, Work
from counterpane.craft.stitches import Vocabulary


@record
class RowMap:
    """A row takes `least` stitches and any number of times `of` more (0: no more), and leaves `makes` and `per` more.

    `slope` is how often its repeat is worked more for each `of` stitches more, 0 for a row without one.
    """

    least: int
    of: int
    makes: int
    per: int
    slope: int

    def after(self, before: int) -> int | None:
        """Return the stitches left of a known count; None where the row does not take it."""
        if self.of == 0:
            return self.makes if before == self.least else None
        steps, rest = divmod(before - self.least, self.of)
        return self.makes + self.per * steps if steps >= 0 and rest == 0 else None

    def worked(self, needle: Needle) -> Needle | None:
        """Return the needle after the row, ready for the next; None where no count left on it can be worked."""
        has = needle.left[0]
        if self.of == 0:
            fitted = needle.exactly(has, self.least)
            return _holding(fitted, Amount(self.makes)) if fitted else None
        enough = needle.at_least(has, self.least)
        found = enough.divided(has.plus(-self.least), self.of) if enough else None
        if found is None:
            return None
        fitted, steps = found
        after = _holding(fitted, steps.times(self.per).plus(self.makes)).noted(steps.times(self.slope))
        return after.pinned() if after.low == after.high and after.start.per else after


def _holding(needle: Needle, stitches: Amount) -> Needle:
    return Needle((stitches,), (NONE,), needle.start, needle.low, needle.high, needle.scale)


def is_plain(needle: Needle) -> bool:
    """Say whether all stitches wait on the left needle, with no marker between them."""
    return len(needle.left) == 1 and needle.right == (NONE,) and not needle.cable and needle.marked


class Maps:
    """The maps of the rows of one text, each derived once, for whoever counts the same rows again."""

    def __init__(self, vocabulary: Vocabulary) -> None:
        self.vocabulary = vocabulary
        # Rows are told by identity first: equality of trees takes longer, and the second entry keeps the tree alive.
        self._alike: dict[int, tuple[tuple[Node, ...] | None, Sequence[Node]]] = {}
        self._first: dict[tuple[Node, ...], tuple[Node, ...]] = {}
        # Of the first of the rows that are alike.
        self._maps: dict[int, RowMap | None] = {}
        self._impossible: set[int] = set()
        self._sound: set[int] = set()
        self._faults: dict[int, tuple[Misfit | None, Sequence[Node]]] = {}

    def of(self, parts: Sequence[Node]) -> RowMap | None:
        """Return the map of a row, None for one that has none."""
        first = self.first_like(parts)
        if first is None:
            return None
        if id(first) not in self._maps:
            try:
                self._maps[id(first)] = _map_of(first, self.vocabulary)
            except _Impossible:
                self._maps[id(first)] = None
                self._impossible.add(id(first))
        return self._maps[id(first)]

    def refuses(self, parts: Sequence[Node], before: int) -> bool:
        """Tell whether a row cannot be worked at a count; False where its map does not tell."""
        found = self.of(parts)
        return id(self.first_like(parts)) in self._impossible if found is None else found.after(before) is None

    def malformed(self, parts: Sequence[Node]) -> Misfit | None:
        """Return why a row has no single meaning at any count, None where it has one; the row number is 0."""
        found = self._faults.get(id(parts))
        if found is None:
            found = self._faults[id(parts)] = (self._fault(parts), parts)
        return found[0]

    def _fault(self, parts: Sequence[Node]) -> Misfit | None:
        # Only soundness is kept for rows that are alike: a fault has a place.
        first = self.first_like(parts)
        if first is not None and id(first) in self._sound:
            return None
        found = malformed(parts, self.vocabulary)
        if found is None:
            self._sound.add(id(first))
        return found

    def first_like(self, parts: Sequence[Node]) -> tuple[Node, ...] | None:
        """Return the first row that was alike, None for one that lies deeper than is followed."""
        found = self._alike.get(id(parts))
        if found is None:
            own = tuple(parts)
            first = None if is_deep(own) else self._first.setdefault(own, own)
            found = self._alike[id(parts)] = (first, parts)
        return found[0]

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


class _Impossible(Exception):
    """A row of stitches and open repeats can be worked at no count."""


def _map_of(parts: tuple[Node, ...], vocabulary: Vocabulary) -> RowMap | None:
    found = _plain_map(parts, vocabulary)
    return _walked_map(parts, vocabulary) if found is None else found


def _plain_map(parts: tuple[Node, ...], vocabulary: Vocabulary) -> RowMap | None:
    """Return the map of a row of stitches with open repeats, straight from what they use; None for all other rows.

    Raise _Impossible where what stands behind the first repeat does not work the stitches that this keeps for it.
    """
    uses = makes = per = of = 0
    left: int | None = None  # Stitches still to be worked, once a repeat has said how many it keeps.
    for node in _stretches(parts):
        if isinstance(node, OpenRepeat):
            body = _plain_total(node.parts, vocabulary)
            if node.marker or node.last is not None or node.stop is None or body is None or body.uses == 0:
                return None
            if left is None:
                least = 0 if node.plain else 1
                uses, makes = uses + node.stop + least * body.uses, makes + least * body.makes
                of, per = body.uses, body.makes
            else:
                times, rest = divmod(left - node.stop, body.uses)
                if rest or times < (0 if node.plain else 1):
                    raise _Impossible
                makes += times * body.makes
            left = node.stop
        elif (one := _plain_total(node, vocabulary)) is not None:
            makes += one.makes
            if left is None:
                uses += one.uses
            else:
                left -= one.uses
        else:
            return None
    if left:
        raise _Impossible
    if uses + of == 0 or uses > MOST_STITCHES:
        return None
    return RowMap(uses, of, makes, per, 1 if of else 0) if uses else RowMap(of, of, makes + per, per, 1)


def _stretches(parts: Sequence[Node]) -> Iterator[OpenRepeat | Sequence[Node]]:
    """Yield each open repeat, and together what stands before, between and behind them."""
    begin = 0
    for at, node in enumerate(parts):
        if isinstance(node, OpenRepeat):
            yield parts[begin:at]
            yield node
            begin = at + 1
    yield parts[begin:]


def _plain_total(nodes: Sequence[Node], vocabulary: Vocabulary) -> Effect | None:
    """Add up stitches and groups of them; None where any asks for something on the right or the cable needle."""
    for node in nodes:
        if isinstance(node, Group):
            if _plain_total(node.parts, vocabulary) is None:
                return None
        elif not isinstance(node, Work) or node.held:
            return None
    one = total(nodes, vocabulary)
    return None if one.needs else one


def _walked_map(parts: tuple[Node, ...], vocabulary: Vocabulary) -> RowMap | None:
    try:
        after = walk_row(Needle.any_count(), parts, vocabulary)
    except Stuck:
        return None
    single = after.high is None or after.high == after.low
    if not single or not is_plain(after) or after.start.at(after.low) > MOST_STITCHES:
        return None
    slope = after.slope[0] * (after.scale // after.slope[1]) if after.slope else 0
    return RowMap(after.start.at(after.low), after.start.per, after.all.at(after.low), after.all.per, slope)
