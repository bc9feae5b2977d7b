"""A walk over tokens, with the few looks ahead that the readers need."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import lru_cache

from counterpane.craft.rows.tree import Place
from counterpane.craft.rows.words import Token

STITCH_WORDS = frozenset({"st", "sts", "stitch", "stitches", "loop", "loops", "lps"})
_TIMES = {"once": 1, "twice": 2, "thrice": 3}


@lru_cache(maxsize=256)
def _by_first(phrases: tuple[str, ...]) -> Mapping[str, tuple[tuple[str, ...], ...]]:
    """Index phrases by their first word, the longest first."""
    found: dict[str, list[tuple[str, ...]]] = {}
    for phrase in phrases:
        words = tuple(phrase.split())
        found.setdefault(words[0], []).append(words)
    return {first: tuple(sorted(runs, key=len, reverse=True)) for first, runs in found.items()}


class Cursor:
    """A position in a run of tokens; methods that take words move only when all of them stand there."""

    __slots__ = ("at", "run")

    def __init__(self, run: Sequence[Token]) -> None:
        self.run = run
        self.at = 0

    def __bool__(self) -> bool:
        return self.at < len(self.run)

    @property
    def token(self) -> Token:
        """The token at the position; IndexError at the end."""
        return self.run[self.at]

    @property
    def pausing(self) -> bool:
        """Whether a sign stands here, or the end: nothing more is said of what came before."""
        return self.at >= len(self.run) or self.run[self.at].kind in ("pause", "close", "star")

    @property
    def place(self) -> Place:
        """Where the position stands; the last token's place at the end."""
        return self.run[min(self.at, len(self.run) - 1)].place

    def word(self, ahead: int = 0) -> str:
        """Return the text `ahead` tokens on, or nothing past the end."""
        index = self.at + ahead
        return self.run[index].norm if index < len(self.run) else ""

    def number(self, ahead: int = 0) -> int | None:
        """Return the number `ahead` tokens on, or None where none stands."""
        index = self.at + ahead
        return self.run[index].value if index < len(self.run) else None

    def take(self, *phrases: str) -> bool:
        """Move past the longest of these phrases that stands here, each a run of words."""
        if self.at >= len(self.run):
            return False
        for words in _by_first(phrases).get(self.run[self.at].norm, ()):
            if all(self.word(ahead) == word for ahead, word in enumerate(words)):
                self.at += len(words)
                return True
        return False

    def take_any(self, words: frozenset[str]) -> bool:
        """Move past one token that is among these words."""
        if self.word() in words:
            self.at += 1
            return True
        return False

    def take_number(self) -> int | None:
        """Move past a number and return it."""
        value = self.number()
        if value is not None:
            self.at += 1
        return value

    def take_times(self) -> int | None:
        """Move past "twice", "3 times", "x 3" or "3 x" and return the number."""
        word = self.word()
        if word in _TIMES:
            self.at += 1
            return _TIMES[word]
        if word == "x" and self.number(1) is not None:
            self.at += 2
            return self.number(-1)
        if self.number() is not None and self.word(1) in ("times", "time", "x"):
            self.at += 2
            return self.number(-2)
        return None

    def take_stitches(self) -> bool:
        """Move past a word for stitches."""
        return self.take_any(STITCH_WORDS)
