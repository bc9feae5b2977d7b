"""Brackets round a repeat that is worked a number of times, other than the style's."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking.printed import Departure, Printed, noted
from counterpane.craft.counts.wellformed import within
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.tree import Group, Place

_PARTNERS = {"(": ")", "[": "]", "{": "}"}


@rule(
    "style-times",
    family="style",
    severity="note",
    bad="Cast on 6 sts.\nRow 1: (K1, p1) 3 times.",
    good="Cast on 6 sts.\nRow 1: [K1, p1] 3 times.",
    source="house",
)
def style_times(text: Printed) -> Iterator[Finding]:
    """A repeat worked a number of times stands in other brackets than in the house style.

    Round brackets also hold counts, sizes and remarks. A house that keeps one kind of bracket for what is repeated
    spares its readers the difference.
    """
    if text.style.times is None:
        return
    found = (each for place in _groups(text) if (each := _departure(text, place)) is not None)
    yield from noted(text, "style-times", "A repeat is printed", found)


def _groups(text: Printed) -> set[Place]:
    """Return where repeats that are worked a number of times begin, each once."""
    nodes = (node for row in text.examined.instructions.rows for node in within(row.parts))
    return {node.place for node in nodes if isinstance(node, Group)}


def _departure(text: Printed, place: Place) -> Departure | None:
    """Return a repeat in other brackets; one that ends on another line, or stands between stars, is left alone."""
    rest = text.line_at(place)[place.column - 1 :]
    opening = (text.style.times or "")[:1]
    end = _partner(rest)
    if rest[:1] not in _PARTNERS or rest[0] == opening or end is None:
        return None
    return Departure(place, rest[: end + 1], opening + rest[1:end] + _PARTNERS[opening])


def _partner(rest: str) -> int | None:
    """Return the index of the bracket that closes the first one."""
    depth = 0
    for index, sign in enumerate(rest):
        depth += (sign in _PARTNERS) - (sign in _PARTNERS.values())
        if not depth:
            return index
    return None
