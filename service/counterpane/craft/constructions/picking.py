"""Stitches picked up along a long edge: the places that it offers, the picks of each stretch, and the rate in words.

Picks along rows are rows times the border's stitch gauge over the row gauge of what lies there; common practice, no
source. A stretch is a run of rows of one part: each has its own rows to the centimetre, and its own places.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import accumulate
from typing import Literal

from counterpane.craft.measures import half_up

Place = Literal["row", "ridge", "chain"]

ROWS_OF_A_PLACE: dict[Place, int] = {"row": 1, "ridge": 2, "chain": 2}
"""Rows of one place to pick up in: a plain edge has one each row, a garter edge one each ridge, a slipped edge one
chain for two rows; common practice, no source."""

MOST_IN_A_RATE = 4
"""Rows at the most in a rate that a knitter keeps in mind; house figure."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """A run of rows along the edge: what the border needs there, exact, and how many stitches are picked up.

    `borrowed` says that the gauge there was knitted in another texture, so that the need is a guess.
    """

    name: str
    rows: int
    place: Place
    need: Fraction
    borrowed: bool = False
    picks: int = 0

    @property
    def places(self) -> int:
        """Places to pick up in."""
        return self.rows // ROWS_OF_A_PLACE[self.place]


def dealt(picks: int, needs: Sequence[Fraction], places: Sequence[int]) -> tuple[int, ...]:
    """Return the picks of each stretch: in proportion to its need, in sums rounded half up, never above its places.

    What a stretch has no place for goes to the next with room, and at the end back to earlier ones. ValueError for more
    picks than places.
    """
    if picks > sum(places):
        raise ValueError(f"{picks} picks in {sum(places)} places")
    whole = sum(needs, Fraction(0))
    ends = [int(half_up(picks * need / whole)) for need in accumulate(needs)]
    wanted = [end - before for end, before in zip(ends, [0, *ends], strict=False)]
    done: list[int] = []
    over = 0
    for want, room in zip(wanted, places, strict=True):
        done.append(min(want + over, room))
        over += want - done[-1]
    for index in range(len(done) - 1, -1, -1):
        more = min(over, places[index] - done[index])
        done[index] += more
        over -= more
    return tuple(done)


def rate(picks: int, rows: int) -> Fraction:
    """Return the nearest rate of picks to rows of at most four rows."""
    return Fraction(picks, rows).limit_denominator(MOST_IN_A_RATE)


def rate_in_words(stretch: Stretch) -> str:
    """Say the rate of a stretch, and how the picks are spread over its places to the stitch."""
    if not stretch.picks:
        return "none"
    about = rate(stretch.picks, stretch.rows)
    exactly = Fraction(stretch.picks, stretch.rows) == about
    told = f"{about.numerator} {_stitches(about.numerator)} for every {_rows(about.denominator)}"
    return f"{'' if exactly or not about else 'about '}{told if about else 'very few'}{_spread(stretch)}"


def _spread(stretch: Stretch) -> str:
    """Say how to spread picks over places evenly; exact, in two lengths that differ by one."""
    picks, left_out = stretch.picks, stretch.places - stretch.picks
    if not left_out:
        return f", one in each {stretch.place}"
    if left_out <= picks:
        short, longer = divmod(picks, left_out)
        return _mixed(stretch.place, (short, left_out - longer), longer)
    apart, wider = divmod(stretch.places, picks)
    return _apart(stretch.place, (apart, picks - wider), wider)


def _mixed(place: Place, short: tuple[int, int], longer: int) -> str:
    """Say runs of picks with one place left out after each."""
    runs = [short] if not longer else [short, (short[0] + 1, longer)]
    told = "; ".join(f"pick up {picks} and leave one {place} out, {_times(times)}" for picks, times in runs)
    return f": {told}{_evenly(longer)}"


def _apart(place: Place, near: tuple[int, int], wider: int) -> str:
    """Say single picks with several places to each."""
    runs = [near] if not wider else [near, (near[0] + 1, wider)]
    told = "; ".join(f"one in every {places} {place}s, {_times(times)}" for places, times in runs)
    return f": {told}{_evenly(wider)}"


def _evenly(others: int) -> str:
    return "; evenly mixed" if others else ""


def _times(number: int) -> str:
    return "once" if number == 1 else f"{number} times"


def _stitches(number: int) -> str:
    return "stitch" if number == 1 else "stitches"


def _rows(number: int) -> str:
    return "row" if number == 1 else f"{number} rows"
