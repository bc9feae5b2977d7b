"""A row written out for one count: every repeat as often as it is worked there, so that the row is fixed."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from counterpane.craft.counts.needle import Amount, Needle
from counterpane.craft.counts.stuck import Stuck
from counterpane.craft.counts.values import Misfit
from counterpane.craft.counts.walking import walk_row
from counterpane.craft.counts.wellformed import is_open, within
from counterpane.craft.counts.work import work
from counterpane.craft.rows.tree import BindOff, Group, IntoOne, Node, OpenRepeat, Side, Work
from counterpane.craft.stitches import Vocabulary

Nodes = tuple[Node, ...]

# A beginner counts along a line of this many stitches and groups; house.
MOST_BY_STITCH = 400


@dataclass(frozen=True, slots=True)
class WrittenOut:
    """A row at one count: its fixed parts and the stitches after it, or why it cannot be worked.

    `times` is how often each open repeat is worked, in the order in which they are met; `all_off` are those of them
    that "bind off all stitches" took. `needle` is what the next row begins with: the stitches between the markers, and
    those that a turn has left.
    """

    parts: Nodes | None
    after: int | None
    times: tuple[int, ...] = ()
    misfit: Misfit | None = None
    needle: Needle | None = None
    all_off: tuple[int, ...] = ()


def write_out(
    parts: Sequence[Node],
    before: int,
    vocabulary: Vocabulary,
    side: Side | None = None,
    earlier: WrittenOut | None = None,
) -> WrittenOut:
    """Write a row out for `before` stitches; `earlier` is the row worked just before it, which may have left markers.

    Groups keep their number of times. "Bind off all stitches" stays as it is.
    """
    left = earlier.needle if earlier else None
    start = left if left and left.all.base == before else Needle.holding(before)
    worked: list[Amount] = []
    try:
        needle = walk_row(start, parts, vocabulary, side == "round", worked)
    except Stuck as stuck:
        alone = None if start is left else work([parts], before, vocabulary)[0].misfit
        misfit = alone or Misfit(stuck.slug, 0, stuck.place, stuck.asked, stuck.left, has=before)
        return WrittenOut(None, None, misfit=misfit)
    times = tuple(amount.base for amount in worked)
    all_off: list[int] = []
    filled = tuple(_filled(parts, iter(times), all_off))
    return WrittenOut(filled, needle.all.base, times, needle=needle, all_off=tuple(all_off))


def _filled(parts: Sequence[Node], times: Iterator[int], all_off: list[int]) -> Iterator[Node]:
    """Give the parts with each open repeat worked as often as `times` says, in the order in which they are met."""
    for node in parts:
        match node:
            case OpenRepeat():
                yield from _repeated(tuple(map(_certain, node.parts)), next(times))
                yield from map(_certain, node.last or ())
            case Group() if any(map(is_open, within(node.parts))):
                copies = [tuple(_filled(node.parts, times, all_off)) for _ in range(node.times)]
                yield from _folded(copies)
            case BindOff(times=None):
                all_off.append(next(times))  # It is met as a repeat of a bind-off.
                yield node
            case _:
                yield _certain(node)


def _certain(node: Node) -> Node:
    """Return a closed node with the number of its groups settled."""
    if isinstance(node, Group):
        return replace(node, parts=tuple(map(_certain, node.parts)), doubtful=False)
    return replace(node, parts=tuple(map(_certain, node.parts))) if isinstance(node, IntoOne) else node


def _repeated(parts: Nodes, times: int) -> Iterator[Node]:
    """Yield parts worked so often: one stitch with its number, several as a group, none not at all."""
    only = parts[0] if len(parts) == 1 else None
    if isinstance(only, Work | Group) and times:
        yield replace(only, times=only.times * times)
    elif times > 1:
        yield Group(parts, times, place=parts[0].place)
    elif times:
        yield from parts


def _folded(copies: Sequence[Nodes]) -> Iterator[Node]:
    """Yield copies one after the other, those that are alike together."""
    begin = 0
    for index in range(1, len(copies) + 1):
        if index == len(copies) or copies[index] != copies[begin]:
            yield from _repeated(copies[begin], index - begin)
            begin = index


def stitch_by_stitch(parts: Sequence[Node], most: int = MOST_BY_STITCH) -> Nodes | None:
    """Return fixed parts without groups, the same stitches side by side together; None for more than `most` nodes."""
    if _length(parts) > most:
        return None
    out: list[Node] = []
    for node in _flat(parts):
        last = out[-1] if out else None
        if isinstance(node, Work) and isinstance(last, Work) and replace(node, times=last.times) == last:
            out[-1] = replace(last, times=last.times + node.times)
        else:
            out.append(node)
    return tuple(out)


def _length(parts: Sequence[Node]) -> int:
    return sum(_length(node.parts) * node.times if isinstance(node, Group) else 1 for node in parts)


def _flat(parts: Sequence[Node]) -> Iterator[Node]:
    for node in parts:
        if not isinstance(node, Group):
            yield node
        elif _length(node.parts):  # A group of nothing may have any number of times.
            for _ in range(node.times):
                yield from _flat(node.parts)
