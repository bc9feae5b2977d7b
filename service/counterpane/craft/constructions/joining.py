"""Rows put together side by side: from selvedge to selvedge as one row that reads as a knitter would write it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from itertools import chain
from typing import TypeAlias

from counterpane.craft.rows.effects import effect, total
from counterpane.craft.rows.tree import BindOff, Group, IntoOne, Marker, Node, OpenRepeat, Turn, Work
from counterpane.craft.stitches import Vocabulary

Nodes: TypeAlias = tuple[Node, ...]


WORTH_A_BRACKET = 3
"""Workings of a group from which it is written in brackets and not word by word; house figure."""


class CannotJoin(Exception):
    """A row holds something that cannot stand beside another part: `why` says what."""

    def __init__(self, why: str) -> None:
        super().__init__(why)
        self.why = why


def refuse_loose(parts: Sequence[Node]) -> None:
    """Raise CannotJoin for a row that turns, binds all off or counts to a marker."""
    for node in walk(parts):
        match node:
            case Turn():
                raise CannotJoin("turns before the end of the row")
            case BindOff(times=None):
                raise CannotJoin("binds off all stitches")
            case OpenRepeat(marker=True) | Marker():
                raise CannotJoin("counts to markers")
            case _:
                pass


def walk(parts: Sequence[Node]) -> Iterator[Node]:
    """Give every node of a row, those inside others too."""
    for node in parts:
        yield node
        if isinstance(node, Group | IntoOne | OpenRepeat):
            yield from walk(node.parts)
        if isinstance(node, OpenRepeat) and node.last:
            yield from walk(node.last)


def closed(parts: Sequence[Node], stitches: int, vocabulary: Vocabulary) -> Nodes:
    """Return the row with its open repeats worked out for a count at which it works."""
    done: list[Node] = []
    left = stitches
    for index, node in enumerate(parts):
        if isinstance(node, OpenRepeat):
            stop = _stop(node, parts[index + 1 :], vocabulary)
            done += _repeated(node, left - stop, vocabulary)
            left = stop
        else:
            done.append(node)
            left -= effect(node, vocabulary).uses
    return tuple(done)


def _stop(node: OpenRepeat, rest: Sequence[Node], vocabulary: Vocabulary) -> int:
    if node.stop is not None:
        return node.stop
    if any(isinstance(other, OpenRepeat) for other in rest):
        raise CannotJoin("holds two open repeats with no stop between them")
    return total(rest, vocabulary).uses


def _repeated(node: OpenRepeat, stitches: int, vocabulary: Vocabulary) -> Nodes:
    one = total(node.parts, vocabulary).uses
    last = node.last or ()
    times = (stitches - total(last, vocabulary).uses) // one if one else 0
    return (*_times(node.parts, times), *last)


def _times(parts: Nodes, times: int) -> Nodes:
    if times < 1:
        return ()
    if len(parts) == 1 and isinstance(parts[0], Work):
        return (replace(parts[0], times=parts[0].times * times),)
    return parts if times == 1 else (Group(parts, times),)


def head(parts: Sequence[Node], stitches: int, vocabulary: Vocabulary) -> Nodes:
    """Return what works the first stitches of a closed row, with what uses no stitch right after them.

    CannotJoin where a stitch would be split.
    """
    taken: list[Node] = []
    for node in _unrolled(parts, stitches, vocabulary):
        uses = effect(node, vocabulary).uses
        if uses > stitches:
            if stitches:
                raise CannotJoin("would be cut inside a stitch")
            break
        taken.append(node)
        stitches -= uses
    return tuple(taken)


def _unrolled(parts: Sequence[Node], stitches: int, vocabulary: Vocabulary) -> Iterator[Node]:
    """Give the nodes as far as they may be needed, with the repeat in which the cut falls worked out singly."""
    for node in parts:
        match node:
            case Group():
                one = total(node.parts, vocabulary).uses
                whole = min(node.times, stitches // one) if one else node.times
                yield from _times(node.parts, whole) if whole >= WORTH_A_BRACKET else node.parts * whole
                stitches -= one * whole
                if whole < node.times:
                    yield from _unrolled(node.parts, stitches, vocabulary)
            case Work() if node.times > 1:
                one = effect(node, vocabulary).uses // node.times
                whole = min(node.times, stitches // one) if one else node.times
                yield from _times((replace(node, times=1),), whole)
                stitches -= one * whole
                if whole < node.times:
                    yield replace(node, times=1)
            case _:
                yield node
                stitches -= effect(node, vocabulary).uses


def tail(parts: Sequence[Node], stitches: int, vocabulary: Vocabulary) -> Nodes:
    """Return what works the last stitches of a closed row; CannotJoin where a stitch would be split."""
    return _backward(head(_backward(parts), stitches, vocabulary))


def _backward(parts: Sequence[Node]) -> Nodes:
    return tuple(
        replace(node, parts=_backward(node.parts)) if isinstance(node, Group) else node for node in parts[::-1]
    )


def joined(begin: Nodes, middle: Nodes, end: Nodes, vocabulary: Vocabulary) -> Nodes:
    """Return one whole row of a closed beginning, a middle that may repeat, and a closed end.

    Stops move by what the end uses; like stitches that meet are written once, and run into a plain repeat beside them.
    """
    after = total(end, vocabulary).uses
    moved = (_moved(node, middle[index + 1 :], after, vocabulary) for index, node in enumerate(middle))
    return absorbed(run_together(chain(begin, moved, end)))


def _moved(node: Node, rest: Nodes, after: int, vocabulary: Vocabulary) -> Node:
    if not isinstance(node, OpenRepeat):
        return node
    return replace(node, stop=_stop(node, rest, vocabulary) + after)


def run_together(parts: Iterable[Node]) -> Nodes:
    """Return the parts with neighbouring workings of the same stitch written as one number."""
    done: list[Node] = []
    for node in parts:
        last = done[-1] if done else None
        if isinstance(node, Work) and isinstance(last, Work) and _same(node, last):
            done[-1] = replace(last, times=last.times + node.times)
        else:
            done.append(node)
    return tuple(done)


def _same(one: Work, other: Work) -> bool:
    return replace(one, times=1) == replace(other, times=1)


def absorbed(parts: Nodes) -> Nodes:
    """Return the parts with the same stitches before and after a plain repeat taken into it."""
    done: list[Node] = []
    for node in parts:
        last = done[-1] if done else None
        if _runs_on(last, node) and isinstance(last, OpenRepeat) and isinstance(node, Work):
            done[-1] = replace(last, stop=(last.stop or 0) - node.times)
        elif _runs_on(node, last):
            done[-1] = node
        else:
            done.append(node)
    return tuple(done)


def _runs_on(repeat: Node | None, stitch: Node | None) -> bool:
    """Say whether the stitch may be taken into the plain repeat beside it."""
    if not isinstance(repeat, OpenRepeat) or not isinstance(stitch, Work) or not repeat.plain:
        return False
    return len(repeat.parts) == 1 and isinstance(repeat.parts[0], Work) and _same(repeat.parts[0], stitch)


def stitch_by_stitch(parts: Sequence[Node], vocabulary: Vocabulary) -> tuple[Work, ...]:
    """Return every single working of a closed row; CannotJoin for what is no plain sequence of stitches."""
    done: list[Work] = []
    for node in parts:
        match node:
            case Work():
                done += [replace(node, times=1)] * node.times
            case Group():
                done += list(stitch_by_stitch(node.parts, vocabulary)) * node.times
            case _:
                raise CannotJoin("holds more than a sequence of stitches")
    return tuple(done)
