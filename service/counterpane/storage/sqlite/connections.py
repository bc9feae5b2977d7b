"""Connections to the file, the one lock that writers take, and transactions.

WAL lets readers go on beside a writer. `synchronous=FULL` makes an acknowledged write survive a power cut. SQLite's own
wait for the write lock is unfair under load, so writers queue on a lock file first.
"""

from __future__ import annotations

import sqlite3
import sys
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import IO

from counterpane.library.errors import Busy, Unreadable
from counterpane.storage.sqlite.meeting import shares_count
from counterpane.storage.sqlite.tide import Tide

BUSY_SECONDS = 5
POLL_SECONDS = 0.002
MAPPED_BYTES = 256 * 1024 * 1024


def connect(path: Path, *, read_only: bool) -> sqlite3.Connection:
    """Open a connection with the settings that every connection has; raise Unreadable for a file of another kind."""
    try:
        connection = sqlite3.connect(path, timeout=BUSY_SECONDS, isolation_level=None, check_same_thread=False)
        for setting in ("journal_mode=WAL", "synchronous=FULL", "foreign_keys=ON", f"mmap_size={MAPPED_BYTES}"):
            connection.execute(f"PRAGMA {setting}")
        connection.execute(f"PRAGMA query_only={'ON' if read_only else 'OFF'}")
        connection.create_function("shares_count", 5, shares_count, deterministic=True)
    except sqlite3.OperationalError as fault:
        raise Unreadable(f"{path.name} cannot be opened: {fault}.") from fault
    except sqlite3.DatabaseError as fault:
        raise Unreadable(f"{path.name} is not a store: {fault}.") from fault
    return connection


class WriteLock:
    """One writer at a time, among the threads of this process and among processes."""

    def __init__(self, path: Path) -> None:
        path.touch()
        self._threads = threading.Lock()
        self._file = path.open("r+b")
        self.tide = Tide(self._file)

    @contextmanager
    def held(self) -> Iterator[None]:
        """Hold the lock for the block; raise Busy after five seconds of waiting."""
        until = time.monotonic() + BUSY_SECONDS
        if not self._threads.acquire(timeout=BUSY_SECONDS):
            raise Busy("The library is being written to.")
        try:
            _wait(self._file, until)
            try:
                with self.tide.writing():
                    yield
            finally:
                _unlock(self._file)
        finally:
            self._threads.release()

    def close(self) -> None:
        """Close the lock file."""
        self.tide.close()
        self._file.close()


def _wait(file: IO[bytes], until: float) -> None:
    while not _lock(file):
        if time.monotonic() > until:
            raise Busy("Another program is writing to the library.")
        time.sleep(POLL_SECONDS)


if sys.platform == "win32":
    import msvcrt

    def _lock(file: IO[bytes]) -> bool:
        file.seek(0)
        try:
            msvcrt.locking(file.fileno(), msvcrt.LK_NBLCK, 1)
        except OSError:
            return False
        return True

    def _unlock(file: IO[bytes]) -> None:
        file.seek(0)
        msvcrt.locking(file.fileno(), msvcrt.LK_UNLCK, 1)

else:
    import fcntl

    def _lock(file: IO[bytes]) -> bool:
        try:
            fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            return False
        return True

    def _unlock(file: IO[bytes]) -> None:
        fcntl.flock(file, fcntl.LOCK_UN)


@contextmanager
def transaction(connection: sqlite3.Connection) -> Iterator[None]:
    """Begin at once as a writer, commit at the end of the block, undo all of it on an error; raise Busy.

    A transaction that reads first and then writes fails at once when another has written meanwhile, whatever the busy
    timeout; BEGIN IMMEDIATE waits instead.
    """
    try:
        connection.execute("BEGIN IMMEDIATE")
    except sqlite3.OperationalError as fault:
        raise Busy("Another program is writing to the library.") from fault
    try:
        yield
        connection.execute("COMMIT")
    except BaseException:
        if connection.in_transaction:
            connection.execute("ROLLBACK")
        raise
