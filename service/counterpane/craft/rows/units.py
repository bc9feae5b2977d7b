"""The stitches of a list by units: a slipped stitch and what passes it over is one, any other node is one.

A count behind a list ("knit 1, 8 times"), "alternately" and "repeat this" speak of units and clauses, not of words.
"""

from __future__ import annotations

from collections.abc import Sequence

from counterpane.craft.rows.tree import Node, Work

PASSED = frozenset({"psso", "p2sso", "pass over"})
OVERS = frozenset({"yo", "yo wrapped twice", "m1"})
_LONGEST_COMPOUND = 4  # House.


def unit_start(items: Sequence[Node], end: int) -> int:
    """Return where the last unit before an index begins."""
    last = items[end - 1]
    if not (isinstance(last, Work) and last.stitch in PASSED):
        return end - 1
    for index in range(end - 2, max(-1, end - 1 - _LONGEST_COMPOUND), -1):
        node = items[index]
        if isinstance(node, Work) and node.stitch == "sl":
            return index
    return end - 1


def last_units(items: Sequence[Node], count: int) -> int:
    """Return where the last so many units begin; 0 where there are fewer."""
    at = len(items)
    for _ in range(count):
        if at:
            at = unit_start(items, at)
    return at


def first_units(items: Sequence[Node], start: int, count: int) -> int:
    """Return where the first so many units from an index end."""
    ends = []
    at = len(items)
    while at > start:
        ends.append(at)
        at = unit_start(items, at)
    ends.reverse()
    return ends[min(count, len(ends)) - 1] if ends else start


def with_over(items: Sequence[Node], start: int) -> int:
    """Return the start moved before a yarn-over that stands just before it: an over belongs to its decrease."""
    before = items[start - 1] if start else None
    return start - 1 if isinstance(before, Work) and before.stitch in OVERS else start


def shortest_period(items: Sequence[Node]) -> int:
    """Return the length of the shortest list that, said again and again, gives these items; their number for none.

    Linear in their number, by the failure function of Knuth, Morris and Pratt 1977.
    """
    known = [0] * len(items)
    for index in range(1, len(items)):
        length = known[index - 1]
        while length and items[index] != items[length]:
            length = known[length - 1]
        known[index] = length + (items[index] == items[length])
    period = len(items) - known[-1] if items else 0
    return period if period and len(items) % period == 0 else len(items)
