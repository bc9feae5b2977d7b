"""A copy of the file while it is in use, by SQLite's own online backup."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

from counterpane.library.errors import Unreadable
from counterpane.library.sharing.records import Record
from counterpane.storage.sqlite import records
from counterpane.storage.sqlite.connections import connect


@contextmanager
def back_up(source: Path, target: Path) -> Iterator[Iterator[Record]]:
    """Copy the file as it is at one moment, and give the records of the copy; raise Unreadable for a damaged copy."""
    with closing(connect(source, read_only=True)) as live, closing(sqlite3.connect(target)) as copy:
        live.backup(copy)
        copy.execute("PRAGMA journal_mode=DELETE")  # One file, with no other beside it.
        found = copy.execute("PRAGMA integrity_check").fetchone()[0]
        if found != "ok":
            raise Unreadable(f"The copy of {source.name} is damaged: {found}.", "Look after the disk of the library.")
        yield records.read(copy)
