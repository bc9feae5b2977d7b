"""The way back: a tree to the words of a row, in US or UK terms, so that reading the words gives the tree again.

In UK terms the yarn-over is named by its neighbours: yfwd between knits, yrn between purls, yfrn from knit to purl, yon
from purl to knit; across the join of a repeat the first stitch of the repeat follows its last one.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from counterpane.craft.rows.tree import (
    BindOff,
    CastOn,
    Group,
    Hold,
    IntoOne,
    Marker,
    Node,
    OpenRepeat,
    Row,
    Turn,
    Work,
)
from counterpane.craft.stitches import Terms, Vocabulary

_GLUED = frozenset({"k", "p"})
_GLUED_TBL = {"k tbl": "k", "p tbl": "p"}
_MARKERS = {"place": "pm", "slip": "sm", "remove": "rm"}
_UK_YARN_OVERS = {("knit", "knit"): "yfwd", ("purl", "purl"): "yrn", ("knit", "purl"): "yfrn", ("purl", "knit"): "yon"}
_BIND_OFF = {"us": "bind off", "uk": "cast off"}


@dataclass(frozen=True, slots=True)
class _Words:
    """The vocabulary and the terms in which to speak."""

    vocabulary: Vocabulary
    terms: Terms


def say_row(parts: Sequence[Node], vocabulary: Vocabulary, terms: Terms = "us") -> str:
    """Write the parts of a row as words, without a label: "k2, *p3, k2; rep from * to end"."""
    words = _Words(vocabulary, terms)
    if len(parts) == 1 and isinstance(parts[0], OpenRepeat):
        node = parts[0]
        if node.plain and node.stop == 0 and not node.marker and isinstance(node.parts[0], Work):
            name = {"k": "knit", "p": "purl"}.get(node.parts[0].stitch)
            if name and node.parts[0] == Work(node.parts[0].stitch):
                return name
    return _list(tuple(parts), words, "*")


def say_line(row: Row, vocabulary: Vocabulary, terms: Terms = "us", label: str | None = None) -> str:
    """Write a whole row line with label, side and printed count: "Row 1 (RS): K2, p2. (4 sts)"."""
    word = "Round" if row.side == "round" else "Row"
    side = f" ({row.side})" if row.side in ("RS", "WS") else ""
    text = say_row(row.parts, vocabulary, terms)
    count = f" ({row.stated} sts)" if row.stated is not None else ""
    return f"{word} {label or row.label}{side}: {text[:1].upper()}{text[1:]}.{count}"


def _list(parts: tuple[Node, ...], words: _Words, star: str) -> str:
    """Join parts with commas; after a starred repeat "end" leads the rest where no stop is printed."""
    out: list[str] = []
    for index in range(len(parts)):
        said = _node(parts, index, words, star)
        earlier = parts[index - 1] if index else None
        if isinstance(earlier, OpenRepeat) and earlier.stop is None and earlier.last is None:
            said = f"end {said}"
        out.append(said)
    return ", ".join(out)


def _node(parts: tuple[Node, ...], index: int, words: _Words, star: str) -> str:
    """Write one node; its neighbours decide the name of a UK yarn-over."""
    match parts[index]:
        case Work() as work:
            return _work(work, words, _neighbours(parts, index, words))
        case Group() as group if group.doubtful:
            return f"{star}{_list(group.parts, words, star + '*')}; rep from {star} {_times(group.times - 1)}"
        case Group() as group:
            return f"[{_list(group.parts, words, star)}] {_times(group.times)}"
        case IntoOne() as into:
            target = "next double yo" if into.loops == 2 else "next st"
            return f"({_list(into.parts, words, star)}) into {target}"
        case OpenRepeat() as repeat:
            return _repeat(repeat, words, star)
        case node:
            return _small(node, words)


def _small(node: Node, words: _Words) -> str:
    """Write the nodes that hold no others."""
    match node:
        case BindOff():
            times = "all sts" if node.times is None else f"{node.times} st{'s' if node.times != 1 else ''}"
            return " ".join(filter(None, (_BIND_OFF[words.terms], times, node.manner)))
        case CastOn():
            return f"cast on {node.times} st{'s' if node.times != 1 else ''}"
        case Hold():
            where = "in front" if node.where == "front" else "at back"
            return f"sl next {node.times} sts to cn and hold {where}"
        case Marker():
            return _MARKERS[node.act]
        case Turn():
            return "turn"
        case _:
            raise TypeError(f"{type(node).__name__} holds other nodes")


def _repeat(node: OpenRepeat, words: _Words, star: str) -> str:
    """Write an open repeat, plain or with a star, with its stop."""
    if node.plain:
        return f"{_work(node.parts[0], words, (None, None), bare=True)} {_stop(node)}"
    stop = f" {_stop(node)}" if node.stop is not None or node.marker else ""
    last = f", ending last rep {_list(node.last, words, star + '*')}" if node.last else ""
    return f"{star}{_list(node.parts, words, star + '*')}; rep from {star}{stop}{last}"


def _stop(node: OpenRepeat) -> str:
    if node.marker:
        count = f"{node.stop} st{'s' if node.stop != 1 else ''} before " if node.stop else ""
        return f"to {count}marker"
    if not node.stop:
        return "to end"
    return "to last st" if node.stop == 1 else f"to last {node.stop} sts"


def _times(number: int) -> str:
    return {1: "once", 2: "twice"}.get(number, f"{number} times")


def _work(node: Node, words: _Words, neighbours: tuple[str | None, str | None], bare: bool = False) -> str:
    """Write a stitch with its number, manner, cable needle and colour."""
    if not isinstance(node, Work):
        raise TypeError("a plain repeat holds one stitch")
    colour = f" in {node.colour}" if node.colour else ""
    held = " from cn" if node.held else ""
    if node.stitch in _GLUED or node.stitch in _GLUED_TBL:
        letter = _GLUED_TBL.get(node.stitch, node.stitch)
        return f"{letter}{'' if bare else node.times}{' tbl' if node.stitch in _GLUED_TBL else ''}{held}{colour}"
    name = _name(node.stitch, words, neighbours)
    if node.stitch == "sl":
        number = "" if bare else f" {node.times}"
        return " ".join((f"{name}{number}", *node.manner)) + held + colour
    if node.stitch == "patt":
        return f"{name}{'' if bare else f' {node.times}'}{held}{colour}"
    times = "" if node.times == 1 else f" {_times(node.times)}"
    return f"{name}{times}{held}{colour}"


def _name(key: str, words: _Words, neighbours: tuple[str | None, str | None]) -> str:
    """Return the name to print for a stitch in the terms spoken."""
    if key == "yo" and words.terms == "uk":
        before, after = neighbours
        return _UK_YARN_OVERS[(before or after or "knit", after or before or "knit")]
    names = words.vocabulary[key].names
    return names[words.terms][0]


def _neighbours(parts: tuple[Node, ...], index: int, words: _Words) -> tuple[str | None, str | None]:
    """Return the faces of the stitches before and after a node; the ends of a repeat meet."""
    if not (isinstance(parts[index], Work) and getattr(parts[index], "stitch", "") == "yo"):
        return None, None
    before = next((f for node in reversed(parts[:index]) if (f := _face(node, words, last=True))), None)
    after = next((f for node in parts[index + 1 :] if (f := _face(node, words, last=False))), None)
    wrapped = next((f for node in reversed(parts[index + 1 :]) if (f := _face(node, words, last=True))), None)
    rewrapped = next((f for node in parts[:index] if (f := _face(node, words, last=False))), None)
    return before or wrapped, after or rewrapped


def _face(node: Node, words: _Words, last: bool) -> str | None:
    """Return the face of a node's first or last stitch, None where it has none."""
    if isinstance(node, Work):
        return words.vocabulary[node.stitch].face if node.stitch != "yo" else None
    if isinstance(node, Group | OpenRepeat | IntoOne):
        order = reversed(node.parts) if last else iter(node.parts)
        return next((face for part in order if (face := _face(part, words, last))), None)
    return None
