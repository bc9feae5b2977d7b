"""In the middle of a piece: what is worked, what is still to work, and how far the yarn that is left will go.

Loops are those of one yarn of the plan, by its place. "Free" is the part whose rows can still give way: the band of the
body that is on the needle, else the next one.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from counterpane.craft.constructions import Plan, Section
from counterpane.craft.yarn.amounts import Work, end_loops
from counterpane.craft.yarn.choosing import BODY
from counterpane.craft.yarn.scales import Scale
from counterpane.craft.yarn.spreads import NOTHING, Spread, total
from counterpane.craft.yarn.values import Yarn

ENDS = ("low", "likely", "high")

MOST_REPEATS = 10_000
"""Repeats beyond which none are counted, where a yarn hardly works the body; house figure."""


@dataclass(frozen=True, slots=True)
class Spot:
    """Where a piece stands: the section by its place, and how many of its rows are worked."""

    section: int
    rows: int


@dataclass(frozen=True, slots=True)
class Piece:
    """A plan that is on the needle: its yarns, the place of the one that is asked about, and where the work stands."""

    work: Work
    place: int
    spot: Spot

    @property
    def plan(self) -> Plan:
        """The plan that the piece was begun by."""
        return self.work.plan

    @property
    def yarns(self) -> tuple[Yarn, ...]:
        """All yarns of the plan."""
        return self.work.yarns

    def loops(self, section: int, rows: int | None = None) -> Spread:
        """Return the loops of the yarn in the first rows of a section, in all if None."""
        return self.work.sections[section].loops(self.place, rows)

    @property
    def free(self) -> int | None:
        """The section whose rows can still give way; None once the body is done."""
        sections = self.plan.sections
        later = range(self.spot.section, len(sections))
        return next((each for each in later if sections[each].name.startswith(BODY)), None)


def spot_of(sections: Sequence[Section], rows_done: int) -> Spot | None:
    """Return where a piece stands after so many rows, at the end of a section rather than before the next.

    None for more rows than the piece has.
    """
    for place, section in enumerate(sections):
        done = rows_done - section.first_row + 1
        if done <= section.rows:
            return Spot(place, max(0, done))
    return None


def loops_worked(piece: Piece) -> Spread:
    """Return the loops of the yarn that are worked so far, the cast-on among them."""
    parts = [piece.loops(place) for place in range(piece.spot.section)]
    cast_on = piece.work.cast_on(piece.place) or NOTHING
    return total((cast_on, *parts, piece.loops(piece.spot.section, piece.spot.rows)))


def loops_to_bind_off(piece: Piece, begin: int, scale: Scale) -> Spread:
    """Return the loops from the first row of a section to the last end: all rows, the bind-off, one end."""
    parts = [piece.loops(place) for place in range(begin, len(piece.plan.sections))]
    bind_off = piece.work.bind_off(piece.place) or NOTHING
    return total((*parts, bind_off, end_loops(piece.plan, scale)))


def loops_to_free(piece: Piece) -> Spread:
    """Return the loops still to work before the free section begins: none where it is on the needle."""
    spot, free = piece.spot, piece.free
    if free is None or free == spot.section:
        return NOTHING
    rest = piece.loops(spot.section) - piece.loops(spot.section, spot.rows)
    return total((rest, *(piece.loops(place) for place in range(spot.section + 1, free))))


@dataclass(frozen=True, slots=True)
class Reach:
    """How many rows of the free section an amount of yarn does for, on top of those worked.

    `rows` end where the plan's own end: after whole repeats with the plan's closing rows. None where it does not do for
    any such number; `repeat` are the rows between one such number and the next.
    """

    rows: int | None
    repeat: int


def reach(piece: Piece, grams: Fraction, scale: Scale, sure: bool) -> Reach:
    """Return how many more rows of the free section so many grams work: surely by the high end, else likely.

    ValueError for a scale without grams, or a piece whose body is done. Yarn grows by the same amount with each repeat,
    so the last is found by division.
    """
    if scale.grams is None or piece.free is None:
        raise ValueError("grams of a free section are asked for")
    section = piece.plan.sections[piece.free]
    done = piece.spot.rows if piece.free == piece.spot.section else 0
    repeat = piece.work.sections[piece.free].period
    first = (section.rows - done) % repeat
    marks = [piece.loops(piece.free, done + rows) for rows in (0, first, first + repeat)]
    begin, each = scale.grams * (marks[1] - marks[0]), scale.grams * (marks[2] - marks[1])
    share = 1 + scale.spread if sure else Fraction(1)
    ends = ENDS if sure else ("likely",)
    more = min(_times(grams / share, getattr(begin, end), getattr(each, end), MOST_REPEATS) for end in ends)
    return Reach(None if more < 0 else first + more * repeat, repeat)


def _times(grams: Fraction, begin: Fraction, each: Fraction, most: int) -> int:
    """Return how often `each` goes into what is left after `begin`, -1 where not even that is there."""
    left = grams - begin
    return -1 if left < 0 else min(most, int(left // each)) if each else most
