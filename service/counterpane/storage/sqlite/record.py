"""Where revisions stand, people, and the audit log, in the file."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict
from typing import Any

import orjson

from counterpane.library.errors import Moved, NotFound
from counterpane.library.keeping import acts
from counterpane.library.keeping.audit import next_line
from counterpane.library.keeping.record import Act, Done, Line, Move, Once, Retell, Shelf, Standing
from counterpane.library.ports import Change
from counterpane.storage.sqlite.once import Keyed

_LINE = "SELECT seq, at, by, act, subject, detail, previous, sha256 FROM audit"
_STANDING = (
    'SELECT sha256, before, status, at, "by", because, said, replacement, until, owner FROM standing '
    "WHERE shelf = :shelf AND slug = :slug"
)


class Recording(Keyed):
    """The record of a library in its file."""

    _own_secret: bytes | None = None

    def move(self, move: Move, retell: Retell, once: Once | None = None) -> Done | None:
        """Move a revision, at each of its places in the chain; nothing where the key was used before."""
        with self._writing():
            if done := self._done_before(once):
                return done
            self._move(move, retell)
            self._keep_done(move, once)
        return None

    def _move(self, move: Move, retell: Retell) -> None:
        rows = self._rows_of(move)
        if rows[0][2] != move.before:
            raise Moved(f"The revision is {rows[0][2]} and not {move.before}: somebody moved it.")
        item = rows[0][0]
        for _, number, _, body in rows:
            told = {"status": move.status, "body": retell(body)}
            self._db.table("revision").update((item, number), told)
        latest = self._writer.execute("SELECT sha256, body, card FROM item WHERE id = ?", (item,)).fetchone()
        if latest[0] == move.sha256:
            told = {"status": move.status, "body": retell(latest[1]), "card": retell(latest[2])}
            self._db.table("item").update(item, told)
        owner = self._person(move.owner) if move.owner else None
        row = asdict(move) | {"by": self._person(move.by), "owner": owner}
        self._db.table("standing").insert(row)
        self._change(Change(0, move.at, move.shelf, move.slug, move.sha256, move.status))
        self._log(acts.moved(move))

    def _rows_of(self, move: Move) -> list[tuple[Any, ...]]:
        sql = (
            "SELECT i.id, r.number, r.status, r.body FROM revision r JOIN item i ON i.id = r.item "
            "WHERE i.shelf = :shelf AND i.slug = :slug AND r.sha256 = :sha256 ORDER BY r.number"
        )
        rows = self._writer.execute(sql, asdict(move)).fetchall()
        if not rows:
            raise NotFound(f"The {move.shelf} {move.slug!r} has no revision {move.sha256}.")
        return rows

    def standing(self, shelf: Shelf, slug: str, sha256: str) -> Standing | None:
        """Return the last move of a revision."""
        sql = f"{_STANDING} AND sha256 = :sha256 ORDER BY id DESC LIMIT 1"
        rows = self._ask(sql, {"shelf": shelf, "slug": slug, "sha256": sha256})
        return Standing(*rows[0]) if rows else None

    def standings(self, shelf: Shelf, slug: str) -> tuple[Standing, ...]:
        """Return all moves of the revisions of a slug, oldest first."""
        return tuple(Standing(*row) for row in self._ask(f"{_STANDING} ORDER BY id", {"shelf": shelf, "slug": slug}))

    def author(self, shelf: Shelf, slug: str) -> str:
        """Return the key of who added a slug."""
        sql = (
            'SELECT r."by" FROM revision r JOIN item i ON i.id = r.item '
            "WHERE i.shelf = :shelf AND i.slug = :slug AND r.number = 1"
        )
        for (by,) in self._ask(sql, {"shelf": shelf, "slug": slug}):
            return str(by)
        raise NotFound(f"There is no {shelf} {slug!r}.")

    def names(self) -> Mapping[str, str]:
        """Return the names of all people whose name is kept, by key."""
        return dict(self._ask("SELECT key, name FROM person WHERE name IS NOT NULL", {}))

    def person(self, name: str) -> str:
        """Return the key of a person."""
        for (key,) in self._ask("SELECT key FROM person WHERE name = :name", {"name": name}):
            return str(key)
        raise NotFound(f"Nobody here is called {name!r}.")

    def _person(self, name: str) -> str:
        """Return the key of a person, who gets one where there is none yet."""
        rows = self._writer.execute("SELECT key FROM person WHERE name = ?", (name,)).fetchall()
        if rows:
            return str(rows[0][0])
        (count,) = self._writer.execute("SELECT COUNT(*) FROM person").fetchone()
        key = f"p{count + 1}"
        self._db.table("person").insert({"key": key, "name": name})
        return key

    def erase(self, person: str, act: Act) -> None:
        """Forget the name of a person and withdraw the tokens."""
        with self._writing():
            found = self._writer.execute("SELECT 1 FROM person WHERE key = ? AND name IS NOT NULL", (person,))
            if not found.fetchall():
                raise NotFound("Nobody here has that key.")
            self._log(act)
            self._db.table("token").delete_where("person = ?", [person])
            self._db.table("person").update(person, {"name": None})

    def identity(self) -> str | None:
        """Return the name by which this library is told from every other."""
        return next((str(name) for (name,) in self._ask("SELECT identity FROM library", {})), None)

    def secret(self) -> bytes:
        """Return the secret of this file, from memory after the first time."""
        if self._own_secret is None:
            self._own_secret = bytes(self._ask("SELECT key FROM secret", {})[0][0])
        return self._own_secret

    def audit(self, after: int, limit: int) -> tuple[Line, ...]:
        """Return the lines of the audit log after this number, oldest first."""
        rows = self._ask(f"{_LINE} WHERE seq > :after ORDER BY seq LIMIT :limit", {"after": after, "limit": limit})
        return tuple(_line(row) for row in rows)

    def _log(self, act: Act) -> None:
        """Add a line to the audit log, within the transaction of what it tells."""
        last = self._writer.execute(f"{_LINE} ORDER BY seq DESC LIMIT 1").fetchall()
        line = next_line(act, self._person(act.by), _line(last[0]) if last else None)
        self._db.table("audit").insert(asdict(line) | {"detail": orjson.dumps(dict(line.detail)).decode()})

    def _change(self, change: Change) -> None:
        """Add a line to the changes; its number is the next one."""
        (seq,) = self._writer.execute("SELECT COALESCE(MAX(seq), 0) + 1 FROM change").fetchone()
        self._db.table("change").insert(asdict(change) | {"seq": seq})


def _line(row: tuple[Any, ...]) -> Line:
    seq, at, by, act, subject, detail, previous, sha256 = row
    return Line(seq, at, by, act, subject, orjson.loads(detail), previous, sha256)
