"""Jottings in memory."""

from __future__ import annotations

from dataclasses import replace

from counterpane.library.errors import Gone, NotFound, Stale
from counterpane.library.keeping import acts
from counterpane.library.knitting.jottings import Jotting, Noted
from counterpane.library.ports import Done, Once
from counterpane.storage.memory_matters import MemoryMatters


class MemoryJottings(MemoryMatters):
    """What is noted of patterns, in dictionaries."""

    def __init__(self) -> None:
        super().__init__()
        self._jottings: dict[int, Jotting] = {}

    def put_jotting(self, jotting: Jotting, once: Once | None = None) -> int | Done:
        """Keep a jotting and return its number; where the key was used before, what was written then."""
        with self._lock:
            if done := self._done_before(once):
                return done
            number = len(self._jottings) + 1
            by, whose = self._person(jotting.by), self._person(jotting.whose)
            self._jottings[number] = replace(jotting, by=by, whose=whose, number=number)
            self._log(acts.noted(jotting, number))
            self._keep_done(jotting, once, number)
        return number

    def turn_jotting(self, jotting: Jotting, expected: str, by: str, once: Once | None = None) -> Done | None:
        """Keep a jotting as it is after somebody changed it or took it back; nothing where the key was used before."""
        with self._lock:
            if done := self._done_before(once):
                return done
            before = self.jotting(jotting.number)
            if before.sha256 != expected:
                raise Stale("Somebody changed it since you read it.", before.sha256)
            whose = self._person(jotting.whose) if jotting.whose else before.whose
            kept = replace(jotting, by=before.by, whose=whose, at=before.at)
            self._jottings[jotting.number] = kept
            self._log(acts.noted_again(jotting, by))
            self._keep_done(jotting, once, jotting.number)
        return None

    def jotting(self, number: int) -> Jotting:
        """Return a jotting."""
        found = self._jottings.get(number)
        if found is None:
            raise NotFound(f"There is no jotting {number}.")
        if found.taken_back is not None:
            raise Gone(f"Jotting {number} was taken back: {found.taken_back}")
        return found

    def taken_back(self, number: int) -> Jotting:
        """Return what is left of a jotting that was taken back."""
        found = self._jottings.get(number)
        if found is None or found.taken_back is None:
            raise NotFound(f"There is no jotting {number} that was taken back.")
        return found

    def jottings(self, noted: Noted) -> tuple[Jotting, ...]:
        """Return those that are sought by number."""
        found = (each for each in sorted(self._jottings.items()) if each[0] > noted.after)
        stand = [each for _, each in found if each.taken_back is None]
        return tuple(each for each in stand if (each.sort, each.recipe) == (noted.sort, noted.recipe))[: noted.limit]
