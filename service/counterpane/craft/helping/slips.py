"""What may go wrong in a row so that it leaves another count."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from counterpane.craft.helping import Kind, Slip
from counterpane.craft.rows.tree import Group, IntoOne, Node, Work
from counterpane.craft.stitches import Vocabulary

ANYWHERE: tuple[Slip, ...] = (
    Slip("stitch-dropped", -1, 3),
    Slip("two-together", -1, 3),
    Slip("loop-made", 1, 3),
    Slip("edge-stitch-doubled", 1, 2),
    Slip("stitch-split", 1, 3),
)
"""Slips that may happen to any stitch, with how often one looks for them; common practice, no source; house."""


def slips_of(parts: Sequence[Node], vocabulary: Vocabulary) -> tuple[Slip, ...]:
    """Return the slips that the stitches of a fixed row invite: each increase, decrease and pass-over left undone."""
    found: list[Slip] = []
    for key, times in sorted(_tally(parts, 1).items()):
        stitch = vocabulary[key]
        change = stitch.makes - stitch.uses
        if change:
            found.append(Slip(_kind(stitch.uses, stitch.makes), -change, times, key))
    return tuple(found)


def _kind(uses: int, makes: int) -> Kind:
    if makes < 0:
        return "pass-over-missed"
    if makes < uses:
        return "decrease-missed"
    return "increase-worked-plain" if uses else "left-out"


def _tally(parts: Sequence[Node], times: int) -> Counter[str]:
    """Count the stitches that are worked, those of several in one as that stitch's own affair left aside."""
    found: Counter[str] = Counter()
    for node in parts:
        match node:
            case Work():
                found[node.stitch] += node.times * times
            case Group():
                found += _tally(node.parts, node.times * times)
            case IntoOne() | _:
                pass
    return found
