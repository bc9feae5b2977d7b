"""Check the rows at one count, in closed form: the same walk with a known count."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from counterpane.craft.counts.chain import count, goes_round
from counterpane.craft.counts.maps import Maps
from counterpane.craft.counts.needle import NONE, Needle
from counterpane.craft.counts.stuck import Stuck
from counterpane.craft.counts.values import Misfit, Step, nearest
from counterpane.craft.counts.walking import walk_row
from counterpane.craft.rows.tree import Node, Side
from counterpane.craft.stitches import Vocabulary


def work(
    rows: Sequence[Sequence[Node]],
    before: int,
    vocabulary: Vocabulary,
    sides: Sequence[Side | None] | None = None,
    maps: Maps | None = None,
    *,
    told: bool = True,
) -> tuple[Step, ...]:
    """Return the stitches before and after each row, from `before` stitches on the needle.

    The row where the knitter is stuck has its misfit and no count after; the rows after it have none at all.
    The slug "unproved" says that arithmetic cannot follow the row; it is no fault of the row. `maps` are those of rows
    that are counted again. A misfit tells what counts the row would take, unless it need not be `told`.
    """
    return tuple(_steps(rows, before, sides, maps or Maps(vocabulary), told))


def _steps(
    rows: Sequence[Sequence[Node]], before: int, sides: Sequence[Side | None] | None, maps: Maps, told: bool
) -> Iterator[Step]:
    needle: Needle | None = Needle.holding(before)
    for index, parts in enumerate(rows):
        if needle is None:
            yield Step(None, None)
            continue
        has = needle.all.base
        after = maps.count_after(needle, parts)
        if after is not None:
            needle = Needle.holding(after)
            yield Step(has, after)
            continue
        try:
            needle = walk_row(needle, parts, maps.vocabulary, goes_round(sides, index))
        except Stuck as stuck:
            bare = Misfit(stuck.slug, index, stuck.place, stuck.asked, stuck.left)
            yield Step(has, None, _misfit(needle, bare, parts, maps.vocabulary) if told else bare)
            needle = None
        else:
            yield Step(has, needle.all.base, segments=_segments(needle))


def _segments(needle: Needle) -> tuple[int, ...]:
    if not needle.has_markers or needle.right != (NONE,):
        return ()
    return tuple(amount.base for amount in needle.left)


def _misfit(needle: Needle, misfit: Misfit, parts: Sequence[Node], vocabulary: Vocabulary) -> Misfit:
    """Tell what counts a row takes, beside what there is."""
    has = needle.all.base
    whole = len(needle.left) == 1 and needle.right == (NONE,)
    alone = count([parts], vocabulary).starts if whole else ()
    below, above = nearest(alone, has)
    takes = alone[0] if alone else None
    return replace(
        misfit,
        has=has,
        needs=takes.least if takes else None,
        multiple=takes.of if takes else None,
        below=below,
        above=above,
    )
