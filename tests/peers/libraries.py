"""Libraries served on the loopback address, edits that somebody might make in one, and pulls that break off."""

from __future__ import annotations

import random
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import orjson

from counterpane import lending, wiring
from counterpane.craft.component import content_of
from counterpane.library.keeping import recipes
from counterpane.library.parts import components
from counterpane.library.ports import Change
from counterpane.library.safety import kept_profiles
from counterpane.library.services import Services
from counterpane.library.sharing.pulling import Pulled, Pulling
from counterpane.peers import HttpPeer, open_peer, read
from counterpane.seeding import load_components
from counterpane.seeding.recipes import load_recipes

FIRST = ("long-tail", "plain-bind-off", "garter-border", "waffle", "slipped-selvedge", "garter", "basket-weave")


@dataclass
class Library:
    """A library with the address at which it is served."""

    services: Services
    address: str

    def held(self) -> set[tuple[str, str, str]]:
        """Return each revision that it holds, in a chain or apart: its shelf, slug and hash."""
        chains = {(each.kind, each.slug, each.sha256 or "") for each in self.services.store.changes(0, 10_000)}
        return chains | {(each.shelf, each.slug, each.sha256) for each in self.services.store.apart()}


@contextmanager
def served(path: str | Path = wiring.IN_MEMORY) -> Iterator[Library]:
    """Serve an empty library for a block."""
    services = wiring.open_library(path, starters=False)
    with lending.served(services) as address:
        yield Library(services, address)


SEEDS: dict[str, dict[str, Any]] = {each.slug: content_of(each) for each in load_components() if each.slug in FIRST}


def furnish(library: Library) -> None:
    """Put the parts of a blanket into a library."""
    for slug in FIRST:
        components.add(library.services, SEEDS[slug], "anna")


def edit(library: Library, chance: random.Random) -> None:
    """Make one edit that somebody might make: a component, a recipe or a list is added or revised."""
    services, number = library.services, chance.randrange(10**6)
    what = chance.choice(("component", "component", "recipe", "profile"))
    if what == "component":
        slug = chance.choice(("garter", "waffle", *(f"body-{each}" for each in range(4))))
        changed = SEEDS["waffle" if slug == "waffle" else "garter"] | {"slug": slug, "summary": f"Edit {number}."}
        keep(components.COMPONENTS, services, changed)
    elif what == "profile":
        items = [{"says": "Under half a kilo.", "input": "mass_g", "at_most": number + 1}]
        content = {"slug": f"ward-{number % 3}", "name": "Ward", "dated": "2026-10-01", "source": "asked"}
        keep(kept_profiles.PROFILES, services, content | {"items": items})
    else:
        first = next(each for each in load_recipes() if each["slug"] == "first-frost")
        keep(recipes.RECIPES, services, first | {"slug": f"frost-{number % 3}", "summary": f"Edit {number}."})


def keep(keeping: Any, services: Services, content: dict[str, Any]) -> None:
    """Add a content, or make it the next revision."""
    if any(each.slug == content["slug"] and each.kind == keeping.shelf for each in services.store.changes(0, 10_000)):
        keeping.revise(services, content["slug"], content, None, "anna")
    else:
        keeping.add(services, content, "anna")


@contextmanager
def asked(library: Library) -> Iterator[HttpPeer]:
    """Give a served library as a peer that may be asked."""
    peer = open_peer(library.address, library.address)
    try:
        yield peer
    finally:
        peer.close()


def pull(into: Library, library: Library, **how: Any) -> list[Pulled]:
    """Pull all there is, and return what became of each line."""
    with asked(library) as peer:
        return list(Pulling(into.services, peer, read, **how).run())


class Killed(Exception):
    """The transfer was broken off."""


@dataclass
class FailingPeer:
    """A peer whose answers break off after some calls, as a killed transfer does."""

    inner: Any
    calls: int
    fetched: list[str] = field(default_factory=list)

    @property
    def name(self) -> str:
        """The name of the peer."""
        return str(self.inner.name)

    def _call(self) -> None:
        self.calls -= 1
        if self.calls < 0:
            raise Killed

    def changes(self, after: int) -> Iterator[Change]:
        """Give lines until it breaks off."""
        for change in self.inner.changes(after):
            self._call()
            yield change

    def object(self, change: Change) -> bytes:
        """Return an object, or break off before or after it came."""
        self._call()
        data: bytes = self.inner.object(change)
        self.fetched.append(change.sha256 or "")
        self._call()
        return data


@dataclass
class LocalPeer:
    """A library asked in process, for many transfers."""

    services: Services
    name: str

    def changes(self, after: int) -> Iterator[Change]:
        """Give the lines of its history."""
        yield from self.services.store.changes(after, 10_000)

    def object(self, change: Change) -> bytes:
        """Return an object."""
        return self.services.store.object(change.sha256 or "")


def killed_pulls(into: Library, peer: Any, chance: random.Random) -> int:
    """Pull until nothing is left, breaking each transfer off at a random place; return how many were broken off."""
    broken = 0
    while True:
        try:
            for _ in Pulling(into.services, FailingPeer(peer, chance.randrange(1, 12)), read).run():
                pass
        except Killed:
            broken += 1
        else:
            return broken


def body_of(library: Library, slug: str) -> dict[str, Any]:
    """Return what is told of a component."""
    told: dict[str, Any] = orjson.loads(components.get(library.services, slug).body)
    return told
