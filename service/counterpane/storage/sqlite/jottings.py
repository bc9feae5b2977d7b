"""Jottings in the file."""

from __future__ import annotations

from dataclasses import asdict
from typing import Any

from counterpane.library import acts
from counterpane.library.errors import Gone, NotFound, Stale
from counterpane.library.jottings import SHELF, Jotting, Noted
from counterpane.library.ports import Done, Once, Shelf
from counterpane.storage.sqlite.matters import MatterRows

_DONE = "SELECT shelf, slug, sha256, sent FROM done WHERE key = :key AND at >= :since"
_JOTTING = (
    'SELECT sort, recipe, revision, at, "by", whose, changed, sha256, body, taken_back, number FROM jotting WHERE'
)
_CHANGED = ("revision", "changed", "sha256", "body", "taken_back")


class JottingRows(MatterRows):
    """What is noted of patterns, and what was written under the keys of requests, in the file."""

    def done(self, once: Once) -> Done | None:
        """Return what was written under the key."""
        return next((Done(*row) for row in self._ask(_DONE, asdict(once))), None)

    def _done_before(self, once: Once | None) -> Done | None:
        """Look the key up within the transaction that writes."""
        rows = self._writer.execute(_DONE, asdict(once)).fetchall() if once else ()
        return Done(*rows[0]) if rows else None

    def _keep_done(self, once: Once | None, shelf: Shelf | str, slug: str, sha256: str) -> None:
        """Keep what is written under the key, and forget the keys of more than a day."""
        if once is None:
            return
        self._db.table("done").delete_where("at < ?", [once.since])
        row = {"key": once.key, "sent": once.sent, "at": once.at, "shelf": shelf, "slug": slug, "sha256": sha256}
        self._db.table("done").insert(row)

    def put_jotting(self, jotting: Jotting, once: Once | None = None) -> int | Done:
        """Keep a jotting and return its number; where the key was used before, what was written then."""
        with self._writing():
            if done := self._done_before(once):
                return done
            row = {name: value for name, value in asdict(jotting).items() if name != "number"}
            row |= {"by": self._person(jotting.by), "whose": self._person(jotting.whose)}
            number = int(str(self._db.table("jotting").insert(row).last_pk))
            self._keep_done(once, SHELF, str(number), jotting.sha256)
            self._log(acts.noted(jotting, number))
        return number

    def turn_jotting(self, jotting: Jotting, expected: str, by: str) -> None:
        """Keep a jotting as it is after somebody changed it or took it back."""
        with self._writing():
            rows = self._writer.execute(f"{_JOTTING} number = :number", {"number": jotting.number}).fetchall()
            before = _standing(rows, jotting.number)
            if before.sha256 != expected:
                raise Stale("Somebody changed it since you read it.", before.sha256)
            told: dict[str, Any] = {name: getattr(jotting, name) for name in _CHANGED}
            whose = self._person(jotting.whose) if jotting.whose else before.whose
            self._db.table("jotting").update(jotting.number, told | {"whose": whose})
            self._log(acts.noted_again(jotting, by))

    def jotting(self, number: int) -> Jotting:
        """Return a jotting."""
        return _standing(self._ask(f"{_JOTTING} number = :number", {"number": number}), number)

    def jottings(self, noted: Noted) -> tuple[Jotting, ...]:
        """Return those that are sought by number."""
        where = "recipe = :recipe AND sort = :sort AND number > :after AND taken_back IS NULL"
        rows = self._ask(f"{_JOTTING} {where} ORDER BY number LIMIT :limit", asdict(noted))
        return tuple(Jotting(*row) for row in rows)


def _standing(rows: list[Any], number: int) -> Jotting:
    """Return the jotting of a row, which must be there and stand."""
    if not rows:
        raise NotFound(f"There is no jotting {number}.")
    found = Jotting(*rows[0])
    if found.taken_back is not None:
        raise Gone(f"Jotting {number} was taken back: {found.taken_back}")
    return found
