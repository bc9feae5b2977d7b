"""Rows worked flat as rounds: edge stitches dropped, rows of the wrong side turned, the repeats brought into line."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from counterpane.craft.rows.effects import total
from counterpane.craft.rows.tree import NOWHERE, Group, Node, OpenRepeat, Side, Work
from counterpane.craft.rows.turning import CannotTurn, Nodes, rs_view
from counterpane.craft.stitches import Vocabulary


def as_rounds(rows: Sequence[tuple[Nodes, Side]], vocabulary: Vocabulary) -> tuple[Nodes, ...]:
    """Return one round for each row: its repeat alone, to be worked to the end of the round.

    Each repeat begins above the first repeat of the first row. CannotTurn for a row without exactly one open repeat,
    and where a round would begin inside a stitch. Back to flat is another matter: edges are then a choice.
    """
    facing = [rs_view(parts, vocabulary) if side == "WS" else parts for parts, side in rows]
    cut = [_before_and_repeat(parts) for parts in facing]
    first = total(cut[0][0], vocabulary).uses if cut else 0
    return tuple(_round(before, repeat, first, vocabulary) for before, repeat in cut)


def _before_and_repeat(parts: Nodes) -> tuple[Nodes, OpenRepeat]:
    found = [(parts[:index], node) for index, node in enumerate(parts) if isinstance(node, OpenRepeat)]
    if len(found) != 1 or found[0][1].last is not None:
        raise CannotTurn("the row has no single repeat", parts[0].place if parts else NOWHERE)
    return found[0]


def _round(before: Nodes, repeat: OpenRepeat, first: int, vocabulary: Vocabulary) -> Nodes:
    width = total(repeat.parts, vocabulary).uses
    if not width:
        raise CannotTurn("the repeat uses no stitch", repeat.place)
    late = (first - total(before, vocabulary).uses) % width
    head, tail = _cut(repeat.parts, late, vocabulary)
    return (replace(repeat, parts=(*tail, *head), stop=0, marker=False),)


def _cut(parts: Nodes, stitches: int, vocabulary: Vocabulary) -> tuple[Nodes, Nodes]:
    """Cut closed nodes after so many stitches, fewer than they use; what uses none stays with the stitch after it."""
    at = 0
    while stitches and stitches >= (uses := total(parts[at : at + 1], vocabulary).uses):
        at, stitches = at + 1, stitches - uses
    head, tail = _cut_node(parts[at], stitches, vocabulary)
    return (*parts[:at], *head), (*tail, *parts[at + 1 :])


def _cut_node(node: Node, stitches: int, vocabulary: Vocabulary) -> tuple[Nodes, Nodes]:
    if stitches == 0:
        return (), (node,)
    one = replace(node, times=1) if isinstance(node, Work | Group) else node
    done, within = divmod(stitches, total((one,), vocabulary).uses)
    if isinstance(node, Group) and within:
        head, tail = _cut(node.parts, within, vocabulary)
        return (*_times(node, done), *head), (*tail, *_times(node, node.times - done - 1))
    if within or not isinstance(node, Work | Group):
        raise CannotTurn("the round would begin inside a stitch", node.place)
    return _times(node, done), _times(node, node.times - done)


def _times(node: Work | Group, times: int) -> Nodes:
    return (replace(node, times=times),) if times else ()
