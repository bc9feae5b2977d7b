"""A counter that all processes share, by which what was read before is known to be still true.

It lies in memory mapped from the lock file. A writer makes it odd before it begins and even again when all is written,
so that what was read at an even count is true as long as the count is the same: looking costs no call of the system.
A writer that dies leaves it odd; everybody then asks the database, until another write makes it even.
"""

from __future__ import annotations

import mmap
import os
import struct
from collections.abc import Iterator
from contextlib import contextmanager
from typing import IO

PLACE = 8  # The first bytes are those that are locked.
_COUNT = struct.Struct("<Q")


class Tide:
    """The counter of one store; `writing` is entered by one writer at a time, who holds the lock."""

    def __init__(self, file: IO[bytes]) -> None:
        if os.fstat(file.fileno()).st_size < mmap.PAGESIZE:
            os.truncate(file.fileno(), mmap.PAGESIZE)
        self._memory = mmap.mmap(file.fileno(), mmap.PAGESIZE)

    def still(self) -> int | None:
        """Return the count; None while something is being written, or where a writer died."""
        count: int = _COUNT.unpack_from(self._memory, PLACE)[0]
        return None if count % 2 else count

    @contextmanager
    def writing(self) -> Iterator[None]:
        """Say that something is being written; the count is another afterwards, whatever comes of it."""
        odd = _COUNT.unpack_from(self._memory, PLACE)[0] | 1
        _COUNT.pack_into(self._memory, PLACE, odd)
        try:
            yield
        finally:
            _COUNT.pack_into(self._memory, PLACE, odd + 1)

    def close(self) -> None:
        """Let go of the memory."""
        self._memory.close()
