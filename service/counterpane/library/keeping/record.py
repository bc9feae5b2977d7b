"""The record of a library: how a revision is moved from one state to another, and who did what, line by line.

A state lies outside the hash of a revision: moving it never changes what it says. People stand in the record by a key
that means nothing, and their names in rows of their own: a name can be erased, and every line still holds.
"""

from __future__ import annotations

import secrets
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Literal, Protocol, TypeAlias

Status: TypeAlias = Literal[
    "draft", "in-review", "accepted", "deprecated", "yanked", "quarantined", "withdrawn", "mirrored"
]
Shelf: TypeAlias = Literal["component", "recipe", "profile", "edition"]
Retell: TypeAlias = Callable[[bytes], bytes]
"""Turns what is told of a revision, as JSON bytes, into what is told of it after a move."""


@dataclass(frozen=True, slots=True)
class Move:
    """A revision's way from one state to another, with the reason as a code and as a sentence.

    `replacement` is the slug of what to use instead, `until` the day on which a quarantine is looked at again, and
    `owner` the name of who looks after it. `by` is a name too; a store keeps the keys of both.
    """

    shelf: Shelf
    slug: str
    sha256: str
    before: str
    status: str
    at: str
    by: str
    because: str
    said: str
    replacement: str | None = None
    until: str | None = None
    owner: str | None = None


@dataclass(frozen=True, slots=True)
class Standing:
    """A move as it is kept, in which `by` and `owner` are keys of people."""

    sha256: str
    before: str
    status: str
    at: str
    by: str
    because: str
    said: str
    replacement: str | None
    until: str | None
    owner: str | None


@dataclass(frozen=True, slots=True)
class Once:
    """A write that is done once, however often it is sent.

    `key` is a hash of who sends what where, under the name that the sender gave it; `sent` is the SHA-256 of what was
    sent. Keys kept before `since` are forgotten.
    """

    key: str
    sent: str
    at: str
    since: str


@dataclass(frozen=True, slots=True)
class Done:
    """What was written under a key, and the SHA-256 of what was sent: a revision, or what has this number."""

    shelf: Shelf | Literal["jotting"]
    slug: str
    sha256: str
    sent: str
    number: int = 0


@dataclass(frozen=True, slots=True)
class Act:
    """Something that somebody did: `by` is a name, `subject` what it was done to, such as "component/waffle"."""

    at: str
    by: str
    act: str
    subject: str
    detail: Mapping[str, str | int | None] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Line:
    """A line of the audit log. `by` is the key of a person, `previous` the hash of the line before.

    `sha256` is the hash of the canonical JSON of everything else; `counterpane.library.keeping.audit` works it out.
    """

    seq: int
    at: str
    by: str
    act: str
    subject: str
    detail: Mapping[str, str | int | None]
    previous: str
    sha256: str


SECRET_BYTES = 32


def new_secret() -> bytes:
    """Return a secret for a store that is being made; as long as what HMAC with SHA-256 gives (RFC 2104, 3)."""
    return secrets.token_bytes(SECRET_BYTES)


class Ledger(Protocol):
    """What a store keeps beside revisions: where each stands, people, and the audit log that each write adds to."""

    def done(self, once: Once) -> Done | None:
        """Return what was written under the key, None where nothing was."""
        ...

    def move(self, move: Move, retell: Retell, once: Once | None = None) -> Done | None:
        """Move a revision, at each of its places in the chain; raise NotFound, Moved unless it stands as `before`.

        Where the key of `once` was used before, nothing is moved, and what was is returned.
        """

    def standing(self, shelf: Shelf, slug: str, sha256: str) -> Standing | None:
        """Return the last move of a revision, None where it was never moved."""
        ...

    def standings(self, shelf: Shelf, slug: str) -> tuple[Standing, ...]:
        """Return all moves of the revisions of a slug, oldest first."""
        ...

    def author(self, shelf: Shelf, slug: str) -> str:
        """Return the key of who added a slug; raise NotFound."""
        ...

    def names(self) -> Mapping[str, str]:
        """Return the names of all people whose name is kept, by key."""
        ...

    def person(self, name: str) -> str:
        """Return the key of a person; raise NotFound for a name that is not kept."""
        ...

    def erase(self, person: str, act: Act) -> None:
        """Forget the name of a person and withdraw the tokens; raise NotFound."""

    def audit(self, after: int, limit: int) -> tuple[Line, ...]:
        """Return the lines of the audit log after this number, oldest first."""
        ...
