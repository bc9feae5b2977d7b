"""The symbols of a chart: what each working looks like in its cell, told apart by shape alone.

The upright stroke for knit, the level one for purl and the ring for a yarn-over are those of JIS L 0201:1995 (needle
class; their drawing from memory). A decrease is one long stroke in the direction in which its top stitch leans, with a
foot for each stitch under it, as the names of that standard have it ("left stitch laid over right", numbers 1040 to
1080). All others are drawn here. Purl-faced workings stand on a bar. Workings that would look alike get a number.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from counterpane.craft.drawing.chart import Nodes
from counterpane.craft.drawing.crossings import Crossing, crossing_of
from counterpane.craft.fabric.faces import SLIP
from counterpane.craft.rows.effects import total
from counterpane.craft.rows.tree import BindOff, CastOn, Hold, IntoOne, Node, Work
from counterpane.craft.stitches import Stitch, Vocabulary

SIDE = 20
"""Units of a side of a cell."""
_BAR = f"M4 {SIDE - 2}H16"
_RING = "M10 5a5 5 0 1 0 .01 0z"
_TWIST = "M6 16C16 9 14 4 10 4S4 9 14 16"


@dataclass(frozen=True, slots=True)
class Symbol:
    """Strokes, and strands that lie in front of them, as the path data of SVG; `known` False for a blank cell."""

    strokes: tuple[str, ...] = ()
    front: str = ""
    known: bool = True


def symbol_of(nodes: Nodes, wide: int, vocabulary: Vocabulary) -> Symbol:
    """Return the symbol of a working; an empty one for what has no drawing of its own."""
    crossing = _crossing(nodes, vocabulary)
    if crossing is not None:
        return _crossed(crossing)
    node = next((node for node in nodes if not _moves_yarn(node, vocabulary)), nodes[0])
    if isinstance(node, IntoOne):
        return Symbol(tuple(_fan(total((node,), vocabulary).makes, wide)))
    if isinstance(node, BindOff):
        return Symbol(("M5 12a5 5 0 0 1 10 0z", "M4 15H16"))
    if isinstance(node, CastOn):
        return Symbol(("M4 16C4 4 16 4 16 12C16 16 10 16 10 12",))
    if not isinstance(node, Work) or len(nodes) > 1 + sum(_moves_yarn(each, vocabulary) for each in nodes):
        return Symbol(known=False)
    return _worked(node, vocabulary[node.stitch], wide)


def _moves_yarn(node: Node, vocabulary: Vocabulary) -> bool:
    taken = total((node,), vocabulary)
    return isinstance(node, Work) and taken.uses == taken.makes == 0


def _worked(work: Work, stitch: Stitch, wide: int) -> Symbol:
    bar = (_BAR,) if stitch.face == "purl" else ()
    if stitch.key == SLIP:
        return Symbol(tuple(_slipped(work)))
    if stitch.opens:
        return Symbol((_RING,))
    if stitch.key in ("k", "p"):
        return Symbol(("M10 4V16",) if stitch.key == "k" else ("M4 10H16",))
    if stitch.key in ("k tbl", "p tbl"):
        return Symbol((_TWIST, *bar))
    if stitch.uses > stitch.makes == 1:
        return Symbol((*_decrease(stitch), *bar))
    if (stitch.uses, stitch.makes) == (0, 1):
        return Symbol((*_lifted(stitch.lean), *bar))
    if stitch.makes > stitch.uses == 1:
        return Symbol((*_fan(stitch.makes, wide), *bar))
    return Symbol(known=False)


def _slipped(work: Work) -> Iterator[str]:
    """Give two strokes that meet at the foot; a bar across for yarn in front, one below for knitwise."""
    yield "M4 4L10 14L16 4"
    if "wyif" in work.manner:
        yield "M4 9H16"
    if "kwise" in work.manner:
        yield "M10 14V18"


def _decrease(stitch: Stitch) -> Iterator[str]:
    """Give the stroke of the top stitch and a foot for each stitch under it."""
    under = stitch.uses - 1
    if stitch.lean not in ("left", "right"):
        yield "M10 3V16"
        yield "M4 16L10 8L16 16"
        return
    foot, top = (4, 16) if stitch.lean == "right" else (16, 4)
    yield f"M{foot} 16L{top} 3"
    ends = (10,) if under > 1 else ()
    for end in (*ends, top):
        yield f"M10 9.5L{end} 16"


def _lifted(lean: str | None) -> Iterator[str]:
    """Give a stitch that begins here: a stem with an arm to the side to which it leans, or with two."""
    yield "M10 16V8"
    if lean != "right":
        yield "M10 8C10 5 8 4 5 4"
    if lean != "left":
        yield "M10 8C10 5 12 4 15 4"


def _fan(makes: int, wide: int) -> Iterator[str]:
    """Give a stem that opens into as many strokes as it leaves stitches."""
    middle = SIDE * wide / 2
    for number in range(makes):
        end = SIDE * wide * (2 * number + 1) / (2 * makes)
        yield f"M{middle:g} 16L{end:g} 4"


def _crossing(nodes: Nodes, vocabulary: Vocabulary) -> Crossing | None:
    """Return what crosses what: by a stitch of the vocabulary, or spelt out with a cable needle."""
    hold = nodes[0]
    if isinstance(hold, Hold):
        taken = total(nodes, vocabulary)
        other = taken.makes - hold.times
        in_front = hold.where == "front"
        purled = any(isinstance(node, Work) and vocabulary[node.stitch].face == "purl" for node in nodes[1:])
        front, behind = (hold.times, other) if in_front else (other, hold.times)
        return Crossing(front, behind, in_front, purled)
    return crossing_of(vocabulary[hold.stitch]) if isinstance(hold, Work) else None


def _crossed(crossing: Crossing) -> Symbol:
    """Return the strand in front as a band, the one behind as two lines that pass under it."""
    whole = SIDE * (crossing.front + crossing.behind)
    front, behind = SIDE * crossing.front, SIDE * crossing.behind
    # The front strand begins on one side at the foot and ends on the other at the top.
    foot, top = (whole - front, 0) if crossing.leans_left else (0, whole - front)
    back_foot, back_top = (0, whole - behind) if crossing.leans_left else (whole - behind, 0)
    band = f"M{foot + 2} 18L{top + 2} 2H{top + front - 2}L{foot + front - 2} 18z"
    under = [f"M{back_foot + 2} 18L{back_top + 2} 2", f"M{back_foot + behind - 2} 18L{back_top + behind - 2} 2"]
    marks = [f"M{back_foot + behind / 2 - 4:g} 15.5h8"] if crossing.purled else []
    return Symbol((*under, *marks), band)
