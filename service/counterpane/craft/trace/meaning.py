"""Whether a row means one thing at all, found by looking at it and by trying its parts on an endless needle."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from counterpane.craft.rows.tree import (
    BindOff,
    CastOn,
    Group,
    IntoOne,
    Marker,
    Node,
    OpenRepeat,
    Turn,
    Work,
)
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.trace.halts import Halted
from counterpane.craft.trace.loops import Needles

Trial = Callable[[Sequence[Node]], Needles]
# Deeper trees and longer rows are not followed; house bounds.
MOST_NESTED = 100
MOST_WRITTEN_OUT = 2_000


def parts_of(node: Node) -> tuple[Node, ...]:
    """Return the nodes inside a node, with those of a last repeat."""
    if isinstance(node, OpenRepeat):
        return node.parts + (node.last or ())
    return node.parts if isinstance(node, Group | IntoOne) else ()


def everything(nodes: Sequence[Node]) -> Iterator[Node]:
    """Yield all nodes at every depth, level by level; raise Halted where there are too many levels."""
    level, depth = list(nodes), 0
    while level:
        if depth == MOST_NESTED:
            raise Halted("unproved", nodes[0].place)
        yield from level
        level, depth = [part for node in level for part in parts_of(node)], depth + 1


def works_openly(node: Node) -> bool:
    """Say whether the node works as many stitches as there are."""
    return isinstance(node, OpenRepeat) or (isinstance(node, BindOff) and node.times is None)


def speaks_of_markers(nodes: Sequence[Node]) -> bool:
    """Say whether the nodes place, pass or count to a marker."""
    return any(isinstance(node, Marker) or (isinstance(node, OpenRepeat) and node.marker) for node in everything(nodes))


def written_out(parts: Sequence[Node]) -> list[Node]:
    """Return the nodes with the groups that hold markers or turns written out; raise Halted for too many."""
    room = [MOST_WRITTEN_OUT + len(parts)]
    return list(_written_out(parts, room))


def _written_out(parts: Sequence[Node], room: list[int]) -> Iterator[Node]:
    for node in parts:
        if isinstance(node, Group) and (
            speaks_of_markers((node,)) or any(isinstance(part, Turn) for part in everything((node,)))
        ):
            for _ in range(node.times):
                room[0] -= 1
                if room[0] < 0:
                    raise Halted("unproved", node.place)
                yield from _written_out(node.parts, room)
        else:
            yield node


def until_break(nodes: Sequence[Node], at_markers: bool) -> list[Node]:
    """Return the nodes before the next turn, or marker where that counts."""
    found: list[Node] = []
    for node in nodes:
        if isinstance(node, Turn) or (at_markers and isinstance(node, Marker)):
            break
        found.append(node)
    return found


def rest_after(nodes: Sequence[Node], index: int) -> Sequence[Node]:
    """Return what an open repeat asks of the nodes after it: all where they decide its stop, else the next one."""
    node = nodes[index]
    decides = isinstance(node, OpenRepeat) and node.stop is None
    return nodes[index + 1 :] if decides else nodes[index + 1 : index + 2]


def stitch_for_stitch(nodes: Sequence[Node], vocabulary: Vocabulary) -> bool:
    """Say whether each stitch turns one loop into one, so that markers stay where they are."""
    return all(_keeps_place(node, vocabulary) for node in everything(nodes))


def _keeps_place(node: Node, vocabulary: Vocabulary) -> bool:
    if isinstance(node, Work):
        stitch = vocabulary[node.stitch]
        return (stitch.uses, stitch.makes, stitch.needs, node.held) == (1, 1, 0, False)
    return isinstance(node, Turn | Group) or (isinstance(node, OpenRepeat) and node.last is None)


def consider(nodes: Sequence[Node], vocabulary: Vocabulary, trial: Trial, inside: bool = False) -> None:
    """Raise Halted for nodes that mean nothing whatever the count."""
    for index, node in enumerate(nodes):
        if works_openly(node):
            if inside and not (isinstance(node, OpenRepeat) and node.marker):
                raise Halted("repeat-inside-repeat", node.place)
            if isinstance(node, OpenRepeat):
                _consider_repeat(node, rest_after(nodes, index), vocabulary, trial)
        elif isinstance(node, IntoOne) and not _goes_into(node, vocabulary):
            raise Halted("group-uses-several", node.place)
        elif isinstance(node, Group):
            consider(node.parts, vocabulary, trial, inside=True)


def _consider_repeat(node: OpenRepeat, rest: Sequence[Node], vocabulary: Vocabulary, trial: Trial) -> None:
    for nodes in (node.parts, node.last or ()):
        _refuse_moves(nodes, node.marker)
        consider(nodes, vocabulary, trial, inside=True)
        try:
            left_over = trial(nodes).cable
        except Halted as halted:
            raise Halted(halted.slug, node.place) from halted
        if left_over:
            raise Halted("row-leaves-stitches", node.place)
    if not trial(node.parts).drawn:
        raise Halted("repeat-uses-nothing", node.place)
    if node.stop is None and any(map(works_openly, everything(until_break(rest, node.marker)))):
        raise Halted("two-open-repeats", node.place)


def _refuse_moves(nodes: Sequence[Node], to_marker: bool) -> None:
    for part in everything(nodes):
        moves = isinstance(part, Turn) or (isinstance(part, OpenRepeat) and part.marker)
        if moves or (isinstance(part, Marker) and (to_marker or part.act != "place")):
            raise Halted("unproved", part.place)


def _goes_into(node: IntoOne, vocabulary: Vocabulary) -> bool:
    """Say whether every stitch takes at most one loop, and the first takes one."""
    taken = list(_taken_by_each(node.parts, vocabulary))
    return bool(taken) and taken[0] == 1 and max(taken) <= 1


def _taken_by_each(parts: Sequence[Node], vocabulary: Vocabulary) -> Iterator[int]:
    """Yield what each stitch takes; 2 for what cannot be worked into a stitch at all."""
    for part in parts:
        if isinstance(part, Work) and not part.held:
            yield vocabulary[part.stitch].uses
        elif isinstance(part, Group) and part.parts:
            yield from _taken_by_each(part.parts, vocabulary)
        elif isinstance(part, IntoOne):
            yield 1 if part.loops == 1 and _goes_into(part, vocabulary) else 2
        else:
            yield 0 if isinstance(part, CastOn) else 2
