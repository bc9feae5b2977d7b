"""Markers between the stitches: placed, passed, counted to, carried along, or lost from view."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from counterpane.craft.counts.needle import NONE, Needle, total
from counterpane.craft.counts.stuck import Stuck
from counterpane.craft.counts.values import UNPROVED
from counterpane.craft.rows.tree import Group, Marker, Node, OpenRepeat, Place, Turn, Work
from counterpane.craft.stitches import Vocabulary

# A needle with more markers than this is not followed; house bound.
MOST_MARKERS = 1_000


def meet(needle: Needle, node: Marker) -> Needle:
    """Place, slip or remove the marker at the tips of the needles; raise Stuck where none hangs there.

    A marker that is slipped after the last stitch need not have been placed: it marks the beginning of the round.
    """
    if node.act == "place":
        return _placed(needle, node.place) if needle.marked else needle
    if len(needle.left) == 1 and needle.marked and needle.known(needle.left[0]) == 0:
        return needle
    if len(needle.left) == 1 or not needle.marked:
        raise Stuck(UNPROVED, node.place)
    reached = needle.exactly(needle.left[0], 0)
    if reached is None:
        raise Stuck("row-leaves-stitches", node.place, left=needle.left[0].at(needle.low))
    right = (NONE, *reached.right) if node.act == "slip" else reached.right
    return replace(reached, left=reached.left[1:], right=right)


def _placed(needle: Needle, place: Place) -> Needle:
    if len(needle.left) + len(needle.right) - 1 > MOST_MARKERS:
        raise Stuck(UNPROVED, place)
    return needle.laid(needle.left, (NONE, *needle.right), needle.cable)


def check_reach(needle: Needle, node: OpenRepeat) -> None:
    """Raise Stuck for a repeat that counts to a marker of which nobody knows where it hangs."""
    if node.marker and not (needle.marked and needle.has_markers):
        raise Stuck(UNPROVED, node.place)


def stitch_for_stitch(nodes: Sequence[Node], vocabulary: Vocabulary) -> bool:
    """Say whether every stitch of the row becomes one stitch, so that the markers stay where they are."""
    return all(_one_to_one(node, vocabulary) for node in nodes)


def _one_to_one(node: Node, vocabulary: Vocabulary) -> bool:
    match node:
        case Work():
            stitch = vocabulary[node.stitch]
            return not node.held and stitch.uses == stitch.makes == 1 and stitch.needs == 0
        case Group():
            return stitch_for_stitch(node.parts, vocabulary)
        case OpenRepeat():
            return node.last is None and stitch_for_stitch(node.parts, vocabulary)
    return isinstance(node, Turn)


def carry(needle: Needle, stitches: int, place: Place) -> Needle | None:
    """Work so many stitches one for one, slipping the markers met on the way; None where there are too few."""
    while len(needle.left) > 1:
        known = needle.known(needle.left[0])
        if needle.least(needle.left[0]) >= stitches:
            break
        if known is None:
            raise Stuck(UNPROVED, place)
        stitches -= known
        needle = _first_passed(needle)
    enough = needle.at_least(needle.left[0], stitches)
    if enough is None:
        return None
    left, right = enough.left, enough.right
    return replace(enough, left=(left[0].plus(-stitches), *left[1:]), right=(right[0].plus(stitches), *right[1:]))


def carry_repeat(needle: Needle, node: OpenRepeat, keep: int, vocabulary: Vocabulary, before_marker: bool) -> Needle:
    """Work a repeat over the markers it meets; raise Stuck where it is not known what happens to them."""
    if not stitch_for_stitch((node,), vocabulary):
        raise Stuck(UNPROVED, node.place)
    return carry_to(needle, keep, node.place, before_marker)


def carry_to(needle: Needle, keep: int, place: Place, before_marker: bool) -> Needle:
    """Work stitch for stitch until `keep` are left, slipping the markers met on the way.

    A marker right at the stop is slipped too, unless the row goes on to say what happens to it (`before_marker`).
    """
    last = len(needle.left) - 1
    while last and not _holds_more(needle, last, keep + before_marker, place):
        keep, last = keep - needle.left[last].base, last - 1
    for _ in range(last):
        needle = _first_passed(needle)
    left, right = needle.left, needle.right
    worked = right[0] + left[0].plus(-keep)
    return replace(needle, left=(NONE.plus(keep), *left[1:]), right=(worked, *right[1:]))


def _holds_more(needle: Needle, segment: int, wanted: int, place: Place) -> bool:
    """Say whether a segment has at least so many stitches; raise Stuck where that depends on the count."""
    if needle.least(needle.left[segment]) >= wanted:
        return True
    if needle.known(needle.left[segment]) is None:
        raise Stuck(UNPROVED, place)
    return False


def _first_passed(needle: Needle) -> Needle:
    """Work all stitches up to the first marker one for one, and slip it."""
    first, *others = needle.left
    return replace(needle, left=tuple(others), right=(NONE, needle.right[0] + first, *needle.right[1:]))


def forget(needle: Needle) -> Needle:
    """Keep the stitches and lose sight of the markers: the count is exact, the places are not known."""
    return replace(needle, left=(total(needle.left),), right=(total(needle.right),), marked=False)
