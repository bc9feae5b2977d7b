"""Submissions and safety reports in the file."""

from __future__ import annotations

import sqlite3
from dataclasses import asdict
from typing import Any

from counterpane.library.errors import Moved, NotFound, Taken
from counterpane.library.keeping import acts
from counterpane.library.keeping.record import Done, Move, Once, Retell
from counterpane.library.review.matters import LANES, TURNS, Decision, Matter, Queue, Sought, place_of, rank
from counterpane.storage.sqlite.record import Recording

_MATTER = 'SELECT lane, shelf, slug, sha256, at, "by", turn, since, body, number, version FROM matter'


class MatterRows(Recording):
    """What waits for somebody, in the file."""

    def put_matter(
        self, matter: Matter, move: Move | None = None, retell: Retell | None = None, once: Once | None = None
    ) -> int | Done:
        """Keep a matter with the move that it brings and return its number; nothing where the key was used before."""
        with self._writing():
            if done := self._done_before(once):
                return done
            if move and retell:
                self._move(move, retell)
            row = {name: value for name, value in asdict(matter).items() if name != "number"}
            row |= {"by": self._person(matter.by), "place": rank(matter)}
            try:
                number = int(str(self._db.table("matter").insert(row).last_pk))
            except sqlite3.IntegrityError:
                raise Taken(f"The {matter.shelf} {matter.slug!r} is submitted already.") from None
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
        with self._writing():
            if done := self._done_before(once):
                return done
            if self._version(matter.number) != matter.version:
                raise Moved("Somebody decided about it meanwhile.", "Look at it again.")
            if move and retell:
                self._move(move, retell)
            told: dict[str, Any] = {name: getattr(matter, name) for name in ("sha256", "turn", "since", "body")}
            self._db.table("matter").update(
                matter.number, told | {"version": matter.version + 1, "place": rank(matter)}
            )
            if decision:
                row = asdict(decision) | {"matter": matter.number, "by": self._person(decision.by)}
                self._db.table("decision").insert(row)
            self._log(acts.turned(matter, decision))
            self._keep_done(matter, once, matter.number)
        return None

    def _version(self, number: int) -> int:
        row = self._writer.execute("SELECT version FROM matter WHERE number = ?", (number,)).fetchone()
        if row is None:
            raise NotFound(f"There is no submission {number}.")
        return int(row[0])

    def matter(self, number: int) -> Matter:
        """Return a matter."""
        for row in self._ask(f"{_MATTER} WHERE number = :number", {"number": number}):
            return Matter(*row)
        raise NotFound(f"There is no submission {number}.")

    def decisions(self, number: int) -> tuple[Decision, ...]:
        """Return the decisions on a matter, oldest first."""
        sql = 'SELECT at, "by", decision, because, said FROM decision WHERE matter = :number ORDER BY id'
        return tuple(Decision(*row) for row in self._ask(sql, {"number": number}))

    def queue(self, sought: Sought) -> Queue:
        """Return a page of matters in their order."""
        values: dict[str, Any] = {"limit": sought.limit + 1, "slug": sought.slug}
        ranks = [
            place
            for place in range(len(LANES) * len(TURNS))
            if (sought.lane is None or LANES[place // len(TURNS)] == sought.lane)
            and (TURNS[place % len(TURNS)] == sought.turn if sought.turn else TURNS[place % len(TURNS)] != "nobody")
        ]
        where = f"place IN ({', '.join(map(str, ranks))})"
        where += " AND slug = :slug" if sought.slug is not None else ""
        if sought.after:
            lane, turn, since, number = sought.after
            values |= {"place": int(lane) * len(TURNS) + int(turn), "since": since, "number": number}
            where += " AND (place, since, number) > (:place, :since, :number)"
        rows = self._ask(f"{_MATTER} WHERE {where} ORDER BY place, since, number LIMIT :limit", values)
        found = tuple(Matter(*row) for row in rows[: sought.limit])
        return Queue(found, place_of(found[-1]) if len(rows) > sought.limit else None)
