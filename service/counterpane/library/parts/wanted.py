"""What a page of a store may be asked for, what it holds, and the counts of its facets."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import TypeAlias

from counterpane.craft.counts import Progression
from counterpane.craft.sizing.classes import merged
from counterpane.library.keeping.record import Shelf

Key: TypeAlias = tuple[int | str, ...]


@dataclass(frozen=True, slots=True, order=True)
class CountClass:
    """Every n from `least` to `most` with n ≡ residue (mod modulus); a modulus of 0 means n = residue alone."""

    modulus: int
    residue: int
    least: int
    most: int | None = None

    def admits(self, count: int) -> bool:
        """Say whether the count is in the class."""
        if self.modulus == 0:
            return count == self.residue
        below = self.most is None or count <= self.most
        return self.least <= count and below and count % self.modulus == self.residue

    def first(self, low: int, high: int) -> int | None:
        """Return the smallest count of the class from `low` to `high`, None where there is none."""
        if self.modulus == 0:
            return self.residue if low <= self.residue <= high else None
        start = max(low, self.least)
        count = start + (self.residue - start) % self.modulus
        return count if count <= (high if self.most is None else min(high, self.most)) else None

    def shifted(self, by: int) -> CountClass:
        """Return the class with each count larger by so much, or smaller; counts below 1 may be among them."""
        residue = self.residue + by
        most = None if self.most is None else self.most + by
        return CountClass(self.modulus, residue % self.modulus if self.modulus else residue, self.least + by, most)

    def between(self, low: int, high: int) -> CountClass | None:
        """Return the part of the class from `low` to `high`, None where there is none."""
        first = self.first(low, high)
        if first is None or self.modulus == 0:
            return None if first is None else self
        return replace(self, least=first, most=high if self.most is None else min(high, self.most))

    def common(self, other: CountClass) -> CountClass | None:
        """Return the counts that both admit, the smallest as `least`; None where there are none."""
        if self.modulus == 0 or other.modulus == 0:
            one, two = (self, other) if self.modulus == 0 else (other, self)
            return one if two.admits(one.residue) else None
        both = merged(self._endless, other._endless)
        most = min((most for most in (self.most, other.most) if most is not None), default=None)
        if both is None or (most is not None and both.least > most):
            return None
        return CountClass(both.of, both.plus, both.least, most)

    @property
    def _endless(self) -> Progression:
        return Progression(self.modulus, self.residue, self.least)


@dataclass(frozen=True, slots=True, order=True)
class Trait:
    """What an entry is looked up and counted by: a name with a word, and the number where the word is one.

    An entry may have several of one name. One that has none of a name is not known there, and answers no such question.
    """

    name: str
    word: str
    number: int | None = None


@dataclass(frozen=True, slots=True)
class Span:
    """The numbers of a trait from `low` to `high`, None for an end that is open."""

    name: str
    low: int | None
    high: int | None

    def holds(self, number: int | None) -> bool:
        """Say whether a number is among them; none is not."""
        if number is None:
            return False
        return (self.low is None or self.low <= number) and (self.high is None or number <= self.high)


@dataclass(frozen=True, slots=True)
class Wanted:
    """What a page should hold: filters, the key of the last item before it, and how many items at most.

    `traits` are names with the words of which one must be there, `spans` numbers of which one must lie within;
    `between` are two counts between which, ends included, one must be admitted, and of `meets` one class must share a
    count with the entry. `slugs` are those among which the entry must be.
    """

    shelf: Shelf
    kind: str | None = None
    admits: int | None = None
    words: tuple[str, ...] = ()
    reversible: str | None = None
    status: str | None = None
    texture: str | None = None
    openings_under_mm: int | None = None
    traits: tuple[tuple[str, tuple[str, ...]], ...] = ()
    spans: tuple[Span, ...] = ()
    between: tuple[int, int] | None = None
    meets: tuple[CountClass, ...] | None = None
    slugs: tuple[str, ...] | None = None
    after: Key | None = None
    limit: int = 50


@dataclass(frozen=True, slots=True)
class Page:
    """The cards of a page, and the key that its successor follows; None where it is the last."""

    cards: tuple[bytes, ...]
    last: Key | None


@dataclass(frozen=True, slots=True)
class Facets:
    """What a search finds, counted: under each name the entries of each word, and of how many anything is known.

    Beside the traits the names are kind, reversible, status, and `opening`, the measured openings in whole millimetres,
    rounded down. `total` are the entries that were counted, the oldest first; `whole` says that there are no more.
    """

    total: int
    whole: bool
    words: Mapping[str, Mapping[str, int]]
    known: Mapping[str, int]
