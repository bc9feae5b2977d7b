"""What closed parts of a row take and leave, added up without working them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from counterpane.craft.rows.tree import (
    BindOff,
    CastOn,
    Group,
    Hold,
    IntoOne,
    Marker,
    Node,
    OpenRepeat,
    Place,
    Turn,
    Work,
)
from counterpane.craft.stitches import Stitch, Vocabulary


@dataclass(frozen=True, slots=True)
class Effect:
    """Loops taken from the left needle and left on the right one.

    `needs` must be on the right needle before; `held` is what the cable needle gains, `draws` what it must hold before.
    """

    uses: int = 0
    makes: int = 0
    needs: int = 0
    held: int = 0
    draws: int = 0

    def then(self, other: Effect) -> Effect:
        """Return the effect of this followed by the other."""
        return Effect(
            self.uses + other.uses,
            self.makes + other.makes,
            max(self.needs, other.needs - self.makes),
            self.held + other.held,
            max(self.draws, other.draws - self.held),
        )

    def times(self, count: int) -> Effect:
        """Return the effect of this worked so often."""
        if count == 0:
            return NOTHING
        return Effect(
            self.uses * count,
            self.makes * count,
            self.needs - min(0, self.makes) * (count - 1),
            self.held * count,
            self.draws - min(0, self.held) * (count - 1),
        )


NOTHING = Effect()


def stitch_effect(stitch: Stitch, held: bool) -> Effect:
    """Return the effect of one working of the stitch, from the cable needle where it is held."""
    needs = max(stitch.needs, -stitch.makes, 0)
    if held:
        return Effect(0, stitch.makes, needs, -stitch.uses, stitch.uses)
    return Effect(stitch.uses, stitch.makes, needs)


def effect(node: Node, vocabulary: Vocabulary) -> Effect:
    """Return the effect of a closed node; an open repeat or a turn is none and raises TypeError."""
    match node:
        case Work():
            return stitch_effect(vocabulary[node.stitch], node.held).times(node.times)
        case Group():
            return total(node.parts, vocabulary).times(node.times)
        case IntoOne():
            inner = total(node.parts, vocabulary)
            return Effect(node.loops, inner.makes, inner.needs)
        case BindOff(times=int(times)):
            return Effect(times, 0) if node.joined else Effect(times + 1, 1)
        case CastOn():
            return Effect(0, node.times)
        case Hold():
            return Effect(node.times, 0, 0, node.times)
        case Marker():
            return NOTHING
        case OpenRepeat() | BindOff() | Turn():
            raise TypeError(f"{node!r} has no effect by itself")


def total(nodes: Iterable[Node], vocabulary: Vocabulary) -> Effect:
    """Return the effect of closed nodes worked one after the other."""
    result = NOTHING
    for node in nodes:
        result = result.then(effect(node, vocabulary))
    return result


@dataclass(frozen=True, slots=True)
class Stock:
    """What lies on the left needle, the right needle and the cable needle."""

    left: int
    right: int
    cable: int

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


def shortage(nodes: Iterable[Node], stock: Stock, vocabulary: Vocabulary) -> Shortage | None:
    """Find the first closed node that cannot be worked from the stock, inside groups too; None if all can."""
    for node in nodes:
        one = effect(node, vocabulary)
        if not stock.allows(one):
            return _within(node, one, stock, vocabulary)
        stock = stock.after(one)
    return None


def _within(node: Node, one: Effect, stock: Stock, vocabulary: Vocabulary) -> Shortage | None:
    if isinstance(node, Group):
        working = total(node.parts, vocabulary)
        done = stock.whole_workings(working, node.times)
        return shortage(node.parts, stock.after(working.times(done)), vocabulary)
    if stock.left < one.uses:
        return Shortage(node.place, one.uses, stock.left)
    if isinstance(node, IntoOne):
        uses = total(node.parts, vocabulary).uses
        return shortage(node.parts, Stock(uses, stock.right, 0), vocabulary)
    if stock.right < one.needs:
        return Shortage(node.place, one.needs, stock.right)
    return Shortage(node.place, one.draws, stock.cable)
