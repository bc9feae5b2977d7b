"""Runs of words, each with what it means; of those that stand at a place the longest counts."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Generic, TypeVar

from counterpane.craft.rows.words import Line, Token, tokens

Meaning = TypeVar("Meaning")


class _Branch(Generic[Meaning]):
    """The words that may follow, and what the run up to here means."""

    __slots__ = ("further", "meaning")

    def __init__(self) -> None:
        self.further: dict[str, _Branch[Meaning]] = {}
        self.meaning: Meaning | None = None


class Phrasebook(Generic[Meaning]):
    """Phrases as a tree of their words: looking one up costs its length, however many there are.

    `openings` are the words that a phrase may begin with.
    """

    __slots__ = ("_root", "openings")

    def __init__(self, phrases: Iterable[tuple[str, Meaning]]) -> None:
        self._root: _Branch[Meaning] = _Branch()
        for phrase, meaning in phrases:
            branch = self._root
            for token in tokens(Line(0, phrase.lower())):
                branch = branch.further.setdefault(token.norm, _Branch())
            branch.meaning = meaning
        self.openings = frozenset(self._root.further)

    def longest(self, run: Sequence[Token], at: int) -> tuple[int, Meaning | None]:
        """Return how many tokens the longest phrase at a place takes and what it means; (0, None) for none."""
        first = self._root.further.get(run[at].norm) if at < len(run) else None
        if first is None:
            return 0, None
        branch, meaning = first, first.meaning
        length = 0 if meaning is None else 1
        for index in range(at + 1, len(run)):
            further = branch.further.get(run[index].norm)
            if further is None:
                break
            branch = further
            if branch.meaning is not None:
                length, meaning = index + 1 - at, branch.meaning
        return length, meaning


def phrases(*said: str) -> Phrasebook[bool]:
    """Return a book of phrases that all mean the same."""
    return Phrasebook((phrase, True) for phrase in said)


def ways(*alternatives: str) -> list[str]:
    """Return all phrases made of one way of each: "in|into" and "next|same" give four; an empty way leaves it out."""
    out = [""]
    for alternative in alternatives:
        out = [f"{said} {way}".strip() for said in out for way in alternative.split("|")]
    return out
