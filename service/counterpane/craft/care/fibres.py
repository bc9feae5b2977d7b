"""The names of fibres: which one a word on a ball band means, and what is printed for it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

Sort = Literal["animal hair", "silk", "protein", "plant", "regenerated cellulose", "synthetic", "other"]
Manner = Literal["legal", "trade", "process", "unknown"]


@dataclass(frozen=True, slots=True)
class Fibre:
    """A fibre by the name that Annex I of Regulation (EU) No 1007/2011 prints.

    `allowance` is the agreed allowance by state, `loss` what is lost before analysis by state, both in per cent of dry
    mass; `usual` is the state taken where none is told, None where it must be told. `also` may stand for the name,
    `trade` may not. `american` and `french` are None where not known.
    """

    name: str
    number: int
    sort: Sort
    allowance: Mapping[str, Fraction]
    usual: str | None = None
    loss: Mapping[str, Fraction] = field(default_factory=dict)
    also: tuple[str, ...] = ()
    trade: tuple[str, ...] = ()
    american: str | None = None
    french: str | None = None

    def increase(self, state: str | None) -> Fraction | None:
        """Return by how much dry mass is taken more, in per cent; None where the state must be told or is no state."""
        named = state or self.usual
        if named is None or named not in self.allowance:
            return None
        return self.allowance[named] + self.loss.get(named, Fraction(0))


@dataclass(frozen=True, slots=True)
class Reading:
    """What a word on a ball band means.

    `manner` is "legal" where the word may be printed, "trade" where another is printed for it, "process" where it tells
    no fibre until somebody says which of `choices` it is, "unknown" where it is no name that is known here.
    """

    word: str
    manner: Manner
    fibre: Fibre | None = None
    virgin: bool = False
    choices: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Fibres:
    """All fibres with their names, those of virgin wool, and the names that tell no fibre, each with its choices."""

    known: tuple[Fibre, ...]
    virgin: tuple[str, ...] = ()
    unclear: Mapping[str, tuple[str, ...]] = field(default_factory=dict)

    def read(self, word: str) -> Reading:
        """Return what a word means; case and spacing do not count."""
        plain = " ".join(word.casefold().split())
        if plain in self.unclear:
            return Reading(word, "process", choices=self.unclear[plain])
        if plain in self.virgin:
            return Reading(word, "legal", self.of("wool"), virgin=True)
        for fibre in self.known:
            if plain == fibre.name or plain in _plain(fibre.also):
                return Reading(word, "legal", fibre)
            if plain in _plain(fibre.trade):
                return Reading(word, "trade", fibre)
        return Reading(word, "unknown")

    def of(self, name: str) -> Fibre:
        """Return the fibre of a printed name; KeyError for none."""
        return {fibre.name: fibre for fibre in self.known}[name]

    @property
    def words(self) -> tuple[str, ...]:
        """Every word that is read as something."""
        named = (word for fibre in self.known for word in (fibre.name, *fibre.also, *fibre.trade))
        return (*named, *self.virgin, *self.unclear)


def _plain(words: Iterable[str]) -> set[str]:
    return {word.casefold() for word in words}
