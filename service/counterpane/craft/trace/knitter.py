"""The knitter: works the nodes of one row on the needles, one stitch after the other."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from counterpane.craft.rows.tree import (
    NOWHERE,
    BindOff,
    CastOn,
    Group,
    Hold,
    IntoOne,
    Marker,
    Node,
    OpenRepeat,
    Place,
    Turn,
    Work,
)
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.trace.halts import Halted
from counterpane.craft.trace.loops import CAST_ON, Loop, Needles, Side, Worked
from counterpane.craft.trace.meaning import (
    consider,
    everything,
    rest_after,
    speaks_of_markers,
    stitch_for_stitch,
    until_break,
    written_out,
)

SLIP = "sl"
BIND_OFF = "bind off"
MOST_MARKERS = 1_000  # House.


@dataclass(slots=True)
class Knitter:
    """Somebody at work: needles, the row in hand and its side, and all that was worked in it.

    `sees_markers` is False once nobody knows where the markers hung; `over_markers` while they are slipped unasked.
    """

    vocabulary: Vocabulary
    needles: Needles
    row: int = 0
    side: Side = "RS"
    worked: list[Worked] = field(default_factory=list)
    sees_markers: bool = True
    over_markers: bool = False

    def work_row(self, parts: Sequence[Node]) -> None:
        """Work one whole row and turn, or go on in the round; raise Halted where that cannot be done."""
        list(everything(parts))
        nodes = written_out(parts)
        consider(nodes, self.vocabulary, self._trial)
        self.over_markers = not speaks_of_markers(nodes)
        if self.over_markers and self.needles.has_markers() and not stitch_for_stitch(nodes, self.vocabulary):
            self._lose_markers()
        for index, node in enumerate(nodes):
            self._work(node, rest_after(nodes, index))
        if not (nodes and isinstance(nodes[-1], Turn)):
            self._end(nodes)

    def _end(self, nodes: Sequence[Node]) -> None:
        needles = self.needles
        if needles.cable or needles.ahead(to_marker=False):
            raise Halted("row-leaves-stitches", nodes[-1].place if nodes else NOWHERE)
        needles.right += needles.left
        needles.left, needles.right = needles.right, []
        if self.side == "round":
            needles.left.reverse()
        self._turn_side()

    def _turn_side(self) -> None:
        turned: dict[Side, Side] = {"RS": "WS", "WS": "RS", "round": "round"}
        self.side = turned[self.side]

    def _trial(self, nodes: Sequence[Node]) -> Needles:
        """Work the nodes from an endless needle and return the needles."""
        needles = Needles(endless=True, budget=self.needles.budget)
        trier = Knitter(self.vocabulary, needles)
        for node in nodes:
            trier._work(node, ())
        return needles

    def _work(self, node: Node, rest: Sequence[Node]) -> None:
        match node:
            case Work():
                for _ in range(node.times):
                    self._stitch(node)
            case Group():
                for _ in range(node.times):
                    self.needles.spend(node.place)
                    for part in node.parts:
                        self._work(part, ())
            case OpenRepeat():
                self._repeat(node, rest)
            case Marker():
                self._marker(node)
            case Turn():
                self._turn(node)
            case _:
                self._work_several(node)

    def _work_several(self, node: IntoOne | BindOff | CastOn | Hold) -> None:
        match node:
            case IntoOne():
                self._into_one(node)
            case BindOff():
                self._bind_off(node)
            case CastOn():
                self._record(node.place, CAST_ON, (), node.times)
            case _:
                for _ in range(node.times):
                    loop = self.needles.take(node.place, self.over_markers)
                    self.needles.cable.append(loop)
                    if node.where == "front":
                        self.needles.in_front.add(loop.number)

    def _stitch(self, node: Work, into: tuple[Loop, ...] | None = None) -> None:
        """Work one stitch, or one more into loops that were taken already."""
        self.needles.spend(node.place)
        stitch = self.vocabulary[node.stitch]
        if into is None:
            into = tuple(self._draw(node) for _ in range(stitch.uses))
        if not self.needles.holds_behind(max(stitch.needs, 1 - stitch.makes if stitch.makes < 0 else 0)):
            raise Halted("row-runs-short", node.place)
        if node.stitch == SLIP and len(into) == 1:
            self.needles.right.append(into[0])
            self._note(node, into, into)
        elif stitch.makes < 0:
            passed = (self.needles.pass_over(self.row, node.stitch, node.place) for _ in range(-stitch.makes))
            self._note(node, tuple(passed), ())
        else:
            self._record(node.place, node.stitch, into, stitch.makes, node)

    def _draw(self, node: Work) -> Loop:
        if node.held:
            return self.needles.take_held(node.place)
        return self.needles.take(node.place, self.over_markers)

    def _record(self, place: Place, stitch: str, takes: tuple[Loop, ...], makes: int, node: Work | None = None) -> None:
        """Lay so many loops on the right needle and note what was worked."""
        made = tuple(self.needles.new(self.row, stitch, takes, place) for _ in range(makes))
        self.needles.right += made
        self._note(node or Work(stitch, place=place), takes, made)

    def _note(self, node: Work, takes: tuple[Loop, ...], leaves: tuple[Loop, ...]) -> None:
        front = node.held and any(loop.number in self.needles.in_front for loop in takes)
        worked = Worked(node.stitch, self.row, self.side, takes, leaves, node.manner, node.held, node.place)
        self.worked.append(replace(worked, in_front=True) if front else worked)

    def _into_one(self, node: IntoOne) -> None:
        loops = tuple(self.needles.take(node.place, self.over_markers) for _ in range(node.loops))
        first = len(self.worked)
        self._parts_into(node.parts, loops)
        for index in range(first, len(self.worked)):
            worked = self.worked[index]
            takes = worked.takes if index == first or not worked.leaves else ()
            self.worked[index] = replace(worked, takes=takes, into=node.loops)

    def _parts_into(self, parts: Sequence[Node], loops: tuple[Loop, ...]) -> None:
        for part in parts:
            if isinstance(part, Work):
                for _ in range(part.times):
                    self._stitch(part, loops if self.vocabulary[part.stitch].uses else ())
            elif isinstance(part, Group):
                for _ in range(part.times):
                    self.needles.spend(part.place)
                    self._parts_into(part.parts, loops)
            elif isinstance(part, IntoOne):
                self._parts_into(part.parts, loops)
            else:
                self._work(part, ())

    def _repeat(self, node: OpenRepeat, rest: Sequence[Node]) -> None:
        across = self._repeats_across(node)
        keep = self._trial(until_break(rest, node.marker)).drawn if node.stop is None else node.stop
        ending = self._trial(node.last or ()).drawn
        times = self._lay_off(node, self.needles.ahead(node.marker) - keep - ending)
        before, self.over_markers = self.over_markers, self.over_markers or across
        for _ in range(times):
            for part in node.parts:
                self._work(part, ())
        self.over_markers = before
        if across and not (rest and isinstance(rest[0], Marker)):
            self.needles.slip_markers()
        for part in node.last or ():
            self._work(part, ())

    def _repeats_across(self, node: OpenRepeat) -> bool:
        """Say whether the repeat slips markers on its way; raise Halted where it is not known what happens to them."""
        if node.marker:
            if not (self.sees_markers and self.needles.has_markers()):
                raise Halted("unproved", node.place)
            return False
        if None not in self.needles.left:
            return False
        if any(isinstance(part, Marker) for part in everything(node.parts)):
            self._lose_markers()
            return False
        if not stitch_for_stitch((node,), self.vocabulary):
            raise Halted("unproved", node.place)
        return True

    def _lay_off(self, node: OpenRepeat, room: int) -> int:
        """Lay off the repeat on the stitches there are and return how often it goes."""
        width = self._trial(node.parts).drawn
        least = 0 if node.plain or node.last is not None else width
        if room < least:
            raise Halted("row-runs-short", node.place)
        times = 0
        while room >= width:
            room -= width
            times += 1
        if room:
            raise Halted("repeat-does-not-fit", node.place)
        return times

    def _bind_off(self, node: BindOff) -> None:
        if node.times is None:
            return self._bind_off_all(node)
        takes = node.times if node.joined else node.times + 1
        loops = tuple(self.needles.take(node.place, self.over_markers) for _ in range(takes))
        return self._record(node.place, BIND_OFF, loops, 0 if node.joined else 1)

    def _bind_off_all(self, node: BindOff) -> None:
        if None in self.needles.left:
            raise Halted("unproved", node.place)
        if not self.needles.ahead(to_marker=False):
            raise Halted("row-runs-short", node.place)
        while self.needles.left:
            self._record(node.place, BIND_OFF, (self.needles.take(node.place, self.over_markers),), 0)

    def _marker(self, node: Marker) -> None:
        needles = self.needles
        if node.act == "place":
            return self._hang_marker(node.place)
        if not self.sees_markers or (needles.left and None not in needles.left):
            raise Halted("unproved", node.place)
        if needles.left and needles.left[-1] is not None:
            raise Halted("row-leaves-stitches", node.place)
        return self._pass_marker(node)

    def _pass_marker(self, node: Marker) -> None:
        """Slip or remove the marker at the tip; at the end of a round there need be none."""
        hung = bool(self.needles.left)
        self.needles.left[-1:] = []
        if hung and node.act == "slip":
            self._hang_marker(node.place)

    def _hang_marker(self, place: Place) -> None:
        needles = self.needles
        if needles.endless or not self.sees_markers:
            return
        needles.right.append(None)
        if needles.left.count(None) + needles.right.count(None) > MOST_MARKERS:
            raise Halted("unproved", place)

    def _lose_markers(self) -> None:
        self.sees_markers = False
        self.needles.drop_markers()

    def _turn(self, node: Turn) -> None:
        needles = self.needles
        if needles.cable:
            raise Halted("row-leaves-stitches", node.place)
        needles.left, needles.right = needles.right, needles.left
        self._turn_side()
