"""What the use cases ask of a store, and the values that pass between them.

A store keeps *entries* on four shelves, components, recipes, profiles and editions, each a slug with a chain of
revisions; the editions of a recipe are the chain under its slug. It knows nothing of knitting: the entry brings its
bytes, its search words, its traits and the classes of counts it admits.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal, Protocol, TypeAlias

from counterpane.library.keeping.record import Act, Done, Ledger, Once, Shelf
from counterpane.library.knitting.jottings import Jottings
from counterpane.library.parts.wanted import CountClass, Facets, Key, Page, Trait, Wanted
from counterpane.library.review.matters import Matters
from counterpane.library.sharing.records import Record

if TYPE_CHECKING:
    from counterpane.library.sharing.following import Apart, Seen, Step

__all__ = ["CountClass", "Done", "Key", "Once", "Page", "Shelf", "Wanted"]
Role: TypeAlias = Literal["reader", "contributor", "reviewer", "keeper"]
ROLES: tuple[Role, ...] = ("reader", "contributor", "reviewer", "keeper")


@dataclass(frozen=True, slots=True)
class TextureKey:
    """The texture of one set of rows: the key of what is the same up to shifts and moves, and the looks to compare.

    `looks` are the rows of its smallest upright cell from the bottom up, a letter a stitch, with "/" between them.
    """

    version: int
    key: str
    looks: str


@dataclass(frozen=True, slots=True)
class KeptTexture:
    """A texture of the latest revision of a component."""

    slug: str
    kind: str
    texture: TextureKey


@dataclass(frozen=True, slots=True)
class Entry:
    """A revision as the use cases hand it to a store.

    `content` are the canonical bytes whose SHA-256 is `sha256`; `body` is the answer to a GET and `card` its line in a
    list, both JSON bytes served untouched. `title` and `words` are searched; `title` counts for more. `opening_um` is
    the largest opening that anybody measured, in whole micrometres rounded up, None where nobody did.
    """

    shelf: Shelf
    slug: str
    kind: str
    sha256: str
    content: bytes
    body: bytes
    card: bytes
    title: str
    words: str
    at: str
    by: str
    status: str
    reversible: str | None = None
    classes: tuple[CountClass, ...] = ()
    textures: tuple[TextureKey, ...] = ()
    opening_um: int | None = None
    traits: tuple[Trait, ...] = ()


@dataclass(frozen=True, slots=True)
class Kept:
    """A revision as the store keeps it; `number` counts from 1 along the chain.

    In a history `by` is the key of who made it and `parent` the hash of the one before, None for the first.
    """

    slug: str
    sha256: str
    number: int
    body: bytes
    at: str
    status: str
    by: str = ""
    parent: str | None = None


@dataclass(frozen=True, slots=True)
class Change:
    """One line of the history of the whole store; `seq` has no gaps."""

    seq: int
    at: str
    kind: Shelf
    slug: str
    sha256: str | None
    event: str


@dataclass(frozen=True, slots=True)
class Holder:
    """Whom a token stands for. Only the hash of a token is kept.

    All tokens of one name stand for one person. `until` is the last day on which it opens anything, None for ever.
    """

    sha256: str
    role: Role
    name: str
    at: str
    until: str | None = None


class Store(Ledger, Matters, Jottings, Protocol):
    """Keeps entries. Every write is whole or not at all, and is durable once the call returns.

    Pages are ordered by slug; with `words` by age, those first that hold them all in the title; with `admits`, by
    (modulus, least, age) of the first class that admits the count. What is withdrawn is in no page, and asked for by
    its slug or its hash raises Gone. Every write adds its lines to the changes and to the audit log.
    """

    def add(self, *entries: Entry, once: Once | None = None) -> Done | None:
        """Keep these as first revisions, all or none; raise Taken for a slug in use and Busy.

        With `once` there is one entry. Where its key was used before, nothing is written, and what was is returned.
        """

    def revise(self, entry: Entry, expected: str | None, once: Once | None = None) -> Done | None:
        """Keep the next revision; raise NotFound, Stale unless the latest is `expected` (None: any), and Busy.

        Where the key of `once` was used before, nothing is written or compared, and what was written is returned.
        """

    def latest(self, shelf: Shelf, slug: str) -> Kept:
        """Return the latest revision; raise NotFound."""
        ...

    def revision(self, shelf: Shelf, slug: str, sha256: str) -> Kept:
        """Return the latest revision of this hash; raise NotFound."""
        ...

    def history(self, shelf: Shelf, slug: str) -> tuple[Kept, ...]:
        """Return all revisions, oldest first; raise NotFound."""
        ...

    def page(self, wanted: Wanted) -> Page:
        """Return the cards that are wanted."""
        ...

    def count(self, wanted: Wanted) -> int:
        """Return how many are wanted, whatever page it asks for."""
        ...

    def facets(self, wanted: Wanted, most: int) -> Facets:
        """Count what is wanted, whatever page it asks for, up to so many entries."""
        ...

    def classes(self, shelf: Shelf, slugs: Sequence[str]) -> Mapping[str, tuple[CountClass, ...]]:
        """Return the classes of the latest revisions of these slugs, in order; none for a slug that is not kept."""
        ...

    def without_traits(self, limit: int) -> tuple[Kept, ...]:
        """Return components whose traits were never kept, since an earlier version kept them."""
        ...

    def put_traits(self, found: Iterable[tuple[Kept, tuple[Trait, ...]]]) -> None:
        """Keep the traits of these components, but of those that were revised meanwhile."""

    def textures(self) -> tuple[KeptTexture, ...]:
        """Return the textures of the latest revisions, by slug and version."""
        ...

    def object(self, sha256: str) -> bytes:
        """Return the canonical bytes of this hash; raise NotFound."""
        ...

    def changes(self, after: int, limit: int) -> tuple[Change, ...]:
        """Return what was written after this sequence number, oldest first."""
        ...

    def seen(self, peer: str) -> Seen | None:
        """Return how far the history of a peer was read, None where it never was."""
        ...

    def follow(self, step: Step) -> None:
        """Take one step along a peer's history; raise Stale where another was quicker, Taken and Busy."""

    def apart(self, shelf: Shelf | None = None, slug: str | None = None) -> tuple[Apart, ...]:
        """Return what is kept apart, of a slug or of all, by peer, shelf, slug and hash."""
        ...

    def records(self) -> Iterator[Record]:
        """Give all that is kept, as it is at one moment, in the order of `records.FORMS`; tokens are not among it."""
        ...

    def restore(self, records: Iterable[Record]) -> None:
        """Keep these in a store that holds nothing, all or none; raise Taken for one that holds something, and Busy."""

    def identity(self) -> str | None:
        """Return the name by which this library is told from every other, None for one that has none.

        It gets it when it is made, and keeps it through dumps and copies. One that is restored has the name of the
        dump; where a version made it that gave none, it has none.
        """
        ...

    def secret(self) -> bytes:
        """Return the secret of this store, which stands in no dump and is told to nobody; it is never another one."""
        ...

    def last_change(self) -> int:
        """Return the number of the last line of the history, 0 where nothing was written."""
        ...

    def put_token(self, holder: Holder) -> None:
        """Keep the hash of a token with its role and name."""

    def token(self, sha256: str) -> Holder:
        """Return whom the token of this hash stands for; raise NotFound."""
        ...

    def tokens(self) -> tuple[Holder, ...]:
        """Return whom all tokens stand for, the oldest first."""
        ...

    def withdraw_token(self, sha256: str, act: Act) -> None:
        """Forget a token; raise NotFound."""

    def version(self) -> str:
        """Return the name of the last migration applied; raise Busy where the store cannot be read."""
        ...

    def close(self) -> None:
        """Let go of files and connections."""
