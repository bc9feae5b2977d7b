"""A store in one SQLite file, safe for several threads and processes."""

from counterpane.storage.sqlite.store import SqliteStore

__all__ = ["SqliteStore"]
