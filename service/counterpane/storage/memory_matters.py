"""Submissions and safety reports in memory."""

from __future__ import annotations

from dataclasses import replace

from counterpane.library.errors import Moved, NotFound, Taken
from counterpane.library.keeping import acts
from counterpane.library.keeping.record import Done, Move, Once, Retell
from counterpane.library.review.matters import Decision, Matter, Queue, Sought, place_of
from counterpane.storage.memory_record import MemoryRecord


class MemoryMatters(MemoryRecord):
    """What waits for somebody, in dictionaries."""

    def __init__(self) -> None:
        super().__init__()
        self._matters: dict[int, Matter] = {}
        self._decisions: list[tuple[int, Decision]] = []

    def put_matter(
        self, matter: Matter, move: Move | None = None, retell: Retell | None = None, once: Once | None = None
    ) -> int | Done:
        """Keep a matter with the move that it brings and return its number; nothing where the key was used before."""
        with self._lock:
            if done := self._done_before(once):
                return done
            of_it = [each for each in self._matters.values() if (each.shelf, each.slug) == (matter.shelf, matter.slug)]
            opened = any(each.lane == "review" and each.turn != "nobody" for each in of_it)
            if matter.lane == "review" and opened:
                raise Taken(f"The {matter.shelf} {matter.slug!r} is submitted already.")
            if move and retell:
                self._move(move, retell)
            number = len(self._matters) + 1
            self._matters[number] = replace(matter, by=self._person(matter.by), number=number)
            self._log(acts.handed_in(matter, number))
            self._keep_done(matter, once, number)
        return number

    def turn_matter(
        self,
        matter: Matter,
        decision: Decision | None,
        move: Move | None = None,
        retell: Retell | None = None,
        once: Once | None = None,
    ) -> Done | None:
        """Keep a matter as it is after its turn, at the next version, with the move that it brings."""
        with self._lock:
            if done := self._done_before(once):
                return done
            before = self.matter(matter.number)
            if before.version != matter.version:
                raise Moved("Somebody decided about it meanwhile.", "Look at it again.")
            if move and retell:
                self._move(move, retell)
            self._matters[matter.number] = replace(matter, by=before.by, version=matter.version + 1)
            if decision:
                self._decisions.append((matter.number, replace(decision, by=self._person(decision.by))))
            self._log(acts.turned(matter, decision))
            self._keep_done(matter, once, matter.number)
        return None

    def matter(self, number: int) -> Matter:
        """Return a matter."""
        if number not in self._matters:
            raise NotFound(f"There is no submission {number}.")
        return self._matters[number]

    def decisions(self, number: int) -> tuple[Decision, ...]:
        """Return the decisions on a matter, oldest first."""
        return tuple(each for matter, each in self._decisions if matter == number)

    def queue(self, sought: Sought) -> Queue:
        """Return a page of matters in their order."""
        with self._lock:
            found = sorted((each for each in self._matters.values() if _passes(each, sought)), key=place_of)
        rest = [each for each in found if sought.after is None or place_of(each) > sought.after]
        shown = tuple(rest[: sought.limit])
        return Queue(shown, place_of(shown[-1]) if len(rest) > sought.limit else None)


def _passes(matter: Matter, sought: Sought) -> bool:
    turned = matter.turn == sought.turn if sought.turn else matter.turn != "nobody"
    return turned and sought.lane in (None, matter.lane) and sought.slug in (None, matter.slug)
