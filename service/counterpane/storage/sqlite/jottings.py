"""Jottings in the file."""

from __future__ import annotations

from dataclasses import asdict
from typing import Any

from counterpane.library.errors import Gone, NotFound, Stale
from counterpane.library.keeping import acts
from counterpane.library.knitting.jottings import Jotting, Noted
from counterpane.library.ports import Done, Once
from counterpane.storage.sqlite.matters import MatterRows

_JOTTING = (
    'SELECT sort, recipe, revision, at, "by", whose, changed, sha256, body, taken_back, number FROM jotting WHERE'
)
_CHANGED = ("revision", "changed", "sha256", "body", "taken_back")


class JottingRows(MatterRows):
    """What is noted of patterns, in the file."""

    def put_jotting(self, jotting: Jotting, once: Once | None = None) -> int | Done:
        """Keep a jotting and return its number; where the key was used before, what was written then."""
        with self._writing():
            if done := self._done_before(once):
                return done
            row = {name: value for name, value in asdict(jotting).items() if name != "number"}
            row |= {"by": self._person(jotting.by), "whose": self._person(jotting.whose)}
            number = int(str(self._db.table("jotting").insert(row).last_pk))
            self._log(acts.noted(jotting, number))
            self._keep_done(jotting, once, number)
        return number

    def turn_jotting(self, jotting: Jotting, expected: str, by: str, once: Once | None = None) -> Done | None:
        """Keep a jotting as it is after somebody changed it or took it back; nothing where the key was used before."""
        with self._writing():
            if done := self._done_before(once):
                return done
            rows = self._writer.execute(f"{_JOTTING} number = :number", {"number": jotting.number}).fetchall()
            before = _standing(rows, jotting.number)
            if before.sha256 != expected:
                raise Stale("Somebody changed it since you read it.", before.sha256)
            told: dict[str, Any] = {name: getattr(jotting, name) for name in _CHANGED}
            whose = self._person(jotting.whose) if jotting.whose else before.whose
            self._db.table("jotting").update(jotting.number, told | {"whose": whose})
            self._log(acts.noted_again(jotting, by))
            self._keep_done(jotting, once, jotting.number)
        return None

    def jotting(self, number: int) -> Jotting:
        """Return a jotting."""
        return _standing(self._ask(f"{_JOTTING} number = :number", {"number": number}), number)

    def taken_back(self, number: int) -> Jotting:
        """Return what is left of a jotting that was taken back."""
        for row in self._ask(f"{_JOTTING} number = :number AND taken_back IS NOT NULL", {"number": number}):
            return Jotting(*row)
        raise NotFound(f"There is no jotting {number} that was taken back.")

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
