"""Pulling from a peer: its history is followed line by line, and each revision is proved before it is kept.

A line moves the place in the peer's history in the transaction that keeps what it brought, so that a transfer that was
broken off goes on where it was. What is written here is never changed: a peer's revision of a name that is in use for
something else is kept apart, with its bytes.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import asdict, dataclass, replace
from typing import Protocol

from counterpane.library.errors import Gone, NotFound, NotTaken, PeerRefused
from counterpane.library.keeping.objects import canonical, digest
from counterpane.library.parts.stricter_notes import retold
from counterpane.library.ports import Change, Entry, Kept
from counterpane.library.review.standing import retelling
from counterpane.library.services import Services
from counterpane.library.sharing.following import Apart, Retold, Seen, Step
from counterpane.library.sharing.mirroring import GRAVE, Read, followed, mirrored_from, proved

WRITES = ("added", "revised")
OTHER_CONTENT = "other content"
RECIPE_APART = "its recipe is kept apart"


class Peer(Protocol):
    """Another library, asked over the network."""

    @property
    def name(self) -> str:
        """What it is called here: its host and port."""
        ...

    def changes(self, after: int) -> Iterator[Change]:
        """Give the lines of its history after a number; raise PeerRefused."""
        ...

    def object(self, change: Change) -> bytes:
        """Return the bytes of the object that a line names; raise PeerRefused."""
        ...


@dataclass(frozen=True, slots=True)
class Pulled:
    """What became of a line of a peer's history: "added", "revised", "held", "apart", "passed" or a grave state."""

    change: Change
    became: str


@dataclass(frozen=True, slots=True)
class Pulling:
    """One pull: from whom, how contents are read, and which hashes to go past though they do not prove.

    With `anew` the history is read from its beginning; what is held is not fetched again.
    """

    services: Services
    peer: Peer
    read: Read
    past: Collection[str] = ()
    anew: bool = False

    def run(self) -> Iterator[Pulled]:
        """Follow the peer's history to its end, giving each line once it is kept.

        Raise NotTaken at a revision that is not kept, PeerRefused, and Stale where another program pulls as well.
        """
        start = self.services.store.seen(self.peer.name)
        before = start.seq if start else 0
        at = 0 if self.anew else before
        met = at == 0
        for change in self.peer.changes(max(0, at - 1)):
            last = digest(canonical(asdict(change)))
            if change.seq == at and start and not self.anew:
                self._refuse_another_history(start, last)
                met = True
                continue
            if change.seq != at + 1:
                raise PeerRefused(f"The history of {self.peer.name} has no number {at + 1}.")
            step, became = self._step(change, Seen(self.peer.name, change.seq, last), before)
            self.services.store.follow(step)
            before = at = change.seq
            yield Pulled(change, became)
        if start and not met:
            self._refuse_another_history(start, "")

    def _refuse_another_history(self, start: Seen, last: str) -> None:
        if last != start.last:
            message = f"Number {start.seq} of {self.peer.name} is not what it was: it has another history."
            raise PeerRefused(message, "If it was restored or made anew, read it from its beginning with --anew.")

    def _step(self, change: Change, seen: Seen, before: int) -> tuple[Step, str]:
        try:
            return self._stepped(change, seen, before)
        except Gone:  # What the peer withdrew has no bytes there any more; a later line of its history says so.
            return Step(seen, before), "held"

    def _stepped(self, change: Change, seen: Seen, before: int) -> tuple[Step, str]:
        chain = self._chain(change)
        plain = Step(seen, before)
        is_copy = bool(chain) and mirrored_from(chain[-1]) == self.peer.name
        if change.sha256 in self.past:
            return replace(plain, apart=self._apart(change, "passed by the keeper")), "passed"
        if change.event not in WRITES or change.sha256 is None:
            return self._followed(change, chain, plain)
        if chain and change.sha256 == chain[-1].sha256 and chain[-1].status not in GRAVE:
            return plain, "held"
        if any(kept.sha256 == change.sha256 for kept in chain) and (self.anew or not is_copy):
            return plain, "held"
        if chain and not is_copy:
            return self._kept_apart(change, plain)
        return self._copied(change, chain, plain)

    def _chain(self, change: Change) -> tuple[Kept, ...]:
        try:
            return self.services.store.history(change.kind, change.slug)
        except NotFound:
            return ()

    def _copied(self, change: Change, chain: tuple[Kept, ...], plain: Step) -> tuple[Step, str]:
        if self._recipe_is_apart(change):
            return self._kept_apart(change, plain)
        entry = self._proved(change)
        if chain:
            return replace(plain, entry=entry, expected=chain[-1].sha256), "revised"
        return replace(plain, entry=entry), "added"

    def _followed(self, change: Change, chain: tuple[Kept, ...], plain: Step) -> tuple[Step, str]:
        """Follow what a peer says of where its revision stands, the latest or an earlier one that recipes may pin."""
        copies = (each for each in reversed(chain) if change.sha256 in (None, each.sha256))
        copy = next(copies, None)
        if copy is None or mirrored_from(copy) != self.peer.name:
            return plain, "held"
        move = followed(self.services, change, copy, self.peer.name)
        if move is None:
            return plain, "held"
        return replace(plain, move=move, retell=retelling(move)), move.status

    def _kept_apart(self, change: Change, plain: Step) -> tuple[Step, str]:
        if any(each.sha256 == change.sha256 for each in self.services.store.apart(change.kind, change.slug)):
            return plain, "held"
        if self._recipe_is_apart(change):
            data = self.peer.object(change)
            if digest(data) != change.sha256:
                raise NotTaken(change.sha256 or "", f"Object {change.sha256}: the bytes are not those of the hash.")
            return replace(plain, apart=self._apart(change, RECIPE_APART), content=data), "apart"
        entry = self._proved(change)
        apart, told = self._apart(change, OTHER_CONTENT), self._retold(change, entry)
        return replace(plain, apart=apart, content=entry.content, retold=told), "apart"

    def _recipe_is_apart(self, change: Change) -> bool:
        """Say whether an edition is of a recipe that stands here with another content."""
        if change.kind != "edition":
            return False
        found = {each.sha256 for each in self.services.store.apart("recipe", change.slug)}
        kept = {each.sha256 for each in self._chain(replace(change, kind="recipe"))}
        return bool(found - kept)

    def _retold(self, change: Change, other: Entry) -> Retold | None:
        """Return the component that stands here with the stricter notes of the peer's, None where it has none."""
        if change.kind != "component":
            return None
        return retold(self.services.store, self._chain(change)[-1], other, self.peer.name)

    def _apart(self, change: Change, why: str) -> Apart:
        at = self.services.now()
        return Apart(self.peer.name, change.kind, change.slug, change.sha256 or "", at, why)

    def _proved(self, change: Change) -> Entry:
        return proved(self.services, self.read, change, self.peer.object(change), self.peer.name)
