"""Nodes in words: lists with commas, brackets, stars, and all that is no stitch."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from counterpane.craft.rows.say.neighbours import NOBODY, Beside, neighbours
from counterpane.craft.rows.say.spelling import times
from counterpane.craft.rows.say.stitches import Speech, said_work
from counterpane.craft.rows.tree import (
    BindOff,
    CastOn,
    Group,
    Hold,
    IntoOne,
    Marker,
    Node,
    OpenRepeat,
    Turn,
    Work,
)
from counterpane.craft.stitches import Terms

_BIND_OFF: Mapping[Terms, str] = {"us": "bind off", "uk": "cast off"}
STAR = "*"


def said_list(
    parts: tuple[Node, ...], speech: Speech, star: str = STAR, outside: Beside = NOBODY, again: bool = False
) -> str:
    """Join the words of nodes with commas.

    After a starred repeat without a stop, "end" leads the rest. `star` is the next mark to use, `outside` the faces
    around the list, and `again` says that it is worked several times.
    """
    faces = neighbours(parts, speech.vocabulary, outside, again) if speech.terms == "uk" else [NOBODY] * len(parts)
    out: list[str] = []
    for index, beside in enumerate(faces):
        said = _with_printed(parts[index], _node(parts, index, speech, star, beside), speech)
        earlier = parts[index - 1] if index else None
        if isinstance(earlier, OpenRepeat) and earlier.stop is None and earlier.last is None and not earlier.marker:
            said = speech.spelling.ending.format(said)
        out.append(said)
    return ", ".join(out)


def _with_printed(node: Node, said: str, speech: Speech) -> str:
    """Put what is printed beside a node around its words: "with A, k2", "k1 (edge st)"."""
    before, after = speech.printed.before.get(node.place), speech.printed.after.get(node.place)
    return f"{f'{before}, ' if before else ''}{said}{f' {after}' if after else ''}"


def _node(parts: tuple[Node, ...], index: int, speech: Speech, star: str, beside: Beside) -> str:
    """Write one node of a list."""
    match parts[index]:
        case Work(evenly=True) as work:
            change = "decrease" if speech.vocabulary[work.stitch].uses else "increase"
            return f"{change} {speech.spelling.counted(work.times)} evenly"
        case Work() as work:
            return said_work(work, speech, beside, moved=_goes_back(parts, index))
        case Group(doubtful=True) as group:
            inner = said_list(group.parts, speech, star + STAR, beside, again=True)
            return f"{star}{inner}; {speech.spelling.repeat} from {star} {times(group.times - 1)}"
        case Group() as group:
            return f"[{said_list(group.parts, speech, star, beside, group.times > 1)}] {times(group.times)}"
        case IntoOne() as into:
            return f"({said_list(into.parts, speech, star)}) {speech.spelling.into[into.loops]}"
        case OpenRepeat() as repeat:
            return _repeat(_printed_stop(repeat, parts[index + 1 : index + 2], speech), speech, star, beside)
        case node:
            return _small(node, speech)


def _printed_stop(repeat: OpenRepeat, behind: tuple[Node, ...], speech: Speech) -> OpenRepeat:
    """Return a repeat that stops where it is printed to stop: decreases spread over it are worked within it."""
    change = behind[0] if behind else None
    if not (isinstance(change, Work) and change.evenly and repeat.stop):
        return repeat
    return replace(repeat, stop=repeat.stop - speech.vocabulary[change.stitch].uses * change.times)


def _goes_back(parts: tuple[Node, ...], index: int) -> bool:
    """Tell whether a slipped stitch follows and the yarn goes back behind it."""
    following = [node.stitch for node in parts[index + 1 : index + 3] if isinstance(node, Work)]
    return following == ["sl", "wyib"]


def _small(node: BindOff | CastOn | Hold | Marker | Turn, speech: Speech) -> str:
    """Write the nodes that hold no others."""
    spelling = speech.spelling
    match node:
        case BindOff():
            number = f"all {spelling.stitches}" if node.times is None else spelling.counted(node.times)
            return " ".join(filter(None, (_BIND_OFF[speech.terms], number, _manner(node, speech))))
        case CastOn():
            return f"cast on {spelling.counted(node.times)}"
        case Hold():
            return spelling.hold.format(spelling.next(node.times), spelling.where[node.where])
        case Marker():
            return spelling.markers[node.act]
    return spelling.wrap_and_turn if node.wrapped else "turn"


def _manner(node: BindOff, speech: Speech) -> str:
    """Write how stitches are bound off, in a pattern by its name as printed."""
    fabric = speech.printed.fabrics.get(node.place)
    named = f"in {fabric.words}" if fabric and node.manner == "in pattern" else ""
    return named or (speech.spelling.manners[node.manner] if node.manner else "")


def _repeat(node: OpenRepeat, speech: Speech, star: str, beside: Beside) -> str:
    """Write an open repeat, plain or with a star, with its stop."""
    if node.plain and isinstance(node.parts[0], BindOff):
        return _all_but(node.parts[0], node.stop or 0, speech)
    if node.plain and isinstance(node.parts[0], Work):
        return f"{said_work(node.parts[0], speech, beside, bare=True)} {_stop(node, speech)}"
    inner = said_list(node.parts, speech, star + STAR, beside, again=True)
    stop = f" {_stop(node, speech)}" if node.stop is not None or node.marker else ""
    last = said_list(node.last, speech, star + STAR, beside) if node.last else ""
    altered = f", {speech.spelling.last_repeat.format(last)}" if last else ""
    return f"{star}{inner}; {speech.spelling.repeat} from {star}{stop}{altered}"


def _all_but(one: BindOff, left: int, speech: Speech) -> str:
    """Write a bind-off that leaves so many stitches, the one on the right needle among them."""
    manner = f"{speech.spelling.manners[one.manner]} " if one.manner else ""
    return f"{_BIND_OFF[speech.terms]} {manner}all but {speech.spelling.counted(left)}"


def _stop(node: OpenRepeat, speech: Speech) -> str:
    spelling = speech.spelling
    if node.marker:
        return spelling.before_marker.format(spelling.counted(node.stop)) if node.stop else spelling.to_marker
    return spelling.to_last.format(spelling.next(node.stop)) if node.stop else spelling.to_end
