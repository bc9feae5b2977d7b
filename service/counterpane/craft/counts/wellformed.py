"""Rows that have no single meaning at any count: repeats inside repeats, two open ones, groups into one stitch."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import takewhile

from counterpane.craft.counts.effects import total
from counterpane.craft.counts.stuck import Stuck
from counterpane.craft.counts.values import UNPROVED, Misfit
from counterpane.craft.rows.tree import BindOff, CastOn, Group, IntoOne, Marker, Node, OpenRepeat, Turn, Work
from counterpane.craft.stitches import Vocabulary

# House bounds. A reader stops at 64 levels; a tree built by hand may be deeper, and is not followed further than this.
MOST_NESTED = 100
# No needle holds more markers, and no row names more turns.
MOST_UNROLLED = 2_000


def malformed(parts: Sequence[Node], vocabulary: Vocabulary) -> Misfit | None:
    """Return why a row has no single meaning at any count, None where it has one; the row number is 0."""
    try:
        well_formed(parts, vocabulary)
    except Stuck as stuck:
        return Misfit(stuck.slug, 0, stuck.place)
    return None


@dataclass(frozen=True, slots=True)
class WellFormed:
    """The nodes of a row with a single meaning, every marker and turn at the top, and whether it speaks of markers."""

    nodes: Sequence[Node]
    names_markers: bool


def well_formed(parts: Sequence[Node], vocabulary: Vocabulary) -> WellFormed:
    """Return the nodes ready to be walked; raise Stuck for a row with no single meaning."""
    marked = any(map(_is_marking, _all_nodes(parts)))
    nodes = _unrolled(parts)
    _check_sequence(nodes, vocabulary, inside=False)
    return WellFormed(nodes, marked)


def inner(node: Node) -> tuple[Node, ...]:
    """Return the nodes inside a node."""
    match node:
        case Group() | IntoOne():
            return node.parts
        case OpenRepeat():
            return (*node.parts, *(node.last or ()))
    return ()


def within(nodes: Sequence[Node]) -> Iterator[Node]:
    """Yield the nodes and all nodes inside them, in no set order and at any depth."""
    waiting = list(nodes)
    while waiting:
        node = waiting.pop()
        yield node
        if not isinstance(node, Work):
            waiting.extend(inner(node))


def is_open(node: Node) -> bool:
    """Say whether the node works an unknown number of stitches."""
    return isinstance(node, OpenRepeat) or (isinstance(node, BindOff) and node.times is None)


def names_markers(nodes: Sequence[Node]) -> bool:
    """Say whether any node places, passes or counts to a marker."""
    return any(map(_is_marking, within(nodes)))


def _is_marking(node: Node) -> bool:
    return isinstance(node, Marker) or (isinstance(node, OpenRepeat) and node.marker)


def upcoming(nodes: Sequence[Node], after: int, marker: bool) -> Sequence[Node]:
    """Return the nodes after an index up to the next turn, or up to the next marker too."""
    ends: tuple[type, ...] = (Turn, Marker) if marker else (Turn,)
    return tuple(takewhile(lambda node: not isinstance(node, ends), nodes[after + 1 :]))


def _unrolled(parts: Sequence[Node]) -> Sequence[Node]:
    """Write out the groups that hold markers or turns; raise Stuck for too many."""
    flat: list[Node] = []
    waiting = list(reversed(parts))
    most = MOST_UNROLLED + len(parts)
    while waiting:
        node = waiting.pop()
        if not (isinstance(node, Group) and _moves(node)):
            flat.append(node)
            continue
        if node.times * len(node.parts) + len(waiting) + len(flat) > most:
            raise Stuck(UNPROVED, node.place)
        waiting.extend(reversed(node.parts * node.times))
    return flat


def _moves(node: Node) -> bool:
    return names_markers((node,)) or any(isinstance(part, Turn) for part in within((node,)))


def _all_nodes(parts: Sequence[Node]) -> Sequence[Node]:
    """Return the nodes and all inside them; raise Stuck where they lie too deep."""
    found, level = list(parts), list(parts)
    for _ in range(MOST_NESTED):
        level = [part for node in level if not isinstance(node, Work) for part in inner(node)]
        if not level:
            return found
        found += level
    raise Stuck(UNPROVED, parts[0].place)


def is_deep(parts: Sequence[Node]) -> bool:
    """Say whether the nodes lie deeper than a row is followed."""
    try:
        _all_nodes(parts)
    except Stuck:
        return True
    return False


def _check_sequence(nodes: Sequence[Node], vocabulary: Vocabulary, inside: bool) -> None:
    for index, node in enumerate(nodes):
        if is_open(node):
            _check_open(node, nodes, index, vocabulary, inside)
        elif isinstance(node, IntoOne):
            if not _goes_into(node, vocabulary):
                raise Stuck("group-uses-several", node.place)
        elif isinstance(node, Group):
            _check_sequence(node.parts, vocabulary, inside=True)


def _check_open(node: Node, nodes: Sequence[Node], index: int, vocabulary: Vocabulary, inside: bool) -> None:
    if inside and not (isinstance(node, OpenRepeat) and node.marker):
        raise Stuck("repeat-inside-repeat", node.place)
    if isinstance(node, OpenRepeat):
        _check_body(node, vocabulary)
        if node.stop is None and any(map(is_open, within(upcoming(nodes, index, node.marker)))):
            raise Stuck("two-open-repeats", node.place)


def _check_body(node: OpenRepeat, vocabulary: Vocabulary) -> None:
    uses = _check_working(node, node.parts, vocabulary)
    _check_working(node, node.last or (), vocabulary)
    if uses == 0:
        raise Stuck("repeat-uses-nothing", node.place)


def _check_working(node: OpenRepeat, nodes: Sequence[Node], vocabulary: Vocabulary) -> int:
    """Return the stitches that one working of the repeat uses; raise Stuck where it cannot be repeated."""
    for part in within(nodes):
        if _moves_within(part, node.marker):
            raise Stuck(UNPROVED, part.place)
    _check_sequence(nodes, vocabulary, inside=True)
    working = total(nodes, vocabulary)
    if working.draws or working.held:
        raise Stuck("row-runs-short" if working.draws else "row-leaves-stitches", node.place)
    return working.uses


def _moves_within(node: Node, to_marker: bool) -> bool:
    """Say whether the node, inside a repeat, turns or passes or counts to markers that the repeat cannot count on."""
    if isinstance(node, Marker):
        return to_marker or node.act != "place"
    return isinstance(node, Turn) or (isinstance(node, OpenRepeat) and node.marker)


def _goes_into(node: IntoOne, vocabulary: Vocabulary) -> bool:
    if not node.parts or _first_uses(node.parts[0], vocabulary) != 1:
        return False
    return all(_fits_one(part, vocabulary) for part in node.parts)


def _first_uses(node: Node, vocabulary: Vocabulary) -> int:
    match node:
        case Work():
            return vocabulary[node.stitch].uses
        case Group():
            return _first_uses(node.parts[0], vocabulary) if node.parts else 0
        case IntoOne():
            return 1
    return 0


def _fits_one(node: Node, vocabulary: Vocabulary) -> bool:
    match node:
        case Work():
            return not node.held and vocabulary[node.stitch].uses <= 1
        case Group():
            return all(_fits_one(part, vocabulary) for part in node.parts)
        case IntoOne():
            return node.loops == 1 and _goes_into(node, vocabulary)
    return isinstance(node, CastOn)
