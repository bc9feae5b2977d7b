"""What was written under the key of a request, in the file; looked up and kept in the transaction that writes."""

from __future__ import annotations

from dataclasses import asdict

from counterpane.library.keeping.record import Done, Move, Once
from counterpane.library.knitting.jottings import Jotting
from counterpane.library.ports import Entry
from counterpane.library.review.matters import Matter
from counterpane.storage.sqlite.asking import Asking

_DONE = "SELECT shelf, slug, sha256, sent, number FROM done WHERE key = :key AND at >= :since"


class Keyed(Asking):
    """The keys of requests."""

    def done(self, once: Once) -> Done | None:
        """Return what was written under the key."""
        return next((Done(*row) for row in self._ask(_DONE, asdict(once))), None)

    def _done_before(self, once: Once | None) -> Done | None:
        rows = self._writer.execute(_DONE, asdict(once)).fetchall() if once else ()
        return Done(*rows[0]) if rows else None

    def _keep_done(self, written: Entry | Move | Matter | Jotting, once: Once | None, number: int = 0) -> None:
        if once is None:
            return
        self._db.table("done").delete_where("at < ?", [once.since])
        row = {"key": once.key, "sent": once.sent, "at": once.at, "number": number}
        self._db.table("done").insert(row | {name: getattr(written, name) for name in ("shelf", "slug", "sha256")})
