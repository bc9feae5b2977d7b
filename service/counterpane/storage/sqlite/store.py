"""The store itself: each method is one transaction or one question."""

from __future__ import annotations

import sqlite3
import threading
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import asdict
from pathlib import Path
from typing import Any

from sqlite_utils import Database

from counterpane.library.errors import Busy, NotFound, Stale, Taken, Unreadable
from counterpane.library.ports import (
    Change,
    Done,
    Entry,
    Holder,
    Kept,
    KeptTexture,
    Once,
    Page,
    Shelf,
    TextureKey,
    Wanted,
)
from counterpane.storage.sqlite.connections import WriteLock, connect, transaction
from counterpane.storage.sqlite.migrations import steps
from counterpane.storage.sqlite.pages import question

MOST_KNOWN = 2_000
"""Latest revisions that are kept in memory; house."""

_DONE = "SELECT shelf, slug, sha256, sent FROM done WHERE key = :key AND at >= :since"
_KEPT = "SELECT i.slug, r.sha256, r.number, r.body, r.at, r.status FROM revision r JOIN item i ON i.id = r.item"


class SqliteStore:
    """Keeps everything in one file, with one connection for writing and one for each thread that reads."""

    def __init__(self, path: str | Path) -> None:
        """Open or make the file and bring its form up to date; raise Unreadable for a file of another kind."""
        self._path = Path(path)
        self._writer = connect(self._path, read_only=False)
        self._db = Database(self._writer)
        self._lock = WriteLock(self._path.with_name(self._path.name + ".lock"))
        self._known: dict[tuple[Shelf, str], tuple[int, Kept]] = {}
        self._readers: list[sqlite3.Connection] = []
        self._local = threading.local()
        try:
            with self._lock.held():
                steps.apply(self._db)
        except sqlite3.DatabaseError as fault:
            self.close()
            raise Unreadable(f"{self._path.name} is not a store: {fault}.") from fault

    @contextmanager
    def _writing(self) -> Iterator[None]:
        with self._lock.held(), transaction(self._writer):
            yield

    def _ask(self, sql: str, values: Mapping[str, Any]) -> list[tuple[Any, ...]]:
        try:
            return self._reader().execute(sql, values).fetchall()
        except sqlite3.OperationalError as fault:
            raise Busy(f"The library cannot be read: {fault}.") from fault

    def _reader(self) -> sqlite3.Connection:
        found: sqlite3.Connection | None = getattr(self._local, "reader", None)
        if found is None:
            found = self._local.reader = connect(self._path, read_only=True)
            self._readers.append(found)
        return found

    def add(self, *entries: Entry, once: Once | None = None) -> Done | None:
        """Keep these as first revisions, all or none; nothing where the key was used before.

        The key is looked up and kept in the transaction that writes.
        """
        with self._writing():
            if done := self._done_before(once):
                return done
            for entry in entries:
                try:
                    item = self._db.table("item").insert(_item(entry, number=1)).last_pk
                except sqlite3.IntegrityError:
                    raise Taken(f"There is a {entry.shelf} {entry.slug!r} already.") from None
                self._write(entry, item, 1, "added")
                self._keep_done(entry, once)
        return None

    def _done_before(self, once: Once | None) -> Done | None:
        rows = self._writer.execute(_DONE, asdict(once)).fetchall() if once else ()
        return Done(*rows[0]) if rows else None

    def _keep_done(self, entry: Entry, once: Once | None) -> None:
        if once is None:
            return
        self._db.table("done").delete_where("at < ?", [once.since])
        row = {"key": once.key, "sent": once.sent, "at": once.at}
        self._db.table("done").insert(row | {name: getattr(entry, name) for name in ("shelf", "slug", "sha256")})

    def done(self, once: Once) -> Done | None:
        """Return what was written under the key."""
        return next((Done(*row) for row in self._ask(_DONE, asdict(once))), None)

    def revise(self, entry: Entry, expected: str | None, once: Once | None = None) -> Done | None:
        """Keep the next revision, if the latest is the expected one; nothing where the key was used before.

        Both are looked up in the transaction that writes.
        """
        with self._writing():
            if done := self._done_before(once):
                return done
            sql = "SELECT id, number, sha256 FROM item WHERE shelf = ? AND slug = ?"
            row = self._writer.execute(sql, (entry.shelf, entry.slug)).fetchone()
            if row is None:
                raise NotFound(f"There is no {entry.shelf} {entry.slug!r}.")
            item, number, current = row
            if expected is not None and current != expected:
                raise Stale(f"The {entry.shelf} {entry.slug!r} was revised since you read it.", current)
            self._db.table("item").update(item, _item(entry, number + 1))
            self._db.table("class").delete_where("item = ?", [item])
            self._db.table("texture").delete_where("item = ?", [item])
            self._db.table("opening").delete_where("item = ?", [item])
            self._write(entry, item, number + 1, "revised")
            self._keep_done(entry, once)
        return None

    def _write(self, entry: Entry, item: Any, number: int, event: str) -> None:
        self._db.table("object").insert({"sha256": entry.sha256, "content": entry.content}, ignore=True)
        fields = {name: getattr(entry, name) for name in ("sha256", "body", "at", "by", "status")}
        self._db.table("revision").insert({"item": item, "number": number, **fields})
        if entry.classes:
            rows = ({"item": item, "kind": entry.kind, **asdict(each)} for each in entry.classes)
            self._db.table("class").insert_all(rows)
        if entry.opening_um is not None:
            self._db.table("opening").insert({"item": item, "um": entry.opening_um})
        if entry.textures:
            self._db.table("texture").insert_all({"item": item, **asdict(each)} for each in entry.textures)
        (seq,) = self._writer.execute("SELECT COALESCE(MAX(seq), 0) + 1 FROM change").fetchone()
        self._db.table("change").insert(asdict(Change(seq, entry.at, entry.shelf, entry.slug, entry.sha256, event)))

    def latest(self, shelf: Shelf, slug: str) -> Kept:
        """Return the latest revision, from memory where nothing has been written since it was read."""
        count = self._lock.tide.still()
        known = self._known.get((shelf, slug))
        if known and known[0] == count:
            return known[1]
        kept = self._read_latest(shelf, slug)
        if len(self._known) >= MOST_KNOWN:
            self._known.clear()
        if count is not None:
            self._known[shelf, slug] = (count, kept)
        return kept

    def _read_latest(self, shelf: Shelf, slug: str) -> Kept:
        sql = "SELECT slug, sha256, number, body, at, status FROM item WHERE shelf = :shelf AND slug = :slug"
        for row in self._ask(sql, {"shelf": shelf, "slug": slug}):
            return Kept(*row)
        raise NotFound(f"There is no {shelf} {slug!r}.")

    def revision(self, shelf: Shelf, slug: str, sha256: str) -> Kept:
        """Return the latest revision of this hash."""
        where = "WHERE i.shelf = :shelf AND i.slug = :slug AND r.sha256 = :sha256 ORDER BY r.number DESC LIMIT 1"
        for row in self._ask(f"{_KEPT} {where}", {"shelf": shelf, "slug": slug, "sha256": sha256}):
            return Kept(*row)
        raise NotFound(f"The {shelf} {slug!r} has no revision {sha256}.")

    def history(self, shelf: Shelf, slug: str) -> tuple[Kept, ...]:
        """Return all revisions, oldest first."""
        where = "WHERE i.shelf = :shelf AND i.slug = :slug ORDER BY r.number"
        rows = self._ask(f"{_KEPT} {where}", {"shelf": shelf, "slug": slug})
        if not rows:
            raise NotFound(f"There is no {shelf} {slug!r}.")
        return tuple(Kept(*row) for row in rows)

    def page(self, wanted: Wanted) -> Page:
        """Return the cards that are wanted."""
        asked = question(wanted)
        rows = self._ask(asked.sql, asked.values)
        cards = tuple(row[0] for row in rows[: wanted.limit])
        return Page(cards, tuple(rows[wanted.limit - 1][1:]) if len(rows) > wanted.limit else None)

    def textures(self) -> tuple[KeptTexture, ...]:
        """Return the textures of the latest revisions."""
        sql = "SELECT i.slug, i.kind, t.version, t.key, t.looks FROM texture t JOIN item i ON i.id = t.item"
        rows = self._ask(f"{sql} ORDER BY i.slug, t.version", {})
        return tuple(KeptTexture(slug, kind, TextureKey(*rest)) for slug, kind, *rest in rows)

    def object(self, sha256: str) -> bytes:
        """Return the canonical bytes of this hash."""
        for (content,) in self._ask("SELECT content FROM object WHERE sha256 = :sha256", {"sha256": sha256}):
            return bytes(content)
        raise NotFound(f"There is no object {sha256}.")

    def changes(self, after: int, limit: int) -> tuple[Change, ...]:
        """Return what was written after this sequence number."""
        sql = "SELECT seq, at, kind, slug, sha256, event FROM change WHERE seq > :after ORDER BY seq LIMIT :limit"
        return tuple(Change(*row) for row in self._ask(sql, {"after": after, "limit": limit}))

    def put_token(self, holder: Holder) -> None:
        """Keep the hash of a token."""
        with self._writing():
            self._db.table("token").insert(asdict(holder), replace=True)

    def token(self, sha256: str) -> Holder:
        """Return whom the token of this hash stands for."""
        for row in self._ask("SELECT sha256, role, name, at FROM token WHERE sha256 = :sha256", {"sha256": sha256}):
            return Holder(*row)
        raise NotFound("There is no such token.")

    def version(self) -> str:
        """Return the name of the last migration applied."""
        sql = "SELECT name FROM _sqlite_migrations WHERE migration_set = :name ORDER BY rowid DESC LIMIT 1"
        return str(self._ask(sql, {"name": steps.name})[0][0])

    def close(self) -> None:
        """Close all connections and the lock file."""
        for connection in (*self._readers, self._writer):
            connection.close()
        self._lock.close()


def _item(entry: Entry, number: int) -> dict[str, Any]:
    """Return the row of the latest revision."""
    names = ("shelf", "slug", "kind", "sha256", "body", "card", "title", "words", "at", "status", "reversible")
    return {"number": number, **{name: getattr(entry, name) for name in names}}
