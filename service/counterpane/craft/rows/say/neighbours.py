"""Which stitches stand beside each node of a list: a UK yarn-over is named after them."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TypeAlias

from counterpane.craft.rows.tree import Group, IntoOne, Node, OpenRepeat, Work
from counterpane.craft.stitches import Face, Vocabulary

Beside: TypeAlias = tuple[Face | None, Face | None]
NOBODY: Beside = (None, None)
_ORDER: tuple[Beside, ...] = (("knit", "knit"), ("purl", "purl"), ("knit", "purl"), ("purl", "knit"))


def neighbours(parts: Sequence[Node], vocabulary: Vocabulary, outside: Beside, again: bool) -> list[Beside]:
    """Return the faces before and after each node of a list.

    Where the list is worked `again` its ends meet; beyond an end that meets nothing stand the faces `outside`.
    """
    first = [_face(node, vocabulary, last=False) for node in parts]
    last = [_face(node, vocabulary, last=True) for node in parts]
    before, after = outside
    if again:
        before = next((face for face in reversed(last) if face), before)
        after = next((face for face in first if face), after)
    behind = _latest(last, before)
    ahead = _latest(first[::-1], after)[::-1]
    return list(zip(behind, ahead, strict=True))


def kind(beside: Beside) -> int:
    """Return the place of a yarn-over's name between two faces: knits, purls, knit to purl, purl to knit."""
    before, after = beside
    return _ORDER.index((before or after or "knit", after or before or "knit"))


def _latest(faces: Sequence[Face | None], before: Face | None) -> list[Face | None]:
    """Return for each place the last face that stands before it."""
    out: list[Face | None] = []
    for face in faces:
        out.append(before)
        before = face or before
    return out


def _face(node: Node, vocabulary: Vocabulary, last: bool) -> Face | None:
    """Return the face of a node's first or last stitch, None where it has none."""
    if isinstance(node, Work):
        return vocabulary[node.stitch].face
    if isinstance(node, Group | OpenRepeat | IntoOne):
        order: Iterable[Node] = reversed(node.parts) if last else node.parts
        return next((face for part in order if (face := _face(part, vocabulary, last))), None)
    return None
