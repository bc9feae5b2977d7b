"""A store in memory: for tests, for a demo without a file, and as the plain statement of what a store does."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from counterpane.library.errors import Gone, NotFound, Stale, Taken
from counterpane.library.keeping import acts
from counterpane.library.keeping.record import Act
from counterpane.library.ports import (
    Change,
    Done,
    Entry,
    Holder,
    Kept,
    KeptTexture,
    Once,
    Shelf,
)
from counterpane.library.sharing.following import Apart, Retold, Seen, Step
from counterpane.library.sharing.records import NOT_EMPTY, Record
from counterpane.storage import memory_records
from counterpane.storage.memory_jottings import MemoryJottings
from counterpane.storage.memory_record import Item
from counterpane.storage.memory_search import MemorySearch


class MemoryStore(MemorySearch, MemoryJottings):
    """Keeps everything in dictionaries, behind one lock."""

    def __init__(self) -> None:
        super().__init__()
        self._objects: dict[str, bytes] = {}
        self._seen: dict[str, Seen] = {}
        self._apart: set[Apart] = set()

    def add(self, *entries: Entry, once: Once | None = None) -> Done | None:
        """Keep these as first revisions, all or none; nothing where the key was used before."""
        with self._lock:
            if done := self._done_before(once):
                return done
            seen = set(self._items)
            for entry in entries:
                if (entry.shelf, entry.slug) in seen:
                    raise Taken(f"There is a {entry.shelf} {entry.slug!r} already.")
                seen.add((entry.shelf, entry.slug))
            for entry in entries:
                self._items[entry.shelf, entry.slug] = Item(len(self._items) + 1, entry)
                self._write(entry)
                self._keep_done(entry, once)
        return None

    def revise(self, entry: Entry, expected: str | None, once: Once | None = None) -> Done | None:
        """Keep the next revision, if the latest is the expected one; nothing where the key was used before."""
        with self._lock:
            if done := self._done_before(once):
                return done
            self._expected(entry, expected).entry = entry
            self._write(entry)
            self._keep_done(entry, once)
        return None

    def _expected(self, entry: Entry | Retold, expected: str | None) -> Item:
        item = self._item(entry.shelf, entry.slug)
        if expected is not None and item.entry.sha256 != expected:
            raise Stale(f"The {entry.shelf} {entry.slug!r} was revised since you read it.", item.entry.sha256)
        return item

    def _write(self, entry: Entry) -> None:
        revisions = self._items[entry.shelf, entry.slug].revisions
        parent = revisions[-1].sha256 if revisions else None
        by, number = self._person(entry.by), len(revisions) + 1
        kept = Kept(entry.slug, entry.sha256, number, entry.body, entry.at, entry.status, by, parent)
        revisions.append(kept)
        self._objects[entry.sha256] = entry.content
        self._traitless.discard(entry.slug)
        event = "added" if number == 1 else "revised"
        self._change(Change(0, entry.at, entry.shelf, entry.slug, entry.sha256, event))
        self._log(acts.wrote(entry, number))

    def latest(self, shelf: Shelf, slug: str) -> Kept:
        """Return the latest revision."""
        return self._told(shelf, self._item(shelf, slug).revisions[-1])

    def revision(self, shelf: Shelf, slug: str, sha256: str) -> Kept:
        """Return the latest revision of this hash."""
        for kept in reversed(self._item(shelf, slug).revisions):
            if kept.sha256 == sha256:
                return self._told(shelf, kept)
        raise NotFound(f"The {shelf} {slug!r} has no revision {sha256}.")

    def history(self, shelf: Shelf, slug: str) -> tuple[Kept, ...]:
        """Return all revisions, oldest first."""
        return tuple(self._item(shelf, slug).revisions)

    def textures(self) -> tuple[KeptTexture, ...]:
        """Return the textures of the latest revisions."""
        with self._lock:
            stand = (item.entry for item in self._items.values() if item.entry.status != "withdrawn")
            entries = sorted(stand, key=lambda entry: entry.slug)
        return tuple(KeptTexture(entry.slug, entry.kind, each) for entry in entries for each in entry.textures)

    def object(self, sha256: str) -> bytes:
        """Return the canonical bytes of this hash."""
        for _, _, standing in self._standings:
            if standing.sha256 == sha256 and standing.status == "withdrawn":
                raise Gone(f"What has this hash was withdrawn: {standing.said}")
        try:
            return self._objects[sha256]
        except KeyError:
            raise NotFound(f"There is no object {sha256}.") from None

    def changes(self, after: int, limit: int) -> tuple[Change, ...]:
        """Return what was written after this sequence number."""
        return tuple(self._changes[after : after + limit])

    def seen(self, peer: str) -> Seen | None:
        """Return how far the history of a peer was read."""
        return self._seen.get(peer)

    def follow(self, step: Step) -> None:
        """Take one step along a peer's history, if the one before it was the last."""
        with self._lock:
            seen = self._seen.get(step.seen.peer)
            if (seen.seq if seen else 0) != step.before:
                raise Stale(f"{step.seen.peer} is being read by another program.", "")
            if step.entry:
                self._follow(step.entry, step.expected)
            if step.move and step.retell:
                self._move(step.move, step.retell)
            if step.retold:
                self._retell(step.retold)
            if step.apart:
                self._keep_apart(step.apart, step.content)
            self._seen[step.seen.peer] = step.seen

    def _follow(self, entry: Entry, expected: str | None) -> None:
        if expected:
            self._expected(entry, expected).entry = entry
        elif (entry.shelf, entry.slug) in self._items:
            raise Taken(f"There is a {entry.shelf} {entry.slug!r} already.")
        else:
            self._items[entry.shelf, entry.slug] = Item(len(self._items) + 1, entry)
        self._write(entry)

    def _retell(self, told: Retold) -> None:
        item = self._expected(told, told.sha256)
        item.entry = replace(item.entry, body=told.body, opening_um=told.opening_um)
        item.revisions[-1] = replace(item.revisions[-1], body=told.body)

    def _keep_apart(self, apart: Apart, content: bytes | None) -> None:
        if not any(_name(each) == _name(apart) for each in self._apart):
            self._apart.add(apart)
        if content is not None:
            self._objects.setdefault(apart.sha256, content)

    def apart(self, shelf: Shelf | None = None, slug: str | None = None) -> tuple[Apart, ...]:
        """Return what is kept apart."""
        with self._lock:
            found = sorted(self._apart, key=_name)
        return tuple(each for each in found if slug is None or (each.shelf, each.slug) == (shelf, slug))

    def records(self) -> Iterator[Record]:
        """Give all that is kept."""
        with self._lock:
            held = [*memory_records.library(self._identity), *memory_records.objects(self._objects)]
            held += memory_records.changes(self._changes)
            held += memory_records.of_peers(self._seen.values(), self._apart)
            held += memory_records.of_people(self._people, self._standings, self._lines)
            held += memory_records.of_matters(self._matters.values(), self._decisions)
            held += memory_records.of_jottings(self._jottings.values())
            for item in self._items.values():
                held += memory_records.item(item.number, item.entry, item.revisions)
        yield from memory_records.in_order(held)

    def restore(self, records: Iterable[Record]) -> None:
        """Keep these in a store that holds nothing."""
        held = memory_records.Held.of(records)
        with self._lock:
            if self._changes or self._items:
                raise Taken("The library holds something already.", NOT_EMPTY)
            if held.identity or held.changes:
                self._identity = held.identity
            self._objects, self._changes = held.objects, held.changes
            self._seen, self._apart = held.seen, held.apart
            self._people, self._standings, self._lines = held.people, held.standings, held.lines
            self._matters, self._decisions, self._jottings = held.matters, held.decisions, held.jottings
            for number, entry in held.entries.items():
                self._items[entry.shelf, entry.slug] = Item(number, entry, held.chains[number])
                if entry.shelf == "component" and not entry.traits:
                    self._traitless.add(entry.slug)

    def last_change(self) -> int:
        """Return the number of the last line of the history."""
        return len(self._changes)

    def put_token(self, holder: Holder) -> None:
        """Keep the hash of a token."""
        with self._lock:
            self._person(holder.name)
            self._tokens[holder.sha256] = replace(holder)
            self._log(acts.made_token(holder))

    def token(self, sha256: str) -> Holder:
        """Return whom the token of this hash stands for."""
        try:
            return self._tokens[sha256]
        except KeyError:
            raise NotFound("There is no such token.") from None

    def tokens(self) -> tuple[Holder, ...]:
        """Return whom all tokens stand for, the oldest first."""
        with self._lock:
            return tuple(sorted(self._tokens.values(), key=lambda holder: (holder.at, holder.sha256)))

    def withdraw_token(self, sha256: str, act: Act) -> None:
        """Forget a token."""
        with self._lock:
            self.token(sha256)
            del self._tokens[sha256]
            self._log(act)

    def version(self) -> str:
        """Return the name of the last migration; memory has one form only."""
        return "memory"

    def close(self) -> None:
        """Forget nothing: the memory goes with the object."""


def _name(apart: Apart) -> tuple[str, str, str, str]:
    return apart.peer, apart.shelf, apart.slug, apart.sha256
