"""What every kept noun shares: slugs on a shelf, each with a chain of revisions, and nothing kept that does not prove.

A noun brings the one function that proves a content and makes an entry of it. What more it can do stands in its module.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from counterpane.craft.findings import Finding
from counterpane.library.errors import Refused, Stale, Taken
from counterpane.library.keeping.once import only_once
from counterpane.library.ports import Done, Entry, Kept, Once, Shelf
from counterpane.library.services import Services

UNEXPLAINED = "does-not-prove"
"""The rule of a finding that no reading or counting rule explains."""


def as_kept(_: Services, kept: Kept) -> Kept:
    """Return a revision of which nothing is derived."""
    return kept


@dataclass(frozen=True, slots=True)
class Keeping:
    """A noun that is kept on a shelf of its own.

    `entry_of` proves a content, by whom it is sent and of which status, and raises what does not hold. `told` returns a
    revision as it is told, with what was not derived when it was kept.
    """

    shelf: Shelf
    entry_of: Callable[[Services, Mapping[str, Any], str, str], Entry]
    told: Callable[[Services, Kept], Kept] = as_kept

    def get(self, services: Services, slug: str) -> Kept:
        """Return the latest revision as it is told; raise NotFound."""
        return self.told(services, self.latest(services, slug))

    def latest(self, services: Services, slug: str) -> Kept:
        """Return the latest revision as it is kept, for its hash and its state; raise NotFound."""
        return services.store.latest(self.shelf, slug)

    def revision(self, services: Services, slug: str, sha256: str) -> Kept:
        """Return the revision of this hash as it is told; raise NotFound."""
        return self.told(services, services.store.revision(self.shelf, slug, sha256))

    def history(self, services: Services, slug: str) -> tuple[Kept, ...]:
        """Return all revisions, oldest first; raise NotFound."""
        return services.store.history(self.shelf, slug)

    def add(self, services: Services, content: Mapping[str, Any], by: str, status: str = "draft") -> Kept:
        """Keep a first revision; raise what `entry_of` raises, Taken, Unkeepable and Busy."""
        entry = self.entry_of(services, content, by, status)
        services.store.add(entry)
        return self.get(services, entry.slug)

    def create(self, services: Services, slug: str, content: Mapping[str, Any], by: str) -> Kept:
        """Keep a first revision under this slug; raise what `add` raises, and Stale where somebody was quicker."""
        self._refuse_another(slug, content["slug"])
        try:
            return self.add(services, content, by)
        except Taken:
            message = f"There is a {self.shelf} {slug!r} already."
            raise Stale(message, self.latest(services, slug).sha256) from None

    def add_once(self, services: Services, content: Mapping[str, Any], by: str, once: Once | None) -> tuple[Kept, bool]:
        """Keep a first revision, or return the one that was kept under this key; say whether it was kept before.

        Raise what `add` raises, and KeyReused.
        """

        def added() -> Done | None:
            return services.store.add(self.entry_of(services, content, by, "draft"), once=once)

        _, done = only_once(services.store, once, added)
        if done is None:
            return self.get(services, content["slug"]), False
        return self.revision(services, done.slug, done.sha256), True

    def revise(self, services: Services, slug: str, content: Mapping[str, Any], expected: str | None, by: str) -> Kept:
        """Keep the next revision, a draft; the same content again changes nothing.

        A content that was kept before stands where it stood then, and one that was withdrawn is Gone. Raise what `add`
        raises, NotFound, and Stale unless the latest revision is the expected one.
        """
        latest = self.latest(services, slug)
        self._refuse_another(slug, content["slug"])
        entry = self.entry_of(services, content, by, "draft")
        if standing := services.store.standing(self.shelf, slug, entry.sha256):
            services.store.revision(self.shelf, slug, entry.sha256)
            entry = self.entry_of(services, content, by, standing.status)
        if entry.sha256 != latest.sha256 or latest.sha256 != (expected or latest.sha256):
            services.store.revise(entry, expected)
        return self.get(services, slug)

    def _refuse_another(self, slug: str, other: str) -> None:
        if other != slug:
            message = f"The slug is {other!r}, and the {self.shelf} is kept as {slug!r}."
            hint = f"Leave the slug as it is, or add another {self.shelf}."
            finding = Finding(UNEXPLAINED, "error", message, hint, pointer="/slug")
            raise Refused("The slug cannot change.", (finding,))
