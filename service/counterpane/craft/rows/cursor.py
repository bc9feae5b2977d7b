"""A walk over tokens, with the few looks ahead that the readers need."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypeVar

from counterpane.craft.rows.phrasebook import Phrasebook
from counterpane.craft.rows.tree import Place
from counterpane.craft.rows.words import LONGEST_NUMBER, Token

Meaning = TypeVar("Meaning")
STITCH_WORDS = frozenset({"st", "sts", "stitch", "stitches", "loop", "loops", "lp", "lps"})
TIMES = {"once": 1, "twice": 2, "thrice": 3}
"""English words for how often, by definition."""

_POINTED = frozenset({"k", "p", "sl", "s", "n", "o", "kn", "pl"})
_POINTED_ANYWHERE = frozenset({"tog", "rep", "sl", "rnd", "wl", "fwd", "fd", "th", "inc", "dec", "patt", "foll"})
_POINTED_ENDS = frozenset({"wise", "fwd", "fd"})
# No sentence begins with these.
_NEVER_FIRST = frozenset({*TIMES, "of", "before", "tog", "to", "into"})
_PAUSES = frozenset({",", ";", ":"})


def without_points(run: Sequence[Token]) -> Sequence[Token]:
    """Return the tokens without the full stops of abbreviations: "k. 2, p. 2 tog." is "k 2, p 2 tog".

    A full stop behind "k" before a printed count ("K. 17 sts.") ends the sentence.
    """
    points = {at for at, token in enumerate(run) if token.norm == "." and _is_point(run, at)}
    return [token for at, token in enumerate(run) if at not in points] if points else run


def _is_point(run: Sequence[Token], at: int) -> bool:
    before = run[at - 1].norm if at else ""
    if before in _POINTED_ANYWHERE:
        return True
    behind = run[at + 1] if at + 1 < len(run) else None
    if at and behind is not None and run[at - 1].kind == "word":
        letters = len(behind.norm) == 1 or behind.norm in _POINTED_ENDS
        spelt = len(before) == 1 and letters and behind.kind == "word"
        if spelt or behind.norm in _PAUSES or behind.text in _NEVER_FIRST:
            return True
    if before not in _POINTED or behind is None or behind.value is None:
        return False
    return not (at + 2 < len(run) and run[at + 2].norm in STITCH_WORDS)


class Cursor:
    """A position in a run of tokens; methods that take words move only when all of them stand there."""

    __slots__ = ("at", "end", "run")

    def __init__(self, run: Sequence[Token]) -> None:
        self.run = run
        self.at, self.end = 0, len(run)  # Its length is asked for at every word.

    def __bool__(self) -> bool:
        return self.at < self.end

    @property
    def token(self) -> Token:
        """The token at the position; IndexError at the end."""
        return self.run[self.at]

    @property
    def pausing(self) -> bool:
        """Whether a sign stands here, or the end: nothing more is said of what came before."""
        return self.at >= self.end or self.run[self.at].kind in ("pause", "close", "star")

    def pausing_after(self) -> bool:
        """Tell whether a sign or the end follows the word that stands here."""
        behind = self.at + 1
        return behind >= self.end or self.run[behind].kind in ("pause", "close", "star")

    @property
    def place(self) -> Place:
        """Where the position stands; the last token's place at the end."""
        run = self.run
        return run[self.at if self.at < self.end else -1].place

    def word(self, ahead: int = 0) -> str:
        """Return the text `ahead` tokens on, or nothing past the end."""
        index = self.at + ahead
        return self.run[index].norm if index < self.end else ""

    def number(self, ahead: int = 0) -> int | None:
        """Return the number `ahead` tokens on, or None where none stands."""
        index = self.at + ahead
        return self.run[index].value if index < self.end else None

    def take(self, book: Phrasebook[Meaning]) -> Meaning | None:
        """Move past the longest phrase of a book that stands here and return what it means."""
        if self.at >= self.end or self.run[self.at].norm not in book.openings:
            return None  # Asked here as well, since most words begin no phrase and a call takes longer.
        length, meaning = book.longest(self.run, self.at)
        self.at += length
        return meaning

    @property
    def has_words(self) -> bool:
        """Whether any word stands from here on."""
        return any(self.run[at].kind == "word" for at in range(self.at, self.end))

    def take_word(self, *words: str) -> bool:
        """Move past one token that is one of these words."""
        if self.word() in words:
            self.at += 1
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
        """Move past "twice", "3 times", "x 3", "x3" or "3 x" and return the number."""
        word = self.word()
        if word in TIMES:
            self.at += 1
            return TIMES[word]
        if word[:1] == "x":
            return self._after_cross(word[1:])
        if self.number() is not None and self.word(1) in ("times", "time", "x"):
            self.at += 2
            return self.number(-2)
        return None

    def _after_cross(self, digits: str) -> int | None:
        if digits.isdigit() and len(digits) <= LONGEST_NUMBER:
            self.at += 1
            return int(digits)
        if not digits and self.number(1) is not None:
            self.at += 2
            return self.number(-1)
        return None

    def take_stitches(self) -> bool:
        """Move past a word for stitches."""
        return self.take_any(STITCH_WORDS)
