"""How the store reaches its file: one connection for writing, and one for each thread that reads."""

from __future__ import annotations

import sqlite3
import threading
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from sqlite_utils import Database

from counterpane.library.errors import Busy, Unreadable
from counterpane.storage.sqlite.connections import WriteLock, connect, transaction
from counterpane.storage.sqlite.migrations import steps


class Asking:
    """The connections to one file; what is kept in it stands in the classes that are built on this one."""

    def __init__(self, path: str | Path) -> None:
        """Open or make the file and bring its form up to date; raise Unreadable for a file of another kind."""
        self._path = Path(path)
        self._writer = connect(self._path, read_only=False)
        self._db = Database(self._writer)
        self._lock = WriteLock(self._path.with_name(self._path.name + ".lock"))
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

    def version(self) -> str:
        """Return the name of the last migration applied."""
        sql = "SELECT name FROM _sqlite_migrations WHERE migration_set = :name ORDER BY rowid DESC LIMIT 1"
        return str(self._ask(sql, {"name": steps.name})[0][0])

    def close(self) -> None:
        """Close all connections and the lock file."""
        for connection in (*self._readers, self._writer):
            connection.close()
        self._lock.close()
