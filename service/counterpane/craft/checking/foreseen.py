"""What a row becomes by a small edit, told from its tree without reading the row again.

Most edits that are tried do not fit the count: those need not be read. Told are edits among the items of a list, "k4"
made "k5", "yo, " left out, "k1, " put before it, where each item says alone what it says in its row; and another number
of stitches that a repeat keeps for the rest.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from counterpane.craft.checking.doubts import Parts
from counterpane.craft.checking.edits import Edit
from counterpane.craft.checking.rewriting import Change, Stretch
from counterpane.craft.counts.wellformed import within
from counterpane.craft.rows.cursor import STITCH_WORDS
from counterpane.craft.rows.tree import Group, IntoOne, Node, OpenRepeat, Place, Work

_SIGNS = frozenset(",;:.*()[]")
_LIST = re.compile(r"[a-z0-9 ,]*", re.IGNORECASE)
_ITEM = re.compile(r"[a-z0-9]+(?: +[a-z0-9]+)*", re.IGNORECASE)
_KEEPS = "to last "

Stitches = Mapping[int, Work]


def stitches_of(parts: Parts, offset: Callable[[Place], int]) -> Stitches:
    """Return the stitches of a row by where they stand, and none of those worked into one stitch.

    Of those a word behind the list may say more. `offset` tells where a place stands.
    """
    inside = {id(part) for node in within(parts) if isinstance(node, IntoOne) for part in within(node.parts)}
    stitches = (node for node in within(parts) if isinstance(node, Work) and id(node) not in inside)
    return {offset(node.place): node for node in stitches}


def foreseen(
    parts: Parts, stitches: Stitches, words: Stretch, edit: Edit, read: Callable[[str], Parts]
) -> Parts | None:
    """Return the nodes of an edited row, None where they are not told; `read` reads the words of an item alone."""
    become: Parts | None = parts
    for change in edit.changes:
        begin, end = change.begin - words.begin, change.end - words.begin
        printed = words.text[begin:end]
        if become is None or {printed, change.words} <= STITCH_WORDS:
            continue  # "sts" made "st" follows from its number, which is changed beside it.
        if words.text.endswith(_KEEPS, 0, begin) and printed.isdecimal() and change.words.isdecimal():
            become = _with_rest(become, int(printed), int(change.words))
        else:
            become = _with_items(become, stitches, words, change, read)
    return become if become and all(map(_is_something, within(become))) else None


def _with_rest(parts: Parts, old: int, new: int) -> Parts | None:
    """Return nodes whose only repeat that keeps so many stitches for the rest keeps others."""
    repeats = [node for node in within(parts) if isinstance(node, OpenRepeat) and node.stop == old]
    return _with(parts, {id(repeats[0]): (replace(repeats[0], stop=new),)}) if len(repeats) == 1 else None


def _with_items(
    parts: Parts, stitches: Stitches, words: Stretch, change: Change, read: Callable[[str], Parts]
) -> Parts | None:
    """Return nodes with the items that a change makes in the place of those it touches."""
    begin, end = _around(words.text, change.begin - words.begin, change.end - words.begin)
    printed, first = words.text[begin:end], words.begin + begin
    edited = Stretch(first, printed, ()).changed((change,))
    if not (_LIST.fullmatch(printed) and _LIST.fullmatch(edited)):
        return None
    touched = [(stitches.get(first + item.start()), item.group()) for item in _ITEM.finditer(printed)]
    if not touched or any(read(item) != (node,) for node, item in touched):
        return None
    new = [read(item) for item in _ITEM.findall(edited)]
    if not all(len(nodes) == 1 and isinstance(nodes[0], Work) for nodes in new):
        return None
    old = [id(node) for node, _ in touched]
    return _with(parts, {**dict.fromkeys(old, ()), old[0]: tuple(node for (node,) in new)})


def _around(text: str, begin: int, end: int) -> tuple[int, int]:
    """Return where the items that a change touches begin and end, between two signs."""
    while begin and text[begin - 1] not in _SIGNS:
        begin -= 1
    while end < len(text) and text[end] not in _SIGNS:
        end += 1
    return begin, end


def _with(parts: Sequence[Node], put: Mapping[int, Parts]) -> Parts:
    """Return nodes with others in the place of some, wherever these stand: `put` has them by identity."""
    return tuple([new for node in parts for new in (put[id(node)] if id(node) in put else (_inside(node, put),))])


def _inside(node: Node, put: Mapping[int, Parts]) -> Node:
    if isinstance(node, OpenRepeat):
        return replace(node, parts=_with(node.parts, put), last=None if node.last is None else _with(node.last, put))
    return replace(node, parts=_with(node.parts, put)) if isinstance(node, Group) else node


def _is_something(node: Node) -> bool:
    return not isinstance(node, Group | OpenRepeat) or bool(node.parts)
