"""The store itself: each method is one transaction or one question."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable, Iterator
from dataclasses import asdict, replace
from pathlib import Path
from typing import Any

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
    TextureKey,
)
from counterpane.library.sharing.following import Apart, Retold, Seen, Step
from counterpane.library.sharing.records import NOT_EMPTY, Record
from counterpane.storage.sqlite import records
from counterpane.storage.sqlite.connections import connect
from counterpane.storage.sqlite.jottings import JottingRows
from counterpane.storage.sqlite.searching import Searching

MOST_KNOWN = 2_000
"""Latest revisions that are kept in memory; house."""

_HOLDER = "SELECT t.sha256, t.role, p.name, t.at, t.until FROM token t JOIN person p ON p.key = t.person"
_KEPT = 'SELECT i.slug, r.sha256, r.number, r.body, r.at, r.status, r."by" FROM revision r JOIN item i ON i.id = r.item'


class SqliteStore(Searching, JottingRows):
    """Keeps everything in one file, with one connection for writing and one for each thread that reads."""

    def __init__(self, path: str | Path) -> None:
        """Open or make the file and bring its form up to date; raise Unreadable for a file of another kind."""
        self._known: dict[tuple[Shelf, str], tuple[int, Kept]] = {}
        self._textures: tuple[int, tuple[KeptTexture, ...]] | None = None
        super().__init__(path)

    def add(self, *entries: Entry, once: Once | None = None) -> Done | None:
        """Keep these as first revisions, all or none; nothing where the key was used before.

        The key is looked up and kept in the transaction that writes.
        """
        with self._writing():
            if done := self._done_before(once):
                return done
            for entry in entries:
                self._add(entry)
                self._keep_done(entry, once)
        return None

    def _add(self, entry: Entry) -> None:
        try:
            item = self._db.table("item").insert(_item(entry, number=1)).last_pk
        except sqlite3.IntegrityError:
            raise Taken(f"There is a {entry.shelf} {entry.slug!r} already.") from None
        self._write(entry, item, 1)

    def revise(self, entry: Entry, expected: str | None, once: Once | None = None) -> Done | None:
        """Keep the next revision, if the latest is the expected one; nothing where the key was used before.

        Both are looked up in the transaction that writes.
        """
        with self._writing():
            if done := self._done_before(once):
                return done
            self._revise(entry, expected)
            self._keep_done(entry, once)
        return None

    def _revise(self, entry: Entry, expected: str | None) -> None:
        item, number = self._expected(entry, expected)
        self._db.table("item").update(item, _item(entry, number + 1))
        for table in ("class", "texture", "opening", "trait", "traitless"):
            self._db.table(table).delete_where("item = ?", [item])
        self._write(entry, item, number + 1)

    def _expected(self, entry: Entry | Retold, expected: str | None) -> tuple[Any, int]:
        """Return the item of an entry and the number of its latest revision, which must be the expected one."""
        sql = "SELECT id, number, sha256 FROM item WHERE shelf = ? AND slug = ?"
        row = self._writer.execute(sql, (entry.shelf, entry.slug)).fetchone()
        if row is None:
            raise NotFound(f"There is no {entry.shelf} {entry.slug!r}.")
        item, number, current = row
        if expected is not None and current != expected:
            raise Stale(f"The {entry.shelf} {entry.slug!r} was revised since you read it.", current)
        return item, number

    def _write(self, entry: Entry, item: Any, number: int) -> None:
        self._db.table("object").insert({"sha256": entry.sha256, "content": entry.content}, ignore=True)
        fields = {name: getattr(entry, name) for name in ("sha256", "body", "at", "status")}
        self._db.table("revision").insert({"item": item, "number": number, "by": self._person(entry.by), **fields})
        if entry.classes:
            rows = ({"item": item, "kind": entry.kind, **asdict(each)} for each in entry.classes)
            self._db.table("class").insert_all(rows)
        if entry.opening_um is not None:
            self._db.table("opening").insert({"item": item, "um": entry.opening_um})
        self._add_traits(item, entry.traits)
        if entry.textures:
            self._db.table("texture").insert_all({"item": item, **asdict(each)} for each in entry.textures)
        event = "added" if number == 1 else "revised"
        self._change(Change(0, entry.at, entry.shelf, entry.slug, entry.sha256, event))
        self._log(acts.wrote(entry, number))

    def latest(self, shelf: Shelf, slug: str) -> Kept:
        """Return the latest revision, from memory where nothing has been written since it was read."""
        kept = self._latest(shelf, slug)
        if kept.status == "withdrawn":
            raise self._gone(shelf, slug, kept.sha256)
        return kept

    def _gone(self, shelf: Shelf, slug: str, sha256: str) -> Gone:
        standing = self.standing(shelf, slug, sha256)
        return Gone(
            f"The {shelf} {slug!r} was withdrawn: {standing.said if standing else 'by the library it came from'}"
        )

    def _latest(self, shelf: Shelf, slug: str) -> Kept:
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
            kept = Kept(*row)
            if kept.status == "withdrawn":
                raise self._gone(shelf, slug, sha256)
            return kept
        raise NotFound(f"The {shelf} {slug!r} has no revision {sha256}.")

    def history(self, shelf: Shelf, slug: str) -> tuple[Kept, ...]:
        """Return all revisions, oldest first."""
        where = "WHERE i.shelf = :shelf AND i.slug = :slug ORDER BY r.number"
        rows = self._ask(f"{_KEPT} {where}", {"shelf": shelf, "slug": slug})
        if not rows:
            raise NotFound(f"There is no {shelf} {slug!r}.")
        parents = [None, *(row[1] for row in rows)]
        return tuple(replace(Kept(*row), parent=parent) for row, parent in zip(rows, parents, strict=False))

    def textures(self) -> tuple[KeptTexture, ...]:
        """Return the textures of the latest revisions, from memory where nothing has been written since."""
        count = self._lock.tide.still()
        if self._textures and self._textures[0] == count:
            return self._textures[1]
        sql = "SELECT i.slug, i.kind, t.version, t.key, t.looks FROM texture t JOIN item i ON i.id = t.item"
        rows = self._ask(f"{sql} WHERE i.status != 'withdrawn' ORDER BY i.slug, t.version", {})
        found = tuple(KeptTexture(slug, kind, TextureKey(*rest)) for slug, kind, *rest in rows)
        self._textures = (count, found) if count is not None else None
        return found

    def object(self, sha256: str) -> bytes:
        """Return the canonical bytes of this hash."""
        gone = "SELECT said FROM standing WHERE sha256 = :sha256 AND status = 'withdrawn'"
        for (said,) in self._ask(gone, {"sha256": sha256}):
            raise Gone(f"What has this hash was withdrawn: {said}")
        for (content,) in self._ask("SELECT content FROM object WHERE sha256 = :sha256", {"sha256": sha256}):
            return bytes(content)
        raise NotFound(f"There is no object {sha256}.")

    def changes(self, after: int, limit: int) -> tuple[Change, ...]:
        """Return what was written after this sequence number."""
        sql = "SELECT seq, at, kind, slug, sha256, event FROM change WHERE seq > :after ORDER BY seq LIMIT :limit"
        return tuple(Change(*row) for row in self._ask(sql, {"after": after, "limit": limit}))

    def seen(self, peer: str) -> Seen | None:
        """Return how far the history of a peer was read."""
        sql = "SELECT peer, seq, last FROM peer WHERE peer = :peer"
        return next((Seen(*row) for row in self._ask(sql, {"peer": peer})), None)

    def follow(self, step: Step) -> None:
        """Take one step along a peer's history, if the one before it was the last."""
        with self._writing():
            row = self._writer.execute("SELECT seq FROM peer WHERE peer = ?", (step.seen.peer,)).fetchone()
            if (row[0] if row else 0) != step.before:
                raise Stale(f"{step.seen.peer} is being read by another program.", "")
            if step.entry and step.expected:
                self._revise(step.entry, step.expected)
            elif step.entry:
                self._add(step.entry)
            if step.move and step.retell:
                self._move(step.move, step.retell)
            if step.retold:
                self._retell(step.retold)
            if step.apart:
                self._db.table("apart").insert(asdict(step.apart), ignore=True)
                if step.content is not None:
                    row = {"sha256": step.apart.sha256, "content": step.content}
                    self._db.table("object").insert(row, ignore=True)
            self._db.table("peer").insert(asdict(step.seen), replace=True)

    def _retell(self, told: Retold) -> None:
        """Put what is told of the latest revision in the place of what was."""
        item, number = self._expected(told, told.sha256)
        self._db.table("item").update(item, {"body": told.body})
        self._db.table("revision").update((item, number), {"body": told.body})
        self._db.table("opening").delete_where("item = ?", [item])
        if told.opening_um is not None:
            self._db.table("opening").insert({"item": item, "um": told.opening_um})

    def apart(self, shelf: Shelf | None = None, slug: str | None = None) -> tuple[Apart, ...]:
        """Return what is kept apart."""
        where = "WHERE shelf = :shelf AND slug = :slug" if slug else ""
        sql = f"SELECT peer, shelf, slug, sha256, at, why FROM apart {where} ORDER BY peer, shelf, slug, sha256"
        return tuple(Apart(*row) for row in self._ask(sql, {"shelf": shelf, "slug": slug}))

    def records(self) -> Iterator[Record]:
        """Give all that is kept, read in one transaction over a connection of its own."""
        reader = connect(self._path, read_only=True)
        try:
            reader.execute("BEGIN")
            yield from records.read(reader)
        finally:
            reader.close()

    def restore(self, given: Iterable[Record]) -> None:
        """Keep these in a store that holds nothing; that it holds nothing is looked up in the transaction."""
        with self._writing():
            if records.holds_something(self._writer):
                raise Taken("The library holds something already.", NOT_EMPTY)
            records.write(self._writer, given)

    def last_change(self) -> int:
        """Return the number of the last line of the history."""
        return int(self._ask("SELECT COALESCE(MAX(seq), 0) FROM change", {})[0][0])

    def put_token(self, holder: Holder) -> None:
        """Keep the hash of a token."""
        with self._writing():
            row = {"sha256": holder.sha256, "role": holder.role, "at": holder.at, "until": holder.until}
            self._db.table("token").insert(row | {"person": self._person(holder.name)}, replace=True)
            self._log(acts.made_token(holder))

    def token(self, sha256: str) -> Holder:
        """Return whom the token of this hash stands for."""
        for row in self._ask(f"{_HOLDER} WHERE t.sha256 = :sha256", {"sha256": sha256}):
            return Holder(*row)
        raise NotFound("There is no such token.")

    def tokens(self) -> tuple[Holder, ...]:
        """Return whom all tokens stand for, the oldest first."""
        return tuple(Holder(*row) for row in self._ask(f"{_HOLDER} ORDER BY t.at, t.sha256", {}))

    def withdraw_token(self, sha256: str, act: Act) -> None:
        """Forget a token."""
        with self._writing():
            if not self._writer.execute("DELETE FROM token WHERE sha256 = ?", (sha256,)).rowcount:
                raise NotFound("There is no such token.")
            self._log(act)


def _item(entry: Entry, number: int) -> dict[str, Any]:
    """Return the row of the latest revision."""
    names = ("shelf", "slug", "kind", "sha256", "body", "card", "title", "words", "at", "status", "reversible")
    return {"number": number, **{name: getattr(entry, name) for name in names}}
