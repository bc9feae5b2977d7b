"""Where revisions stand, people, and the audit log, in memory."""

from __future__ import annotations

import threading
from collections.abc import Mapping
from dataclasses import asdict, dataclass, field, replace
from uuid import uuid4

from counterpane.library.errors import Gone, Moved, NotFound
from counterpane.library.keeping import acts
from counterpane.library.keeping.audit import next_line
from counterpane.library.keeping.record import Act, Done, Line, Move, Once, Retell, Shelf, Standing, new_secret
from counterpane.library.knitting.jottings import Jotting
from counterpane.library.ports import Change, Entry, Holder, Kept
from counterpane.library.review.matters import Matter


@dataclass(slots=True)
class Item:
    """A slug with its latest revision as it was handed in, and the chain as it is kept."""

    number: int
    entry: Entry
    revisions: list[Kept] = field(default_factory=list)


class MemoryRecord:
    """The record of a library in lists and dictionaries, behind the lock of the store."""

    def __init__(self) -> None:
        self._lock = threading.RLock()
        self._items: dict[tuple[Shelf, str], Item] = {}
        self._identity: str | None = uuid4().hex
        self._secret = new_secret()
        self._changes: list[Change] = []
        self._people: dict[str, str | None] = {}
        self._tokens: dict[str, Holder] = {}
        self._standings: list[tuple[Shelf, str, Standing]] = []
        self._lines: list[Line] = []
        self._done: dict[str, tuple[str, Done]] = {}

    def done(self, once: Once) -> Done | None:
        """Return what was written under the key."""
        at, done = self._done.get(once.key, ("", None))
        return done if at >= once.since else None

    def _done_before(self, once: Once | None) -> Done | None:
        return self.done(once) if once else None

    def _keep_done(self, written: Entry | Move | Matter | Jotting, once: Once | None, number: int = 0) -> None:
        if once:
            done = Done(written.shelf, written.slug, written.sha256, once.sent, number)
            self._done[once.key] = once.at, done

    def move(self, move: Move, retell: Retell, once: Once | None = None) -> Done | None:
        """Move a revision, at each of its places in the chain; nothing where the key was used before."""
        with self._lock:
            if done := self._done_before(once):
                return done
            self._move(move, retell)
            self._keep_done(move, once)
        return None

    def _move(self, move: Move, retell: Retell) -> None:
        item = self._item(move.shelf, move.slug)
        places = [place for place, kept in enumerate(item.revisions) if kept.sha256 == move.sha256]
        if not places:
            raise NotFound(f"The {move.shelf} {move.slug!r} has no revision {move.sha256}.")
        if item.revisions[places[0]].status != move.before:
            message = f"The revision is {item.revisions[places[0]].status} and not {move.before}: somebody moved it."
            raise Moved(message)
        for place in places:
            kept = item.revisions[place]
            item.revisions[place] = replace(kept, status=move.status, body=retell(kept.body))
        if item.entry.sha256 == move.sha256:
            body, card = retell(item.entry.body), retell(item.entry.card)
            item.entry = replace(item.entry, status=move.status, body=body, card=card)
        owner = self._person(move.owner) if move.owner else None
        told = {name: value for name, value in asdict(move).items() if name not in ("shelf", "slug")}
        standing = Standing(**told | {"by": self._person(move.by), "owner": owner})
        self._standings.append((move.shelf, move.slug, standing))
        self._change(Change(0, move.at, move.shelf, move.slug, move.sha256, move.status))
        self._log(acts.moved(move))

    def standing(self, shelf: Shelf, slug: str, sha256: str) -> Standing | None:
        """Return the last move of a revision."""
        found = [each for each in self.standings(shelf, slug) if each.sha256 == sha256]
        return found[-1] if found else None

    def standings(self, shelf: Shelf, slug: str) -> tuple[Standing, ...]:
        """Return all moves of the revisions of a slug, oldest first."""
        return tuple(each for *name, each in self._standings if name == [shelf, slug])

    def author(self, shelf: Shelf, slug: str) -> str:
        """Return the key of who added a slug."""
        return self._item(shelf, slug).revisions[0].by

    def names(self) -> Mapping[str, str]:
        """Return the names of all people whose name is kept, by key."""
        return {key: name for key, name in self._people.items() if name is not None}

    def person(self, name: str) -> str:
        """Return the key of a person."""
        for key, known in self._people.items():
            if known == name:
                return key
        raise NotFound(f"Nobody here is called {name!r}.")

    def _person(self, name: str) -> str:
        """Return the key of a person, who gets one where there is none yet."""
        try:
            return self.person(name)
        except NotFound:
            key = f"p{len(self._people) + 1}"
            self._people[key] = name
            return key

    def erase(self, person: str, act: Act) -> None:
        """Forget the name of a person and withdraw the tokens."""
        with self._lock:
            name = self._people.get(person)
            if name is None:
                raise NotFound("Nobody here has that key.")
            self._log(act)
            self._tokens = {key: each for key, each in self._tokens.items() if each.name != name}
            self._people[person] = None

    def audit(self, after: int, limit: int) -> tuple[Line, ...]:
        """Return the lines of the audit log after this number, oldest first."""
        return tuple(self._lines[after : after + limit])

    def _log(self, act: Act) -> None:
        self._lines.append(next_line(act, self._person(act.by), self._lines[-1] if self._lines else None))

    def identity(self) -> str | None:
        """Return the name by which this library is told from every other."""
        return self._identity

    def secret(self) -> bytes:
        """Return the secret of this store."""
        return self._secret

    def _change(self, change: Change) -> None:
        self._changes.append(replace(change, seq=len(self._changes) + 1))

    def _item(self, shelf: Shelf, slug: str) -> Item:
        try:
            return self._items[shelf, slug]
        except KeyError:
            raise NotFound(f"There is no {shelf} {slug!r}.") from None

    def _told(self, shelf: Shelf, kept: Kept) -> Kept:
        """Return a revision; raise Gone for one that was withdrawn."""
        if kept.status == "withdrawn":
            standing = self.standing(shelf, kept.slug, kept.sha256)
            said = standing.said if standing else "by the library it came from"
            raise Gone(f"The {shelf} {kept.slug!r} was withdrawn: {said}")
        return kept
