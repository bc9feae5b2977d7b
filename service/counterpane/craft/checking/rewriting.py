"""A stretch of a text as given, cut into words with their offsets; and changes of a text, written into it.

Offsets count code points of the text from 0. Nothing is understood here.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import NamedTuple

from counterpane.craft.records import record
from counterpane.craft.rows.tree import Place
from counterpane.craft.rows.words import LINE_END, Kind, normal_lines, tokens

_ENDS = re.compile(LINE_END)


@dataclass(frozen=True, slots=True, order=True)
class Change:
    """What stands from `begin` up to `end` becomes `words`; equal offsets put words in."""

    begin: int
    end: int
    words: str


class Word(NamedTuple):
    """One word, number or sign of the text in normal form, and where it stands in the text as given."""

    kind: Kind
    norm: str
    value: int | None
    begin: int
    end: int


@record
class Stretch:
    """A stretch of a text as given: where it begins, what stands there, and its words."""

    begin: int
    text: str
    words: tuple[Word, ...]

    def changed(self, changes: Iterable[Change]) -> str:
        """Return the stretch with changes written into it."""
        return _written(self.text, changes, self.begin)

    def given(self, word: Word) -> str:
        """Return a word of the stretch as it stands in the text."""
        return self.text[word.begin - self.begin : word.end - self.begin]


def offset(text: str, place: Place) -> int:
    """Return the offset of a place; a BOM stands before the first column."""
    return line_begins(text)[place.line - 1] + place.column - 1


@lru_cache(maxsize=2)
def line_begins(text: str) -> list[int]:
    """Return the offset at which each line begins."""
    return [int(text.startswith("\ufeff")), *(match.end() for match in _ENDS.finditer(text))]


@lru_cache(maxsize=64)
def stretch(text: str, begin: int, end: int) -> Stretch:
    """Cut a stretch of a text into words; the latest are kept, since each size and each rule asks for them."""
    given = text[begin:end]
    words = [(kind, norm, value, begin + first, begin + last) for kind, norm, value, first, last in _words(given)]
    return Stretch(begin, given, tuple(map(Word._make, words)))


@lru_cache(maxsize=64)
def _words(given: str) -> tuple[Word, ...]:
    """Return the words of some text; rows that say the same are cut once."""
    starts = [0, *(match.end() for match in _ENDS.finditer(given))]
    found: list[Word] = []
    for line in normal_lines(given):
        at = starts[line.number - 1]
        for token in tokens(line):
            first, last = line.column(token.start), line.column(token.start + len(token.text) - 1)
            found.append(Word(token.kind, token.norm, token.value, at + first - 1, at + last))
    return tuple(found)


def written(text: str, changes: Iterable[Change]) -> str:
    """Return the text with changes written into it, and nothing else changed."""
    return _written(text, changes, 0)


def _written(text: str, changes: Iterable[Change], base: int) -> str:
    for change in sorted(changes, reverse=True):
        text = text[: change.begin - base] + change.words + text[change.end - base :]
    return text


def lines_with(text: str, changes: Sequence[Change], first: int, last: int) -> str:
    """Return the lines from `first` to `last`, changed, as one line without blanks around it."""
    begins = [*line_begins(text), len(text)]
    begin, end = begins[first - 1], begins[min(last, len(begins) - 1)]
    lines = _ENDS.split(_written(text[begin:end], changes, begin))
    return " ".join(filter(None, (line.strip() for line in lines)))
