"""Which textures could be alike at all, told by counting: most of a large library is ruled out without laying any over.

Where of all stitches a share agrees, at least that share of each look is common to both. Of the three stitches side by
side that begin anywhere, each stitch that differs spoils three, so that of them at least three times the share less two
is common. Turning a texture about exchanges the ends of the three, and turning it over exchanges looks. Textures whose
rows and stitches divide into little in common agree in no more than that little allows, which their sizes tell.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping
from fractions import Fraction
from functools import lru_cache
from itertools import product
from typing import TypeAlias

from counterpane.craft.texture import reach
from counterpane.library.parts.textures import LETTERS, LOOKS, cell_of

COUNTED = 32_768
"""Textures whose looks stay counted, since the same ones are asked about again; house."""

Counts = Mapping[str, int]
_Counted: TypeAlias = tuple[int, tuple[int, ...]]
_SEEN: tuple[Mapping[str, str], ...] = (LOOKS.mirrored, LOOKS.behind)
_LETTERS = tuple(LETTERS.values())
_EITHER_WAY = {(three := "".join(each)): min(three, three[::-1]) for each in product(_LETTERS, repeat=3)}


def likely(least: Fraction, looks: str) -> Callable[[str], bool]:
    """Return what says of another texture whether enough of the two could agree; looks as a store keeps them."""
    size, counts = _counted(looks)
    places = {letter: place for place, letter in enumerate(_LETTERS)}
    singles = [
        [(places[seen[each]], count) for each, count in zip(_LETTERS, counts, strict=True) if count] for seen in _SEEN
    ]
    threes = [_through(_threes(looks), seen) for seen in _SEEN]
    of_threes = max(3 * least - 2, Fraction(0))
    up, down = least.numerator * size, least.denominator
    cell = cell_of(looks)
    in_reach: dict[tuple[int, int], bool] = {}
    reached: dict[_Counted, list[int]] = {}

    def reaching(counted: _Counted) -> list[int]:
        """Return the places of the ways to see the texture in which enough single looks are common."""
        area, found = counted
        there = [count * size for count in found]
        wanted = up * area
        return [
            place
            for place, own in enumerate(singles)
            if sum([min(count * area, there[letter]) for letter, count in own]) * down >= wanted
        ]

    def could(other: str) -> bool:
        wide = other.find("/")
        there_is = (1, len(other)) if wide < 0 else (other.count("/") + 1, wide)
        if there_is not in in_reach:
            in_reach[there_is] = reach(cell, there_is) >= least
        if not in_reach[there_is]:
            return False
        counted = _counted(other)
        if counted not in reached:
            reached[counted] = reaching(counted)
        if not reached[counted]:
            return False
        beside = _threes(other)
        return any(_common(threes[place], beside, (size, counted[0]), of_threes) for place in reached[counted])

    return could


def _common(here: Counts, there: Counts, areas: tuple[int, int], least: Fraction) -> bool:
    """Say whether what two textures have in common, each counted over its own area, is at least such a share."""
    size, area = areas
    shared = sum(min(count * area, there.get(look, 0) * size) for look, count in here.items())
    return shared * least.denominator >= least.numerator * size * area


@lru_cache(COUNTED)
def _counted(looks: str) -> _Counted:
    """Return the stitches of a cell, and how many have each look."""
    return len(looks) - looks.count("/"), tuple(map(looks.count, _LETTERS))


def _threes(looks: str) -> Counts:
    """Count the threes side by side of an endless texture, in whichever direction they are read."""
    found: Counter[str] = Counter()
    for row in looks.split("/"):
        endless = row * 3 if len(row) == 1 else row + row[:2]
        found.update([_EITHER_WAY[endless[place : place + 3]] for place in range(len(row))])
    return found


def _through(counts: Counts, seen: Mapping[str, str]) -> Counts:
    """Return the counts of a texture as it is seen through a move."""
    found: Counter[str] = Counter()
    for looks, count in counts.items():
        found[_EITHER_WAY["".join(seen[letter] for letter in looks)]] += count
    return found
