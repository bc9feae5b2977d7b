"""What closed parts of a row take and leave, added up without working them."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.records import record
from counterpane.craft.rows.tree import (
    BindOff,
    CastOn,
    Group,
    Hold,
    IntoOne,
    Marker,
    Node,
    Work,
)
from counterpane.craft.stitches import Stitch, Vocabulary


@record
class Effect:
    """Loops taken from the left needle and left on the right one.

    `needs` must be on the right needle before; `held` is what the cable needle gains, `draws` what it must hold before.
    """

    uses: int = 0
    makes: int = 0
    needs: int = 0
    held: int = 0
    draws: int = 0

    def times(self, count: int) -> Effect:
        """Return the effect of this worked so often."""
        if count == 1:
            return self
        if count == 0:
            return NOTHING
        return Effect(
            self.uses * count,
            self.makes * count,
            self.needs if self.makes >= 0 else self.needs - self.makes * (count - 1),
            self.held * count,
            self.draws if self.held >= 0 else self.draws - self.held * (count - 1),
        )


NOTHING = Effect()


def stitch_effect(stitch: Stitch, held: bool) -> Effect:
    """Return the effect of one working of the stitch, from the cable needle where it is held."""
    needs = max(stitch.needs, 1 - stitch.makes if stitch.makes < 0 else 0)
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
        case _:
            raise TypeError(f"{node!r} has no effect by itself")


def total(nodes: Iterable[Node], vocabulary: Vocabulary) -> Effect:
    """Return the effect of closed nodes worked one after the other."""
    uses = makes = needs = held = draws = 0
    for node in nodes:
        if type(node) is Work and not node.held:
            # Most of a row is stitches that ask for nothing: they are added up as they stand.
            stitch = vocabulary[node.stitch]
            if stitch.needs == 0 <= stitch.makes:
                uses += stitch.uses * node.times
                makes += stitch.makes * node.times
                continue
        one = effect(node, vocabulary)
        if one.needs > needs + makes:
            needs = one.needs - makes
        if one.draws > draws + held:
            draws = one.draws - held
        uses += one.uses
        makes += one.makes
        held += one.held
    return Effect(uses, makes, needs, held, draws)
