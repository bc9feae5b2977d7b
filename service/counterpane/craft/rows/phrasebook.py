"""Runs of words, each with what it means; of those that stand at a place the longest counts."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import lru_cache
from itertools import product
from typing import Generic, TypeAlias, TypeVar

from counterpane.craft.rows.words import Line, Token, tokens

Meaning = TypeVar("Meaning")
Said: TypeAlias = str | tuple[str, ...]
"""One phrase, or many at once: one way of each of these alternatives, one after the other."""


class _Branch(Generic[Meaning]):
    """Where some words have led: the words that may follow, and what the run up to here means.

    Phrases that begin alike are put together word by word when a text first asks for them: so a book of many thousand
    ways is made at once, and looking up a phrase costs its length.
    """

    __slots__ = ("further", "known", "meaning")

    def __init__(self, meaning: Meaning | None = None) -> None:
        self.further: dict[str, list[_Branch[Meaning]]] = {}
        self.known: dict[str, _Branch[Meaning]] = {}
        self.meaning = meaning

    def after(self, word: str) -> _Branch[Meaning] | None:
        """Return the branch behind a word, None where no phrase goes on with it."""
        known = self.known.get(word)
        if known is None and word in self.further:
            branches = self.further[word]
            known = branches[0] if len(branches) == 1 else _Branch()
            for branch in branches if len(branches) > 1 else ():
                known.join(branch)
            self.known[word] = known
        return known

    def join(self, other: _Branch[Meaning]) -> None:
        """Take in what may follow another branch; its meaning goes before an earlier one."""
        for word, branches in other.further.items():
            self.further.setdefault(word, []).extend(branches)
        self.meaning = self.meaning if other.meaning is None else other.meaning

    def lead(self, way: str, end: _Branch[Meaning]) -> None:
        """Lead the words of a way to a branch; an empty way is that branch itself."""
        words = _words(way)
        for word in reversed(words[1:]):
            step: _Branch[Meaning] = _Branch()
            step.further[word] = [end]
            end = step
        if words:
            self.further.setdefault(words[0], []).append(end)
        else:
            self.join(end)


class Phrasebook(Generic[Meaning]):
    """Phrases with what they mean; of two meanings of one phrase the later stands.

    `openings` are the words that a phrase may begin with.
    """

    __slots__ = ("_root", "openings")

    def __init__(self, phrases: Iterable[tuple[Said, Meaning]]) -> None:
        self._root: _Branch[Meaning] = _Branch()
        for said, meaning in phrases:
            branch = _Branch(meaning)
            for alternative in reversed((said,) if isinstance(said, str) else said):
                branch = _before(alternative.split("|"), branch)
            self._root.join(branch)
        self.openings = frozenset(self._root.further)

    def longest(self, run: Sequence[Token], at: int) -> tuple[int, Meaning | None]:
        """Return how many tokens the longest phrase at a place takes and what it means; (0, None) for none."""
        if at >= len(run) or run[at].norm not in self.openings:
            return 0, None  # Most words begin no phrase of a book, which its openings tell at once.
        branch, length, meaning = self._root, 0, None
        for index in range(at, len(run)):
            further = branch.after(run[index].norm)
            if further is None:
                break
            branch = further
            if branch.meaning is not None:
                length, meaning = index + 1 - at, branch.meaning
        return length, meaning


@lru_cache(maxsize=4096)
def _words(way: str) -> tuple[str, ...]:
    return tuple(token.norm for token in tokens(Line(0, way.lower())))


def _before(alternative: Iterable[str], end: _Branch[Meaning]) -> _Branch[Meaning]:
    """Return the branch from which each of these ways leads to another."""
    start: _Branch[Meaning] = _Branch()
    for way in alternative:
        start.lead(way, end)
    return start


def phrases(*said: Said) -> Phrasebook[bool]:
    """Return a book of phrases that all mean the same."""
    return Phrasebook((phrase, True) for phrase in said)


def ways(*alternatives: str) -> list[Said]:
    """Return all phrases made of one way of each: "in|into" and "next|same" are four; an empty way leaves it out."""
    return [alternatives]


def spelt(*alternatives: str) -> list[str]:
    """Return the same phrases one by one, for lists of few."""
    ways_of = [alternative.split("|") for alternative in alternatives]
    return [" ".join(filter(None, way)) for way in product(*ways_of)]
