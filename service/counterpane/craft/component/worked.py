"""Rows worked out stitch by stitch at one small count, as the right side shows them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from counterpane.craft.counts.effects import effect, total
from counterpane.craft.rows.tree import Group, IntoOne, Node, OpenRepeat, Row, Work
from counterpane.craft.stitches import Stitch, Vocabulary

MOST = 2_000
"""Stitches of a row beyond which it is not worked out; house figure that bounds time."""


class NotPlain(Exception):
    """A row holds something that is no plain sequence of stitches, such as a turn or stitches on a cable needle."""


@dataclass(frozen=True, slots=True)
class Worked:
    """One stitch worked, or several into one (`inside`): its key as the right side shows it."""

    key: str
    uses: int
    makes: int
    inside: tuple[Worked, ...] = ()


def from_right(row: Row, rs: bool, stitches: int, vocabulary: Vocabulary) -> tuple[Worked, ...]:
    """Return the workings of a row over so many stitches, right edge first, as the right side shows them.

    Movements of the yarn are left out. NotPlain where the row is more than a sequence of stitches, or very long.
    """
    works = as_worked(row, rs, stitches, vocabulary)
    return works if rs else tuple(_turned(work, vocabulary) for work in works)


def as_worked(row: Row, rs: bool, stitches: int, vocabulary: Vocabulary) -> tuple[Worked, ...]:
    """Return the workings of a row over so many stitches, right edge first, each as the knitter works it."""
    if stitches > MOST or sum(_size(node) for node in row.parts) > MOST:
        raise NotPlain
    works = tuple(work for work in _each(row.parts, stitches, vocabulary) if work.uses or work.makes)
    return works if rs else works[::-1]


def _size(node: Node) -> int:
    """Return how many workings are written in a node, repeats that end counted out."""
    match node:
        case Work():
            return node.times
        case Group():
            return node.times * sum(_size(part) for part in node.parts)
        case IntoOne() | OpenRepeat():
            return sum(_size(part) for part in node.parts)
        case _:
            return 1


def _each(parts: Sequence[Node], stitches: int, vocabulary: Vocabulary) -> Iterator[Worked]:
    left = stitches
    for index, node in enumerate(parts):
        if isinstance(node, OpenRepeat):
            stop = total(parts[index + 1 :], vocabulary).uses if node.stop is None else node.stop
            yield from _repeated(node, left - stop, vocabulary)
            left = stop
        else:
            yield from _closed(node, vocabulary)
            left -= effect(node, vocabulary).uses


def _repeated(node: OpenRepeat, stitches: int, vocabulary: Vocabulary) -> Iterator[Worked]:
    last = node.last or ()
    times = (stitches - total(last, vocabulary).uses) // total(node.parts, vocabulary).uses
    once = [work for part in node.parts for work in _closed(part, vocabulary)]
    for _ in range(times):
        yield from once
    for part in last:
        yield from _closed(part, vocabulary)


def _closed(node: Node, vocabulary: Vocabulary) -> list[Worked]:
    match node:
        case Work(held=False):
            return [_worked(vocabulary[node.stitch])] * node.times
        case Group():
            return [work for part in node.parts for work in _closed(part, vocabulary)] * node.times
        case IntoOne():
            inside = tuple(work for part in node.parts for work in _closed(part, vocabulary))
            return [Worked("", node.loops, sum(work.makes for work in inside), inside)]
        case _:
            raise NotPlain


def _worked(stitch: Stitch) -> Worked:
    return Worked(stitch.key, stitch.uses, stitch.makes)


def _turned(work: Worked, vocabulary: Vocabulary) -> Worked:
    """Return a working of a WS row as the right side shows it; one without a counterpart keeps a name of its own."""
    if work.inside:
        inside = tuple(_turned(each, vocabulary) for each in reversed(work.inside))
        return Worked("", work.uses, work.makes, inside)
    back = vocabulary[work.key].back
    return Worked(back if back is not None else f"{work.key} on the wrong side", work.uses, work.makes)


def unleaning(work: Worked, vocabulary: Vocabulary) -> Worked:
    """Return the working with its lean left out, so that a decrease equals its mirror image."""
    mirror = vocabulary[work.key].mirror if work.key in vocabulary.stitches else None
    return Worked(min(work.key, mirror or work.key), work.uses, work.makes, work.inside)
