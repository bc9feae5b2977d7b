"""Writes that may be sent again: each is known by the key that its sender gave it, and done once.

The key is kept in the transaction that writes, for a day. What was refused is not kept: sent again, it is looked at
again.
"""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime, timedelta
from hashlib import sha256

from counterpane.library.errors import Gone, KeyReused, Moved, Taken
from counterpane.library.ports import Done, Once, Store

KEPT_HOURS = 24
"""How long a key is known; house."""

_TIME = "%Y-%m-%dT%H:%M:%SZ"


def once_of(name: str, sender: str, address: str, sent: bytes, now: str) -> Once:
    """Return the write that a sender calls by this name, at this method and path; `now` is UTC as RFC 3339 has it."""
    key = sha256("\0".join((sender, address, name)).encode()).hexdigest()
    since = datetime.strptime(now, _TIME) - timedelta(hours=KEPT_HOURS)
    return Once(key, sha256(sent).hexdigest(), now, since.strftime(_TIME))


def only_once(store: Store, once: Once | None, write: Callable[[], int | Done | None]) -> tuple[int, Done | None]:
    """Do a write once; return the number that it gave or 0, and what was written before under the key, if anything.

    What the write raises is raised unless another request with the same key was quicker. Raise KeyReused.
    """
    if done := _done_before(store, once):
        return done.number, done
    try:
        made = write()
    except (Gone, Moved, Taken):
        if done := _done_before(store, once):
            return done.number, done
        raise
    if isinstance(made, Done):
        return made.number, _the_same(made, once)
    return made or 0, None


def _done_before(store: Store, once: Once | None) -> Done | None:
    """Return what was written under the key, None where nothing was; raise KeyReused."""
    return _the_same(store.done(once), once) if once else None


def _the_same(done: Done | None, once: Once | None) -> Done | None:
    """Return what was written under the key, if the same was sent then; raise KeyReused."""
    if done and once and done.sent != once.sent:
        raise KeyReused("This Idempotency-Key was used before, with another body.")
    return done
