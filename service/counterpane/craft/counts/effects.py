"""Where the stitches of closed nodes run out. What the nodes take and leave is `rows.effects`, given on from here."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from counterpane.craft.rows.effects import Effect, effect, stitch_effect, total
from counterpane.craft.rows.tree import Group, IntoOne, Node, Place
from counterpane.craft.stitches import Vocabulary

__all__ = ["Effect", "Shortage", "Stock", "effect", "shortage", "stitch_effect", "total"]


@dataclass(frozen=True, slots=True)
class Stock:
    """What lies on the left needle, the right needle and the cable needle."""

    left: int
    right: int
    cable: int = 0

    def allows(self, one: Effect) -> bool:
        """Say whether the effect can be worked."""
        return self.left >= one.uses and self.right >= one.needs and self.cable >= one.draws

    def after(self, one: Effect) -> Stock:
        """Return what lies there when the effect is worked."""
        return Stock(self.left - one.uses, self.right + one.makes, self.cable + one.held)

    def whole_workings(self, one: Effect, times: int) -> int:
        """Return how many of the workings can be done before one fails."""
        return min(
            times,
            _before_short(self.left, -one.uses, one.uses, times),
            _before_short(self.right, one.makes, one.needs, times),
            _before_short(self.cable, one.held, one.draws, times),
        )


def _before_short(stock: int, gain: int, need: int, times: int) -> int:
    if stock < need:
        return 0
    return times if gain >= 0 else (stock - need) // -gain + 1


@dataclass(frozen=True, slots=True)
class Shortage:
    """The first stitch that cannot be worked: its place, what it asks for and what there is."""

    place: Place
    asked: int
    left: int


def shortage(nodes: Sequence[Node], stock: Stock, vocabulary: Vocabulary) -> Shortage:
    """Find the first closed node that cannot be worked from the stock, inside groups too; the caller knows of one."""
    at, one = 0, effect(nodes[0], vocabulary)
    while stock.allows(one):
        stock = stock.after(one)
        at, one = at + 1, effect(nodes[at + 1], vocabulary)
    return _within(nodes[at], one, stock, vocabulary)


def _within(node: Node, one: Effect, stock: Stock, vocabulary: Vocabulary) -> Shortage:
    if isinstance(node, Group):
        working = total(node.parts, vocabulary)
        done = stock.whole_workings(working, node.times)
        return shortage(node.parts, stock.after(working.times(done)), vocabulary)
    if stock.left < one.uses:
        return Shortage(node.place, one.uses, stock.left)
    if isinstance(node, IntoOne):
        uses = total(node.parts, vocabulary).uses
        return shortage(node.parts, Stock(uses, stock.right), vocabulary)
    if stock.right < one.needs:
        return Shortage(node.place, one.needs, stock.right)
    return Shortage(node.place, one.draws, stock.cable)
