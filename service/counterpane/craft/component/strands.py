"""What rows leave to catch a finger: openings of yarn-overs, and yarn past slipped stitches. Counted, not measured."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from counterpane.craft.component.derived import DerivedVersion
from counterpane.craft.openings import OPENING_STITCHES, SLIPPED, longest_run
from counterpane.craft.rows.tree import Group, Node, OpenRepeat, Work

PASSED_OVER: Mapping[str, int] = {"psso": 1, "p2sso": 2, "pass over": 1}
"""The stitches of the vocabulary that pass others over, and how many."""


def most_opened(version: DerivedVersion) -> int:
    """Return the yarn-overs that are worked side by side at most, in any row; 0 where there are none."""
    return widest_opening((row.parts for row in version.rows), _width(version))


def most_slipped(version: DerivedVersion) -> int:
    """Return the stitches slipped side by side at most, in any row, with the yarn left lying past them."""
    return longest_strand((row.parts for row in version.rows), _width(version))


def widest_opening(rows: Iterable[tuple[Node, ...]], across: int) -> int:
    """Return the yarn-overs side by side at most in rows over so many stitches."""
    return max((longest_run(parts, OPENING_STITCHES, across) for parts in rows), default=0)


def longest_strand(rows: Iterable[tuple[Node, ...]], across: int) -> int:
    """Return the slipped stitches that a strand lies past at most in rows over so many stitches.

    A slipped stitch that is passed over has no strand, nor has the first stitch of a row, beside which the yarn waits.
    """
    kept = (_past_edge(_without_passed(parts)) for parts in rows)
    return max((longest_run(parts, SLIPPED, across) for parts in kept), default=0)


def _width(version: DerivedVersion) -> int:
    return version.starts[0].least if version.starts else 1


def _past_edge(parts: tuple[Node, ...]) -> tuple[Node, ...]:
    match parts:
        case (Work(stitch, times) as first, *rest) if stitch in SLIPPED:
            return (replace(first, times=times - 1), *rest) if times > 1 else tuple(rest)
        case _:
            return parts


def _without_passed(parts: Sequence[Node]) -> tuple[Node, ...]:
    """Return the parts without the slipped stitches that a later one in the same list is said to pass over."""
    done: list[Node] = []
    passed = 0
    for node in reversed(parts):
        if isinstance(node, Work) and node.stitch in SLIPPED and passed:
            left = max(0, node.times - passed)
            passed -= node.times - left
            done += [replace(node, times=left)] if left else []
            continue
        if isinstance(node, Work):
            passed += PASSED_OVER.get(node.stitch, 0) * node.times
        done.append(_inside(node))
    return tuple(done[::-1])


def _inside(node: Node) -> Node:
    if isinstance(node, Group | OpenRepeat):
        return replace(node, parts=_without_passed(node.parts))
    return node
