"""A row seen from the other side of the fabric, and its mirror image.

Both read the row backwards: `A (B)^r C` becomes `C~ (B~)^r A~` with the number of repeats left open. Workings that
belong together (a cable worked from a cable needle, a slipped stitch passed over) are turned as one.
`CannotTurn` is raised for what has no such form: turns, a last repeat that differs, stitches with no other side.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import TypeAlias

from counterpane.craft.rows.effects import total
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
from counterpane.craft.stitches import Vocabulary

Nodes: TypeAlias = tuple[Node, ...]
_OTHER_YARN = {"wyif": "wyib", "wyib": "wyif"}
# A slipped stitch passed over what follows it is the decrease of this key (trade-wide abbreviations).
_PASSING = 3  # House: nodes of a decrease in words, what is slipped, what is worked, what is passed over.
_PASSED = {(1, "k", "psso"): "skp", (1, "k2tog", "psso"): "sk2p", (2, "k", "p2sso"): "s2kp"}


class CannotTurn(ValueError):
    """A node that has no form when the row is read backwards; `place` is where it stands."""

    def __init__(self, why: str, place: Place) -> None:
        super().__init__(why)
        self.place = place


def rs_view(parts: Sequence[Node], vocabulary: Vocabulary) -> Nodes:
    """Return the row that makes the same fabric from its other side: a WS row as seen and written from the RS.

    The row is reversed, knit and purl change places, crosses keep their lean. Applied twice it gives the row back.
    """
    return _Backwards(vocabulary, _from_behind, keeps_yarn=False).row(parts)


def mirror(parts: Sequence[Node], vocabulary: Vocabulary) -> Nodes:
    """Return the row of the mirror image: reversed, with leans changed; faces and counts stay.

    Applied twice it gives the row back, a decrease in several words by its abbreviation.
    """
    return _Backwards(vocabulary, _leaning_back, keeps_yarn=True).row(parts)


def _from_behind(work: Work, vocabulary: Vocabulary) -> str:
    stitch = vocabulary[work.stitch]
    if stitch.back is not None:
        return stitch.back
    if stitch.face is None or stitch.uses == stitch.makes > 1:
        return stitch.key
    raise CannotTurn(f"no stitch shows {stitch.key!r} from the other side", work.place)


def _leaning_back(work: Work, vocabulary: Vocabulary) -> str:
    stitch = vocabulary[work.stitch]
    if stitch.mirror is not None:
        return stitch.mirror
    if stitch.lean not in ("left", "right"):
        return stitch.key
    raise CannotTurn(f"no stitch leans against {stitch.key!r}", work.place)


@dataclass(frozen=True, slots=True)
class _Backwards:
    """Read rows backwards, each stitch changed by `change`; `keeps_yarn` where the yarn stays on its side."""

    vocabulary: Vocabulary
    change: Callable[[Work, Vocabulary], str]
    keeps_yarn: bool

    def row(self, parts: Sequence[Node]) -> Nodes:
        """Return a whole row backwards, its stops counted anew."""
        backwards = self.nodes(_closed_after_stop(tuple(parts), self.vocabulary))
        return tuple(self._stopped(node, backwards[index + 1 :]) for index, node in enumerate(backwards))

    def nodes(self, parts: Nodes) -> Nodes:
        """Return the nodes backwards, those that belong together kept together."""
        return tuple(node for unit in reversed(units(parts)) for node in self._unit(unit))

    def _unit(self, unit: Nodes) -> Nodes:
        match unit:
            case (Hold() as hold, _, *_):
                return self._cable(hold, unit[1:])
            case _:
                return tuple(self._node(node) for node in unit)

    def _node(self, node: Node) -> Node:
        match node:
            case Work():
                return self._work(node)
            case Group() | IntoOne():
                return replace(node, parts=self.nodes(node.parts))
            case OpenRepeat(last=None):
                return replace(node, parts=self.nodes(node.parts))
            case BindOff() | CastOn() | Marker():
                return node
            case OpenRepeat():
                raise CannotTurn("the last repeat differs from the others", node.place)
            case Turn():
                raise CannotTurn("the row turns before its end", node.place)
            case _:
                raise CannotTurn("the cable needle is not worked off in one go", node.place)

    def _work(self, work: Work) -> Work:
        if work.stitch in _OTHER_YARN:
            # What brings the yarn forward now takes it back when read backwards; from behind both are exchanged again.
            return replace(work, stitch=_OTHER_YARN[work.stitch] if self.keeps_yarn else work.stitch)
        if work.held:
            raise CannotTurn("the cable needle is not worked off in one go", work.place)
        if self.vocabulary[work.stitch].makes < 0:
            raise CannotTurn(f"{work.stitch!r} passes over something else than a slipped stitch", work.place)
        manner = work.manner if self.keeps_yarn else _yarn_on_other_side(work.manner)
        return replace(work, stitch=self.change(work, self.vocabulary), manner=manner)

    def _cable(self, hold: Hold, worked: Nodes) -> Nodes:
        """Return a cable backwards: what was held is worked first, and what was worked first is held."""
        other = tuple(node for node in worked if not _is_held(node))
        held = tuple(replace(node, held=False) for node in worked if isinstance(node, Work) and node.held)
        taken = total(other, self.vocabulary).uses
        last = tuple(replace(node, held=True) for node in self.nodes(other) if isinstance(node, Work))
        return (self._hold(hold, taken), *self.nodes(held), *last)

    def _hold(self, hold: Hold, taken: int) -> Hold:
        if self.keeps_yarn:
            return replace(hold, times=taken, where="back" if hold.where == "front" else "front")
        return replace(hold, times=taken)

    def _stopped(self, node: Node, rest: Nodes) -> Node:
        """Return an open repeat with the stop that the rest asks for: to the next marker, or to the end."""
        if not isinstance(node, OpenRepeat):
            return node
        marks = [index for index, other in enumerate(rest) if _is_met(other)]
        ahead = rest[: marks[0]] if marks else rest
        stop = node.stop if node.stop is None else total(ahead, self.vocabulary).uses
        return replace(node, stop=stop, marker=bool(marks))


def _yarn_on_other_side(manner: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(_OTHER_YARN.get(word, word) for word in manner)


def _is_met(node: Node) -> bool:
    return isinstance(node, Marker) and node.act != "place"


def _is_held(node: Node) -> bool:
    return isinstance(node, Work) and node.held


def units(parts: Nodes) -> list[Nodes]:
    """Cut the nodes into those that are turned as one: cables, and decreases in several words put into one."""
    units: list[Nodes] = []
    at = 0
    while at < len(parts):
        unit, length = _unit_at(parts, at)
        units.append(unit)
        at += length
    return units


def _unit_at(parts: Nodes, at: int) -> tuple[Nodes, int]:
    if isinstance(parts[at], Hold):
        length = _cable_length(parts, at)
        return parts[at : at + length], length
    if at + 2 < len(parts) and (key := _passed_over(*parts[at : at + _PASSING])):
        return (Work(key, place=parts[at].place),), _PASSING
    return parts[at : at + 1], 1


def _cable_length(parts: Nodes, at: int) -> int:
    """Return how many nodes make up the cable: the hold, plain stitches, and those from the cable needle."""
    first = at + 1
    while first < len(parts) and isinstance(parts[first], Work) and not _is_held(parts[first]):
        first += 1
    end = first
    while end < len(parts) and _is_held(parts[end]):
        end += 1
    return end - at if end > first > at + 1 else 1


def _passed_over(slipped: Node, worked: Node, passed: Node) -> str | None:
    if not (isinstance(slipped, Work) and isinstance(worked, Work) and isinstance(passed, Work)):
        return None
    if slipped.stitch != "sl" or worked.times != 1 or passed.times != 1:
        return None
    return _PASSED.get((slipped.times, worked.stitch, passed.stitch))


def _closed_after_stop(parts: Nodes, vocabulary: Vocabulary) -> Nodes:
    """Write out the open repeats that work on a known number of stitches, so that one stays open at most.

    Markers cut a row into lengths of which each may keep one.
    """
    done: list[Node] = []
    left: int | None = None
    for node in parts:
        if isinstance(node, OpenRepeat) and left is not None:
            one, keep = total(node.parts, vocabulary).uses, node.stop or 0
            times = (left - keep) // one if one else 0
            done += [Group(node.parts, times, place=node.place)] if times else []
            left = keep
            continue
        done.append(node)
        if isinstance(node, OpenRepeat):
            left = node.stop
        elif _is_met(node):
            left = None
        elif left is not None and not isinstance(node, Turn | BindOff):
            left -= total((node,), vocabulary).uses
    return tuple(done)
