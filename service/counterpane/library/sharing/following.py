"""The values that pass between a pull and a store: how far a peer was read, and one step along its history."""

from __future__ import annotations

from dataclasses import dataclass

from counterpane.library.keeping.record import Move, Retell
from counterpane.library.ports import Entry, Shelf


@dataclass(frozen=True, slots=True)
class Seen:
    """How far the history of a peer was read: its last number, and a hash of that line, by which it is known again."""

    peer: str
    seq: int
    last: str


@dataclass(frozen=True, slots=True)
class Apart:
    """A revision of a peer that is kept apart, since the slug is in use here for something else, or that was passed."""

    peer: str
    shelf: Shelf
    slug: str
    sha256: str
    at: str
    why: str


@dataclass(frozen=True, slots=True)
class Retold:
    """What is told of the latest revision in place of what was, and the largest opening; its content stays."""

    shelf: Shelf
    slug: str
    sha256: str
    body: bytes
    opening_um: int | None


@dataclass(frozen=True, slots=True)
class Step:
    """One line of a peer's history with what becomes of it here, all in one transaction.

    `before` is the number that was read before it. `entry` is kept as the first revision, or as the next one after
    `expected`; `move` moves a revision, which `retell` tells again; `apart` is noted, its `content` kept as an object;
    `retold` takes the place of what is told of a revision that stands here, whose content stays.
    """

    seen: Seen
    before: int
    entry: Entry | None = None
    expected: str | None = None
    move: Move | None = None
    retell: Retell | None = None
    apart: Apart | None = None
    content: bytes | None = None
    retold: Retold | None = None
