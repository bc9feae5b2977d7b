"""The loops of rows, counted in closed form: the cost depends on the words of a row and not on its stitches."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from counterpane.craft.counts.writing_out import WrittenOut, write_out
from counterpane.craft.rows.tree import BindOff, CastOn, Group, IntoOne, Node, Work
from counterpane.craft.stitches import Stitch, Vocabulary
from counterpane.craft.yarn.spreads import Spread

Colour = str | None
Stitches = Counter[tuple[str, Colour]]

NOT_KNOWN = Spread(Fraction(1, 2), Fraction(1), Fraction(3))
"""Loops of a stitch of which no figure is known, for each loop it leaves; house figure, wide on purpose."""

CAST_ON_LOOPS = Spread.between(Fraction(4) / Fraction("4.1"), Fraction(5) / Fraction("4.1"))
"""Loops of a stitch cast on within a row: 4 to 5 stitch widths, from memory."""

CAST_ON = "cast on"
"""Stands for a stitch cast on within a row, which the vocabulary does not hold."""

KNIT = "k"


@dataclass(frozen=True, slots=True)
class RowTally:
    """The stitches of one row by key and colour, and how many are on the needle after it."""

    stitches: Stitches
    after: int


class CannotBeCounted(ValueError):
    """A row does not work over the stitches that it meets."""


def tally_rows(rows: Iterable[Sequence[Node]], before: int, vocabulary: Vocabulary) -> tuple[RowTally, ...]:
    """Count the stitches of rows worked one after the other from `before` stitches.

    CannotBeCounted where one of them does not work.
    """
    done: list[RowTally] = []
    earlier: WrittenOut | None = None
    has = before
    for parts in rows:
        earlier = write_out(parts, has, vocabulary, earlier=earlier)
        if earlier.parts is None or earlier.after is None:
            raise CannotBeCounted(f"a row does not work over {has} stitches")
        done.append(RowTally(_of(earlier.parts, iter(earlier.all_off)), earlier.after))
        has = earlier.after
    return tuple(done)


def _of(parts: Iterable[Node], all_off: Iterator[int]) -> Stitches:
    """Count closed parts; `all_off` are the stitches that "bind off all" takes, one number each."""
    counted: Stitches = Counter()
    for node in parts:
        match node:
            case Work(stitch, times, colour=colour):
                counted[stitch, colour] += times
            case Group(inner, times):
                for key, number in _of(inner, all_off).items():
                    counted[key] += number * times
            case IntoOne(inner):
                counted += _of(inner, all_off)
            case BindOff(times):
                counted[KNIT, None] += next(all_off) if times is None else times + (not node.joined)
            case CastOn(times):
                counted[CAST_ON, None] += times
            case _:
                pass  # Markers, turns and holding stitches take no yarn that counts.
    return counted


def loops_of(stitches: Mapping[tuple[str, Colour], int], vocabulary: Vocabulary) -> Spread:
    """Return the yarn of counted stitches in loops of plain knitting, all colours together."""
    low = likely = high = Fraction(0)
    for (key, _), times in stitches.items():
        each = loops_of_stitch(key, vocabulary)
        low, likely, high = low + each.low * times, likely + each.likely * times, high + each.high * times
    return Spread(low, likely, high)


def loops_of_stitch(key: str, vocabulary: Vocabulary) -> Spread:
    """Return the yarn of one stitch in loops: from the vocabulary, and wide where it is not known there."""
    if key == CAST_ON:
        return CAST_ON_LOOPS
    stitch = vocabulary[key]
    if stitch.loop_factor is None:
        return NOT_KNOWN.times(max(1, stitch.makes))
    return known_loops(stitch)


def known_loops(stitch: Stitch) -> Spread:
    """Return the figure that the vocabulary gives; KeyError of a stitch without one is the caller's to avoid."""
    likely = Fraction(stitch.loop_factor or "0")
    low, high = stitch.loop_range or (stitch.loop_factor, stitch.loop_factor)
    return Spread(Fraction(low or likely), likely, Fraction(high or likely))


def not_known(stitches: Iterable[tuple[str, Colour]], vocabulary: Vocabulary) -> tuple[str, ...]:
    """Return the keys of stitches whose yarn is not known."""
    keys = dict.fromkeys(key for key, _ in stitches if key != CAST_ON)
    return tuple(key for key in keys if vocabulary[key].loop_factor is None)
