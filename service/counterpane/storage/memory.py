"""A store in memory: for tests, for a demo without a file, and as the plain statement of what a store does."""

from __future__ import annotations

import re
import threading
from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from counterpane.library.errors import NotFound, Stale, Taken
from counterpane.library.ports import (
    Change,
    CountClass,
    Done,
    Entry,
    Holder,
    Kept,
    KeptTexture,
    Key,
    Once,
    Page,
    Shelf,
    Wanted,
)


@dataclass(slots=True)
class _Item:
    number: int
    entry: Entry
    revisions: list[Kept] = field(default_factory=list)


class MemoryStore:
    """Keeps everything in dictionaries, behind one lock."""

    def __init__(self) -> None:
        self._lock = threading.RLock()
        self._items: dict[tuple[Shelf, str], _Item] = {}
        self._objects: dict[str, bytes] = {}
        self._changes: list[Change] = []
        self._tokens: dict[str, Holder] = {}
        self._done: dict[str, tuple[str, Done]] = {}

    def add(self, *entries: Entry, once: Once | None = None) -> Done | None:
        """Keep these as first revisions, all or none; nothing where the key was used before."""
        with self._lock:
            if once and (done := self.done(once)):
                return done
            seen = set(self._items)
            for entry in entries:
                if (entry.shelf, entry.slug) in seen:
                    raise Taken(f"There is a {entry.shelf} {entry.slug!r} already.")
                seen.add((entry.shelf, entry.slug))
            for entry in entries:
                self._items[entry.shelf, entry.slug] = _Item(len(self._items) + 1, entry)
                self._write(entry, "added")
                self._keep_done(entry, once)
        return None

    def _keep_done(self, entry: Entry, once: Once | None) -> None:
        if once:
            self._done[once.key] = once.at, Done(entry.shelf, entry.slug, entry.sha256, once.sent)

    def done(self, once: Once) -> Done | None:
        """Return what was written under the key."""
        at, done = self._done.get(once.key, ("", None))
        return done if at >= once.since else None

    def revise(self, entry: Entry, expected: str | None, once: Once | None = None) -> Done | None:
        """Keep the next revision, if the latest is the expected one; nothing where the key was used before."""
        with self._lock:
            if once and (done := self.done(once)):
                return done
            item = self._item(entry.shelf, entry.slug)
            if expected is not None and item.entry.sha256 != expected:
                raise Stale(f"The {entry.shelf} {entry.slug!r} was revised since you read it.", item.entry.sha256)
            item.entry = entry
            self._write(entry, "revised")
            self._keep_done(entry, once)
        return None

    def _write(self, entry: Entry, event: str) -> None:
        revisions = self._items[entry.shelf, entry.slug].revisions
        kept = Kept(entry.slug, entry.sha256, len(revisions) + 1, entry.body, entry.at, entry.status)
        revisions.append(kept)
        self._objects[entry.sha256] = entry.content
        change = Change(len(self._changes) + 1, entry.at, entry.shelf, entry.slug, entry.sha256, event)
        self._changes.append(change)

    def latest(self, shelf: Shelf, slug: str) -> Kept:
        """Return the latest revision."""
        return self._item(shelf, slug).revisions[-1]

    def revision(self, shelf: Shelf, slug: str, sha256: str) -> Kept:
        """Return the latest revision of this hash."""
        for kept in reversed(self._item(shelf, slug).revisions):
            if kept.sha256 == sha256:
                return kept
        raise NotFound(f"The {shelf} {slug!r} has no revision {sha256}.")

    def history(self, shelf: Shelf, slug: str) -> tuple[Kept, ...]:
        """Return all revisions, oldest first."""
        return tuple(self._item(shelf, slug).revisions)

    def _item(self, shelf: Shelf, slug: str) -> _Item:
        try:
            return self._items[shelf, slug]
        except KeyError:
            raise NotFound(f"There is no {shelf} {slug!r}.") from None

    def page(self, wanted: Wanted) -> Page:
        """Return the cards that are wanted."""
        with self._lock:
            found = sorted(self._wanted(wanted), key=lambda pair: pair[0])
        rest = [pair for pair in found if wanted.after is None or pair[0] > wanted.after]
        cards = tuple(card for _, card in rest[: wanted.limit])
        return Page(cards, rest[wanted.limit - 1][0] if len(rest) > wanted.limit else None)

    def _wanted(self, wanted: Wanted) -> Iterator[tuple[Key, bytes]]:
        for item in self._items.values():
            if _passes(item.entry, wanted) and (key := _key(item, wanted)):
                yield key, item.entry.card

    def textures(self) -> tuple[KeptTexture, ...]:
        """Return the textures of the latest revisions."""
        with self._lock:
            entries = sorted((item.entry for item in self._items.values()), key=lambda entry: entry.slug)
        return tuple(KeptTexture(entry.slug, entry.kind, each) for entry in entries for each in entry.textures)

    def object(self, sha256: str) -> bytes:
        """Return the canonical bytes of this hash."""
        try:
            return self._objects[sha256]
        except KeyError:
            raise NotFound(f"There is no object {sha256}.") from None

    def changes(self, after: int, limit: int) -> tuple[Change, ...]:
        """Return what was written after this sequence number."""
        return tuple(self._changes[after : after + limit])

    def put_token(self, holder: Holder) -> None:
        """Keep the hash of a token."""
        with self._lock:
            self._tokens[holder.sha256] = replace(holder)

    def token(self, sha256: str) -> Holder:
        """Return whom the token of this hash stands for."""
        try:
            return self._tokens[sha256]
        except KeyError:
            raise NotFound("There is no such token.") from None

    def version(self) -> str:
        """Return the name of the last migration; memory has one form only."""
        return "memory"

    def close(self) -> None:
        """Forget nothing: the memory goes with the object."""


def _passes(entry: Entry, wanted: Wanted) -> bool:
    """Say whether the entry passes the filters that do not set the order."""
    asked = ((wanted.kind, entry.kind), (wanted.reversible, entry.reversible), (wanted.status, entry.status))
    of_texture = wanted.texture is None or any(each.key == wanted.texture for each in entry.textures)
    under = wanted.openings_under_mm
    closed = under is None or (entry.opening_um is not None and entry.opening_um < under * 1000)
    held = of_texture and closed and entry.shelf == wanted.shelf
    return held and all(want is None or want == have for want, have in asked)


def _key(item: _Item, wanted: Wanted) -> Key | None:
    """Return where the item stands in the order that is wanted; None where it is not wanted at all."""
    entry = item.entry
    if not _holds(f"{entry.title} {entry.words}", wanted.words):
        return None
    if wanted.admits is not None:
        first = _first_class(entry.classes, wanted.admits)
        return None if first is None else (first.modulus, first.least, item.number)
    if wanted.words:
        return (0 if _holds(entry.title, wanted.words) else 1, entry.slug)
    return (entry.slug,)


def _first_class(classes: tuple[CountClass, ...], count: int) -> CountClass | None:
    fitting = [each for each in classes if each.admits(count)]
    return min(fitting, key=lambda each: (each.modulus, each.least)) if fitting else None


def _holds(text: str, words: tuple[str, ...]) -> bool:
    """Say whether the text holds each word, whatever the case."""
    return {word.casefold() for word in words} <= set(re.findall(r"[^\W_]+", text.casefold()))
