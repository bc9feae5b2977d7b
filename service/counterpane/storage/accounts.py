"""How many requests each caller has sent in this minute, counted for all processes that serve a library.

The counts lie in memory mapped from a file, behind a lock of the system, which takes it from a process that dies. Time
is cut into periods, the same for everybody, and with each the whole table is wiped: old accounts cost nothing, and the
table never grows. Callers for whom it has no place share one account, so that nobody ever has more than their quota.

Where a caller stands follows from a hash with a key: nobody can choose addresses that fall on each other, and the file
tells no address.
"""

from __future__ import annotations

import mmap
import os
import secrets
import struct
import sys
import threading
import time
from collections.abc import Callable
from hashlib import blake2b
from itertools import count
from pathlib import Path

ACCOUNTS = 32_768
"""Callers in one period; more than half of them always find a place of their own. House."""
PROBES = 128
"""Places at which a caller is looked for, one behind the other; house."""
TRIES = 20
"""How often the lock is tried at once, since whoever has it is done in a moment; house."""
WAIT_SECONDS = 1.0
POLL_SECONDS = 0.0005
KEY_BYTES = 16
_PERIOD_AT, _KEY_AT, _TABLE_AT = 8, 16, 32  # The first bytes are those that are locked.
_PERIOD = struct.Struct("<Q")
_ACCOUNT = struct.Struct(f"<{KEY_BYTES}sQ")
_SHARED = _TABLE_AT + ACCOUNTS * _ACCOUNT.size
_SIZE = _SHARED + _ACCOUNT.size
_NOBODY = bytes(KEY_BYTES)


class Accounts:
    """The accounts in one file, made by whoever comes first; `clock` counts seconds, the same in all processes.

    The file is opened with the first request, and again after a failure.
    """

    def __init__(self, path: str | Path, seconds: int, clock: Callable[[], float] = time.monotonic) -> None:
        self._path = Path(path)
        self._seconds = seconds
        self._clock = clock
        self._threads = threading.Lock()
        self._file = -1
        self._memory: mmap.mmap | None = None

    def count(self, caller: str) -> tuple[int, int]:
        """Count a request and return its number in this period, with the whole seconds after which that is over.

        Raise OSError where nothing can be counted.
        """
        with self._threads:
            memory = self._memory or self._opened()
            _hold(self._file)
            try:
                period, spent = divmod(self._clock(), self._seconds)
                _begin(memory, int(period))
                number = _counted(memory, caller)
            finally:
                _unlock(self._file)
        return number, self._seconds - int(spent)

    def _opened(self) -> mmap.mmap:
        """Map the file, which gets all its bytes at once: a disk that is full is met here and not in the memory."""
        file = os.open(self._path, os.O_RDWR | os.O_CREAT, 0o600)
        try:
            _hold(file)
            try:
                if os.fstat(file).st_size < _SIZE:
                    _fill(file)
            finally:
                _unlock(file)
            memory = mmap.mmap(file, _SIZE)
        except BaseException:
            os.close(file)
            raise
        self._file, self._memory = file, memory
        return memory

    def close(self) -> None:
        """Let go of the file."""
        with self._threads:
            if self._memory:
                self._memory.close()
                os.close(self._file)
            self._memory = None


def _fill(file: int) -> None:
    whole = memoryview(bytes(_KEY_AT) + secrets.token_bytes(KEY_BYTES) + bytes(_SIZE - _TABLE_AT))
    os.lseek(file, 0, os.SEEK_SET)
    while whole:
        whole = whole[os.write(file, whole) :]


def _begin(memory: mmap.mmap, period: int) -> None:
    """Wipe the table where it is of another period, which is noted last: who dies in between leaves it to be wiped."""
    if _PERIOD.unpack_from(memory, _PERIOD_AT)[0] != period:
        memory[_TABLE_AT:_SIZE] = bytes(_SIZE - _TABLE_AT)
        _PERIOD.pack_into(memory, _PERIOD_AT, period)


def _counted(memory: mmap.mmap, caller: str) -> int:
    key = blake2b(caller.encode("utf-8", "replace"), digest_size=KEY_BYTES, key=memory[_KEY_AT:_TABLE_AT]).digest()
    place = _place(memory, key)
    number = int(_ACCOUNT.unpack_from(memory, place)[1]) + 1
    _ACCOUNT.pack_into(memory, place, key, number)
    return number


def _place(memory: mmap.mmap, key: bytes) -> int:
    """Return where the account of a caller stands or may begin, else that which all others share."""
    first = int.from_bytes(key[:4], "little")
    for probe in range(PROBES):
        place = _TABLE_AT + (first + probe) % ACCOUNTS * _ACCOUNT.size
        if memory[place : place + KEY_BYTES] in (key, _NOBODY):
            return place
    return _SHARED


def _hold(file: int) -> None:
    """Take the lock of the file; raise TimeoutError where somebody keeps it, such as a process that was stopped."""
    until = 0.0
    for tries in count():
        if _lock(file):
            return
        if tries < TRIES:
            continue
        until = until or time.monotonic() + WAIT_SECONDS
        if time.monotonic() > until:
            raise TimeoutError("another process keeps the accounts")
        time.sleep(POLL_SECONDS)


if sys.platform == "win32":
    import msvcrt

    def _lock(file: int) -> bool:
        os.lseek(file, 0, os.SEEK_SET)
        try:
            msvcrt.locking(file, msvcrt.LK_NBLCK, 1)
        except OSError:
            return False
        return True

    def _unlock(file: int) -> None:
        os.lseek(file, 0, os.SEEK_SET)
        msvcrt.locking(file, msvcrt.LK_UNLCK, 1)

else:
    import ctypes
    import errno
    import fcntl

    # `fcntl.flock` lets other threads run meanwhile: one of them would then go on while this one has the lock, and all
    # processes would wait for it. Called like this nobody comes in between, and the lock is held for some microseconds.
    _flock = ctypes.PyDLL(None, use_errno=True).flock

    def _lock(file: int) -> bool:
        if _flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB) == 0:
            return True
        fault = ctypes.get_errno()
        if fault not in (errno.EWOULDBLOCK, errno.EINTR):
            raise OSError(fault, os.strerror(fault))
        return False

    def _unlock(file: int) -> None:
        _flock(file, fcntl.LOCK_UN)
