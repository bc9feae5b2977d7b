"""Jottings: what is noted of a pattern by those who knit from it, as a store keeps it.

There are three sorts: a test knit, an answer given to a knitter, and the record of a finished piece. A jotting belongs
to a recipe and to one revision of it. It may be changed, and its tag with it; taken back, it says nothing more.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal, Protocol, TypeAlias, get_args

if TYPE_CHECKING:
    from counterpane.library.ports import Done, Once

Sort: TypeAlias = Literal["test-knit", "answer", "piece"]
SORTS: tuple[Sort, ...] = get_args(Sort)
SHELF: Literal["jotting"] = "jotting"
"""Under this name a write that is done once is remembered, with the number in the place of the slug."""


@dataclass(frozen=True, slots=True)
class Jotting:
    """What is noted: of which sort, about which revision of which recipe, and what it says as JSON bytes.

    `by` wrote it down, and `whose` it is: who knitted, answered or made the piece. Both are names as it is handed in,
    and keys of people as it is kept. `sha256` is the hash of `body`. `taken_back` is the reason, None while it stands.
    """

    sort: Sort
    recipe: str
    revision: str
    at: str
    by: str
    whose: str
    changed: str
    sha256: str
    body: bytes
    taken_back: str | None = None
    number: int = 0

    @property
    def shelf(self) -> Literal["jotting"]:
        """Where it stands."""
        return SHELF

    @property
    def slug(self) -> str:
        """What it is about."""
        return self.recipe


@dataclass(frozen=True, slots=True)
class Noted:
    """Which jottings to return: those of a sort about a recipe that stand, after a number."""

    sort: Sort
    recipe: str
    after: int = 0
    limit: int = 50


class Jottings(Protocol):
    """What a store keeps of jottings. Every write adds its line to the audit log."""

    def put_jotting(self, jotting: Jotting, once: Once | None = None) -> int | Done:
        """Keep a jotting and return its number; where the key was used before, what was written then."""
        ...

    def turn_jotting(self, jotting: Jotting, expected: str, by: str, once: Once | None = None) -> Done | None:
        """Keep a jotting as it is after somebody changed it or took it back; an empty `whose` leaves whose it is.

        Raise NotFound, Stale unless its hash is `expected`, and Gone where it was taken back. Where the key of `once`
        was used before, nothing is turned, and what was is returned.
        """

    def jotting(self, number: int) -> Jotting:
        """Return a jotting; raise NotFound, and Gone for one that was taken back."""
        ...

    def taken_back(self, number: int) -> Jotting:
        """Return what is left of a jotting that was taken back; raise NotFound for any other."""
        ...

    def jottings(self, noted: Noted) -> tuple[Jotting, ...]:
        """Return those that are sought by number, at most `limit`."""
        ...
