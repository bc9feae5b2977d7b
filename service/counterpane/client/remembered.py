"""What a client remembers of revisions: bytes by their hash, which never change, as many as it has room for."""

from __future__ import annotations

from collections import OrderedDict

MOST_OBJECTS = 1_000
MOST_BYTES = 32 * 2**20
"""House: so many objects and 32 MiB of them; a revision of a component has some two kilobytes."""


class Remembered:
    """Bytes by their hash. Where there is no room for more, what was asked for the longest ago makes it."""

    def __init__(self, most_objects: int = MOST_OBJECTS, most_bytes: int = MOST_BYTES) -> None:
        self._most_objects = most_objects
        self._most_bytes = most_bytes
        self._held: OrderedDict[str, bytes] = OrderedDict()
        self._bytes = 0

    def __len__(self) -> int:
        """Return how many objects are held."""
        return len(self._held)

    def get(self, sha256: str) -> bytes | None:
        """Return the bytes of a hash, None where they are not held."""
        if sha256 in self._held:
            self._held.move_to_end(sha256)
        return self._held.get(sha256)

    def keep(self, sha256: str, content: bytes) -> None:
        """Hold the bytes of a hash, unless they alone are more than there is room for."""
        if sha256 in self._held or len(content) > self._most_bytes:
            return
        self._held[sha256] = content
        self._bytes += len(content)
        while len(self._held) > self._most_objects or self._bytes > self._most_bytes:
            self._bytes -= len(self._held.popitem(last=False)[1])
