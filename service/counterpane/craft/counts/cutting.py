"""Where a repeat may stop inside itself: "work in pattern across", "end last repeat after …"."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from counterpane.craft.counts.effects import effect, stitch_effect, total
from counterpane.craft.rows.tree import Group, Node, Work
from counterpane.craft.stitches import Vocabulary

# A repeat wider than a needle is not cut up; house bound.
WIDEST_REPEAT = 10_000


def cuts(parts: Sequence[Node], vocabulary: Vocabulary) -> tuple[int, ...]:
    """Return the stitches, modulo the repeat, after which the closed parts may stop without splitting a stitch.

    ValueError for a repeat that uses no stitch or more than `WIDEST_REPEAT`.
    """
    width = total(parts, vocabulary).uses
    if not 0 < width <= WIDEST_REPEAT:
        raise ValueError(f"a repeat of {width} stitches is not cut")
    done, found = 0, {0}
    for uses in _uses(parts, vocabulary):
        done += uses
        found.add(done % width)
    return tuple(sorted(found))


def _uses(parts: Sequence[Node], vocabulary: Vocabulary) -> Iterator[int]:
    """Yield what each stitch uses, those that use none left out."""
    for node in parts:
        if effect(node, vocabulary).uses == 0:
            continue
        match node:
            case Group():
                for _ in range(node.times):
                    yield from _uses(node.parts, vocabulary)
            case Work():
                yield from [stitch_effect(vocabulary[node.stitch], node.held).uses] * node.times
            case _:
                yield effect(node, vocabulary).uses
