"""Walk a row over a needle of amounts: each node narrows the counts down or stops the row where it fails."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from counterpane.craft.counts import markers
from counterpane.craft.counts.effects import Effect, Shortage, Stock, effect, shortage, total
from counterpane.craft.counts.needle import NONE, Amount, Needle
from counterpane.craft.counts.needle import total as sum_of
from counterpane.craft.counts.stuck import Stuck
from counterpane.craft.counts.values import UNPROVED
from counterpane.craft.counts.wellformed import MOST_UNROLLED, is_open, upcoming, well_formed, within
from counterpane.craft.rows.tree import NOWHERE, BindOff, Group, Marker, Node, OpenRepeat, Place, Turn
from counterpane.craft.stitches import Vocabulary

# Where sums outgrow this, the walk stops: decimal text of longer numbers helps nobody; house bound.
LONGEST_SUM = 10**30


@dataclass(frozen=True, slots=True)
class Spot:
    """A place in a row: its nodes, the index of one of them, and how often the repeats before it were worked."""

    nodes: Sequence[Node]
    index: int
    worked: list[Amount]

    def upcoming(self, marker: bool) -> Sequence[Node]:
        """Return the nodes after it up to the next turn, or up to the next marker too."""
        return upcoming(self.nodes, self.index, marker)

    @property
    def before_marker(self) -> bool:
        """Say whether the next node is about a marker."""
        return self.index + 1 < len(self.nodes) and isinstance(self.nodes[self.index + 1], Marker)


def walk_row(
    needle: Needle,
    parts: Sequence[Node],
    vocabulary: Vocabulary,
    in_round: bool = False,
    worked: list[Amount] | None = None,
) -> Needle:
    """Return the needle after the row, ready for the next; raise Stuck where the row fails at every count left.

    How often each open repeat is worked is added to `worked`, in the order in which they are met.
    """
    noted = [] if worked is None else worked
    form = well_formed(parts, vocabulary)
    nodes, whole = form.nodes, not form.names_markers
    needle = replace(needle, slope=None) if needle.slope else needle
    if whole and needle.has_markers and not markers.stitch_for_stitch(nodes, vocabulary):
        needle = markers.forget(needle)
    for begin, stretch in _stretches(nodes):
        if _is_turning_point(stretch[0]):
            needle = _walk_open(needle, Spot(nodes, begin, noted), vocabulary)
        else:
            needle = _walk_closed(needle, stretch, vocabulary, whole)
    needle = _finished(needle, nodes, in_round)
    if needle.all.at(needle.low) > LONGEST_SUM:
        raise Stuck(UNPROVED, _last_place(nodes))
    return needle


def _is_turning_point(node: Node) -> bool:
    """Say whether the node is more than a fixed number of stitches."""
    return is_open(node) or isinstance(node, Marker | Turn)


def _stretches(nodes: Sequence[Node]) -> Iterator[tuple[int, Sequence[Node]]]:
    """Yield each stretch of fixed stitches, and every other node by itself, with the index at which it begins."""
    begin = 0
    for index, node in enumerate(nodes):
        if _is_turning_point(node):
            if begin < index:
                yield begin, nodes[begin:index]
            yield index, (node,)
            begin = index + 1
    if begin < len(nodes):
        yield begin, nodes[begin:]


def _walk_open(needle: Needle, spot: Spot, vocabulary: Vocabulary) -> Needle:
    """Work an open repeat, or do what a marker or turn says."""
    node = spot.nodes[spot.index]
    if isinstance(node, Marker):
        return markers.meet(needle, node)
    if isinstance(node, OpenRepeat):
        return _walk_repeat(needle, node, spot, vocabulary)
    if isinstance(node, BindOff):
        return _walk_repeat(needle, _all_bound_off(node), spot, vocabulary)
    return _turned(needle, node.place)


def _walk_closed(needle: Needle, nodes: Sequence[Node], vocabulary: Vocabulary, whole: bool) -> Needle:
    """Work a stretch of fixed stitches at once, or one by one where markers are carried along."""
    if not (whole and len(needle.left) > 1):
        return _worked(needle, nodes, total(nodes, vocabulary), vocabulary)
    for node in nodes:
        carried = markers.carry(needle, effect(node, vocabulary).uses, node.place)
        if carried is None:
            raise _short(markers.forget(needle), (node,), vocabulary)
        needle = carried
    return needle


def _finished(needle: Needle, nodes: Sequence[Node], in_round: bool) -> Needle:
    """Return the needle with the work turned for the next row, all stitches worked unless the row ended by a turn."""
    if not (nodes and isinstance(nodes[-1], Turn)):
        needle = _emptied(needle, nodes)
        worked = (NONE,) * (len(needle.left) - 1) + needle.right
        needle = needle.laid(tuple(reversed(worked)) if in_round else worked, (NONE,))
    return needle.pinned() if needle.low == needle.high and needle.start.per else needle


def _emptied(needle: Needle, nodes: Sequence[Node]) -> Needle:
    """Keep the counts at which no stitch waits to be worked."""
    if needle.cable:
        raise Stuck("row-leaves-stitches", _last_place(nodes), left=needle.cable)
    for index in range(len(needle.left)):
        rest = needle.exactly(needle.left[index], 0)
        if rest is None:
            left = sum_of(needle.left).at(needle.low)
            raise Stuck("row-leaves-stitches", _last_place(nodes), left=left)
        needle = rest
    return needle


def _turned(needle: Needle, place: Place) -> Needle:
    if needle.cable:
        raise Stuck("row-leaves-stitches", place, left=needle.cable)
    return needle.laid(needle.right, needle.left)


def _last_place(nodes: Sequence[Node]) -> Place:
    return nodes[-1].place if nodes else NOWHERE


def _worked(needle: Needle, nodes: Sequence[Node], one: Effect, vocabulary: Vocabulary) -> Needle:
    """Work closed nodes with this effect in all at the tips of the needles."""
    enough = needle.at_least(needle.left[0], one.uses)
    enough = enough and enough.at_least(enough.right[0], one.needs)
    if enough is None or enough.cable < one.draws:
        raise _short(needle, nodes, vocabulary)
    return enough.worked(one)


def _short(needle: Needle, nodes: Sequence[Node], vocabulary: Vocabulary) -> Stuck:
    # What is short at every count is short at the least, which is the one that is told.
    stock = Stock(needle.left[0].at(needle.low), needle.right[0].at(needle.low), needle.cable)
    return _short_at(shortage(nodes, stock, vocabulary))


def _short_at(found: Shortage) -> Stuck:
    return Stuck("row-runs-short", found.place, found.asked, found.left)


def _walk_repeat(needle: Needle, node: OpenRepeat, spot: Spot, vocabulary: Vocabulary) -> Needle:
    body, last = total(node.parts, vocabulary), total(node.last or (), vocabulary)
    keep = node.stop if node.stop is not None else total(spot.upcoming(node.marker), vocabulary).uses
    markers.check_reach(needle, node)
    placing = any(isinstance(part, Marker) for part in within(node.parts))
    if placing and len(needle.left) > 1:
        needle = markers.forget(needle)
    across = not node.marker and len(needle.left) > 1
    span = sum_of(needle.left) if across else needle.left[0]
    needle, times = _fitted(needle, node, span, keep + last.uses, body)
    spot.worked.append(times)
    if placing and _is_followed(node, times):
        return _placed(needle, node.parts * times.base, vocabulary)
    if placing:
        needle = markers.forget(needle)
    if across:
        return markers.carry_repeat(needle, node, keep, vocabulary, spot.before_marker).noted(times)
    needle = _enough_behind(needle, node, times, body, vocabulary).repeated(times, body)
    return _worked(needle, node.last, last, vocabulary) if node.last else needle


def _is_followed(node: OpenRepeat, times: Amount) -> bool:
    """Say whether the markers that a repeat places are followed: those of a known, small number of plain workings."""
    grouped = any(isinstance(part, Group) for part in node.parts)
    return not (times.per or grouped or node.last) and times.base * len(node.parts) <= MOST_UNROLLED


def _placed(needle: Needle, nodes: Sequence[Node], vocabulary: Vocabulary) -> Needle:
    """Work stitches and place markers between them."""
    for _, stretch in _stretches(nodes):
        if isinstance(stretch[0], Marker):
            needle = markers.meet(needle, stretch[0])
        else:
            needle = _worked(needle, stretch, total(stretch, vocabulary), vocabulary)
    return needle


def _all_bound_off(node: BindOff) -> OpenRepeat:
    return OpenRepeat((BindOff(1, joined=True),), place=node.place)


def _fitted(needle: Needle, node: OpenRepeat, span: Amount, keep: int, body: Effect) -> tuple[Needle, Amount]:
    """Return the needle at which the repeat comes out on the span, less what is kept, and how often it is worked."""
    room = span.plus(-keep)
    least = 0 if _may_be_none(node) else body.uses
    enough = needle.at_least(room, least)
    if enough is None:
        raise Stuck("row-runs-short", node.place, keep + least, span.at(needle.low))
    fitted = enough.divided(room, body.uses)
    if fitted is None:
        raise Stuck("repeat-does-not-fit", node.place, body.uses, room.at(needle.low))
    return fitted


def _may_be_none(node: OpenRepeat) -> bool:
    return node.plain or node.last is not None


def _enough_behind(needle: Needle, node: OpenRepeat, times: Amount, body: Effect, vocabulary: Vocabulary) -> Needle:
    """Keep the counts at which each pass-over of the repeat finds its stitches on the right needle."""
    right = needle.right[0]
    if body.needs == 0 or times == NONE:
        return needle
    if _may_be_none(node) and needle.least(times) == 0 and times.per:
        raise Stuck(UNPROVED, node.place)
    scarcest = right + times.plus(-1).times(min(body.makes, 0))
    enough = needle.at_least(scarcest, body.needs)
    if enough is not None:
        return enough
    stock = Stock(body.uses * times.at(needle.low), right.at(needle.low))
    done = stock.whole_workings(body, times.at(needle.low))
    raise _short_at(shortage(node.parts, stock.after(body.times(done)), vocabulary))
