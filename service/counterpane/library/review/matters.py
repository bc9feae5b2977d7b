"""Matters that wait for somebody: submissions and safety reports, as a store keeps them.

A matter is at a version, which each turn of it makes one higher, so that two who decide at once never both do.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, Protocol, TypeAlias

from counterpane.library.keeping.record import Done, Move, Once, Retell, Shelf

Lane: TypeAlias = Literal["safety", "review"]
Turn: TypeAlias = Literal["us", "contributor", "nobody"]
Place: TypeAlias = tuple[int | str, ...]
LANES: tuple[Lane, ...] = ("safety", "review")
TURNS: tuple[Turn, ...] = ("us", "contributor", "nobody")


@dataclass(frozen=True, slots=True)
class Matter:
    """A submission or a report: what it is about, whose turn it is since when, and what it says as JSON bytes.

    `by` is a name as it is handed in, and the key of a person as it is kept.
    """

    lane: Lane
    shelf: Shelf
    slug: str
    sha256: str
    at: str
    by: str
    turn: Turn
    since: str
    body: bytes
    number: int = 0
    version: int = 1


@dataclass(frozen=True, slots=True)
class Decision:
    """What somebody made of a matter, with the reason as a code and a sentence; `by` as in a matter."""

    at: str
    by: str
    decision: str
    because: str
    said: str


@dataclass(frozen=True, slots=True)
class Sought:
    """Which matters a page should hold; without a turn, those that wait for somebody."""

    lane: Lane | None = None
    turn: Turn | None = None
    slug: str | None = None
    after: Place | None = None
    limit: int = 50


@dataclass(frozen=True, slots=True)
class Queue:
    """A page of matters, and the place after which its successor begins; None where it is the last."""

    matters: tuple[Matter, ...]
    last: Place | None


def place_of(matter: Matter) -> Place:
    """Return where a matter stands in the queue: reports first, then what waits for us, the oldest first."""
    return LANES.index(matter.lane), TURNS.index(matter.turn), matter.since, matter.number


def rank(matter: Matter) -> int:
    """Return the lane and the turn of a matter as one number, by which the queue is ordered first."""
    return LANES.index(matter.lane) * len(TURNS) + TURNS.index(matter.turn)


class Matters(Protocol):
    """What a store keeps of matters. Every write adds its line to the audit log."""

    def put_matter(
        self, matter: Matter, move: Move | None = None, retell: Retell | None = None, once: Once | None = None
    ) -> int | Done:
        """Keep a matter with the move that it brings and return its number.

        Where the key of `once` was used before, nothing is kept, and what was is returned. Raise Taken where a
        submission of this slug is open, and what `move` raises.
        """
        ...

    def turn_matter(
        self,
        matter: Matter,
        decision: Decision | None,
        move: Move | None = None,
        retell: Retell | None = None,
        once: Once | None = None,
    ) -> Done | None:
        """Keep a matter as it is after its turn, at the next version, with the move that it brings.

        Where the key of `once` was used before, nothing is kept, and what was is returned. Raise
        Moved unless it is kept at the version before, and what `move` raises.
        """

    def matter(self, number: int) -> Matter:
        """Return a matter; raise NotFound."""
        ...

    def decisions(self, number: int) -> tuple[Decision, ...]:
        """Return the decisions on a matter, oldest first."""
        ...

    def queue(self, sought: Sought) -> Queue:
        """Return a page of matters in the order of `place_of`."""
        ...
