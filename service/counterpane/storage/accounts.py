"""How many requests each caller has sent in this minute, counted for all processes that serve a library.

The counts stand in a small SQLite file of their own, so that nobody who writes to the library waits for them; a process
that is killed leaves no lock behind. Time is cut into periods, the same for everybody, and with each the accounts of
the one before are deleted. So many have an account of their own and no more: all others share one, so that nobody ever
has more than their quota.
"""

from __future__ import annotations

import os
import sqlite3
import threading
import time
from collections.abc import Callable
from hashlib import blake2b
from pathlib import Path

MOST = 50_000
"""Callers in one period who have an account of their own; house figure that bounds the file to some 4 MiB."""
WAIT_SECONDS = 1.0
"""How long a process waits for another that counts; house figure."""
POLL_SECONDS = 0.005
_SHARED = b""
_TABLE = (
    "CREATE TABLE IF NOT EXISTS account (id INTEGER PRIMARY KEY, caller BLOB UNIQUE, period INTEGER, number INTEGER)"
)
_NEXT = "number = iif(period = :period, number + 1, 1), period = :period"
_AGAIN = f"UPDATE account SET {_NEXT} WHERE caller = :caller RETURNING number"
_FIRST = f"""
INSERT INTO account (caller, period, number)
SELECT :caller, :period, 1 WHERE (SELECT max(id) FROM account) < :most
ON CONFLICT (caller) DO UPDATE SET {_NEXT} RETURNING number"""


class Accounts:
    """The accounts in one file, made by whoever comes first; `clock` counts seconds, the same in all processes.

    The file is opened with the first request, and again after a failure.
    """

    def __init__(self, path: str | Path, seconds: int, clock: Callable[[], float] = time.monotonic) -> None:
        self._path = Path(path)
        self._seconds = seconds
        self._clock = clock
        self._threads = threading.Lock()
        self._connection: sqlite3.Connection | None = None
        self._period = -1

    def count(self, caller: str) -> tuple[int, int]:
        """Count a request and return its number in this period, with the whole seconds after which that is over.

        Raise OSError where nothing can be counted.
        """
        with self._threads:
            try:
                period, spent = divmod(self._clock(), self._seconds)
                number = self._counted(_key(caller), int(period))
            except sqlite3.Error as fault:
                self._close()
                raise OSError(f"requests cannot be counted: {fault}") from fault
        return number, self._seconds - int(spent)

    def _counted(self, key: bytes, period: int) -> int:
        connection = self._connection or self._opened()
        if period != self._period:
            connection.execute("DELETE FROM account WHERE period < ? AND caller <> ?", (period, _SHARED))
            self._period = period
        for words, caller in ((_AGAIN, key), (_FIRST, key), (_AGAIN, _SHARED)):
            # All rows are fetched, so that what was counted is written before anybody hears of it.
            told = connection.execute(words, {"caller": caller, "period": period, "most": MOST}).fetchall()
            if told:
                return int(told[0][0])
        raise sqlite3.DatabaseError("the account of all others is gone")

    def _opened(self) -> sqlite3.Connection:
        """Open the file, which its owner alone may read, with the account that all may have to share."""
        os.close(os.open(self._path, os.O_RDWR | os.O_CREAT, 0o600))
        connection = sqlite3.connect(
            self._path, timeout=WAIT_SECONDS, isolation_level=None, check_same_thread=False, cached_statements=8
        )
        try:
            _log_ahead(connection)
            connection.execute("PRAGMA synchronous = OFF")  # What is lost with the machine nobody misses.
            connection.execute(_TABLE)
            connection.execute("INSERT OR IGNORE INTO account VALUES (0, ?, -1, 0)", (_SHARED,))
        except BaseException:
            connection.close()
            raise
        self._connection, self._period = connection, -1
        return connection

    def close(self) -> None:
        """Let go of the file."""
        with self._threads:
            self._close()

    def _close(self) -> None:
        if self._connection:
            self._connection.close()
        self._connection = None


def _log_ahead(connection: sqlite3.Connection) -> None:
    """Begin the log of a file that others may begin at the same moment: for that SQLite does not wait by itself."""
    until = time.monotonic() + WAIT_SECONDS
    while True:
        try:
            connection.execute("PRAGMA journal_mode = WAL")
            return
        except sqlite3.OperationalError as fault:
            if fault.sqlite_errorcode != sqlite3.SQLITE_BUSY or time.monotonic() > until:
                raise
        time.sleep(POLL_SECONDS)


def _key(caller: str) -> bytes:
    """Return what stands for a caller in the file: no address, and always as many bytes."""
    return blake2b(caller.encode("utf-8", "replace"), digest_size=16).digest()
