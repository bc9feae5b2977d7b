"""What rows leave to catch a finger: openings of yarn-overs, and yarn past slipped stitches. Counted, not measured."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from counterpane.craft.component.derived import DerivedVersion
from counterpane.craft.openings import SLIPPED, longest_run
from counterpane.craft.rows.tree import Group, Node, OpenRepeat, Work
from counterpane.craft.stitches import Vocabulary


def most_opened(version: DerivedVersion, vocabulary: Vocabulary) -> int:
    """Return the yarn-overs that are worked side by side at most, in any row; 0 where there are none."""
    opening = frozenset(key for key, stitch in vocabulary.stitches.items() if stitch.opens)
    return max((longest_run(row.parts, opening, _width(version)) for row in version.rows), default=0)


def most_slipped(version: DerivedVersion, vocabulary: Vocabulary) -> int:
    """Return the stitches slipped side by side at most, with the yarn left lying past them.

    A slipped stitch that is passed over has no strand, nor has the first stitch of a row, beside which the yarn waits.
    """
    kept = (_past_edge(_without_passed(row.parts, vocabulary)) for row in version.rows)
    return max((longest_run(parts, SLIPPED, _width(version)) for parts in kept), default=0)


def _width(version: DerivedVersion) -> int:
    return version.starts[0].least if version.starts else 1


def _past_edge(parts: tuple[Node, ...]) -> tuple[Node, ...]:
    match parts:
        case (Work(stitch, times) as first, *rest) if stitch in SLIPPED:
            return (replace(first, times=times - 1), *rest) if times > 1 else tuple(rest)
        case _:
            return parts


def _without_passed(parts: Sequence[Node], vocabulary: Vocabulary) -> tuple[Node, ...]:
    """Return the parts without the slipped stitches that a later one in the same list is said to pass over."""
    done: list[Node] = []
    passed = 0
    for node in reversed(parts):
        if isinstance(node, Work) and node.stitch in SLIPPED and passed:
            left = max(0, node.times - passed)
            passed -= node.times - left
            done += [replace(node, times=left)] if left else []
            continue
        if isinstance(node, Work) and vocabulary[node.stitch].makes < 0:
            passed -= vocabulary[node.stitch].makes * node.times
        done.append(_inside(node, vocabulary))
    return tuple(done[::-1])


def _inside(node: Node, vocabulary: Vocabulary) -> Node:
    if isinstance(node, Group | OpenRepeat):
        return replace(node, parts=_without_passed(node.parts, vocabulary))
    return node
