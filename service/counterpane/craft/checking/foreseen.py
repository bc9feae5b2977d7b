"""What a row becomes with another number of plain stitches, told from its tree without reading it again.

Most edits that are tried change such a number, and most of them do not fit: those need not be read.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import replace

from counterpane.craft.checking.edits import Edit
from counterpane.craft.checking.rewriting import Stretch
from counterpane.craft.counts.wellformed import within
from counterpane.craft.rows.tree import Group, IntoOne, Node, OpenRepeat, Place, Work

_PLAIN = ("k", "p")
# Behind these nothing more is said of a stitch.
_ENDED = re.compile(r"\s*(?:[,;.)\]]|$)")
_BEGUN = re.compile(r"(?<![a-z0-9])[kp]$", re.IGNORECASE)


def with_number(
    parts: Sequence[Node], words: Stretch, edit: Edit, offset: Callable[[Place], int]
) -> tuple[Node, ...] | None:
    """Return a row whose "k4" is "k5"; None for an edit that is no such one. `offset` tells where a place stands."""
    first, *further = edit.changes
    begin, end = first.begin - words.begin, first.end - words.begin
    number, text = first.words, words.text
    if further or not (number.isdecimal() and _BEGUN.search(text, 0, begin) and _ENDED.match(text, end)):
        return None
    plain = (node for node in within(parts) if isinstance(node, Work) and node.stitch in _PLAIN and not node.manner)
    node = next((node for node in plain if offset(node.place) == first.begin - 1), None)
    if node is None or text[begin:end] != str(node.times):
        return None
    return _with(parts, node, replace(node, times=int(number)))


def _with(parts: Sequence[Node], old: Work, new: Work) -> tuple[Node, ...]:
    """Return nodes with one in the place of another, wherever it stands."""
    return tuple([new if node is old else _inside(node, old, new) for node in parts])


def _inside(node: Node, old: Work, new: Work) -> Node:
    if isinstance(node, OpenRepeat):
        last = _with(node.last, old, new) if node.last is not None else None
        return replace(node, parts=_with(node.parts, old, new), last=last)
    return replace(node, parts=_with(node.parts, old, new)) if isinstance(node, Group | IntoOne) else node
