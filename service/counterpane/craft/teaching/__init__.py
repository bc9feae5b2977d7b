"""Teaching a blanket: a lesson on its sampler, the kit to prepare, and what mirrors for somebody left-handed.

What is to be seen comes from the fabric that the rows leave, times from the pace model, metres from the yarn model.
What goes wrong in a class is data and is passed in. How a lesson looks on a page is `press`.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from counterpane.craft.pattern import Cautions
from counterpane.craft.stitches import Terms
from counterpane.craft.teaching.hands import Hand
from counterpane.craft.yarn import Spread


@dataclass(frozen=True, slots=True)
class Slip:
    """A usual mistake: when it is met, what it is, how to notice it, how to correct it, and where that is from."""

    name: str
    when: str
    says: str
    notice: str
    correct: str
    source: str


@dataclass(frozen=True, slots=True)
class Minutes:
    """Minutes of work at the quicker and at the slower end, exact."""

    quick: Fraction
    slow: Fraction

    def __add__(self, other: Minutes) -> Minutes:
        return Minutes(self.quick + other.quick, self.slow + other.slow)


NO_TIME = Minutes(Fraction(0), Fraction(0))


@dataclass(frozen=True, slots=True)
class Step:
    """One thing to show: what is done, what is then to be seen, what goes wrong there, and how long the work takes.

    `part` is the section of the sampler, "" for cast-on, bind-off and picking up; `rows` the first and the last row of
    it, counted from 1 in the part, None where no row is worked.
    """

    number: int
    title: str
    part: str
    rows: tuple[int, int] | None
    doing: tuple[str, ...]
    seen: tuple[str, ...]
    slips: tuple[Slip, ...]
    on_needle: int
    minutes: Minutes


@dataclass(frozen=True, slots=True)
class Session:
    """Steps that fill one session; `overlong` where its one step alone takes longer than that at the slow end."""

    number: int
    steps: tuple[int, int]
    minutes: Minutes
    overlong: bool


@dataclass(frozen=True, slots=True)
class StoppedPiece:
    """A piece to prepare: where it stops and why, what is written on its caption, and its yarn with the tails."""

    letter: str
    stops: str
    why: str
    caption: str
    on_needle: int
    metres: Spread | None
    grams: Spread | None


@dataclass(frozen=True, slots=True)
class Kit:
    """All pieces to prepare, with the needles to hold them and the yarn of all together."""

    pieces: tuple[StoppedPiece, ...]
    needles: tuple[str, ...]
    metres: Spread | None
    grams: Spread | None
    basis: str


@dataclass(frozen=True, slots=True)
class Lesson:
    """A lesson on the sampler of a plan, in the terms of one trade and for one hand."""

    title: str
    terms: Terms
    hand: Hand
    summary: tuple[str, ...]
    steps: tuple[Step, ...]
    minutes: Minutes
    pace: str
    session_minutes: int
    sessions: tuple[Session, ...]
    kit: Kit
    hands: tuple[str, ...]
    always: tuple[str, ...]
    cautions: Cautions


class TooLong(Exception):
    """A sampler of more rows or stitches than one lesson shows; the text says how many."""
