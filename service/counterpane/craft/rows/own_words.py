"""Words that a text explains by stitches which are known: in its rows each stands for its explanation in brackets."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache

from counterpane.craft.rows.effects import total
from counterpane.craft.rows.glossary import Glossary, is_reserved
from counterpane.craft.rows.read import ReadRow, read_tokens
from counterpane.craft.rows.words import Token, normal_lines, tokens
from counterpane.craft.stitches import Terms, Vocabulary

LONGEST = 48
"""Words and signs of an explanation that is put in place of its word; house. Longer ones are left unknown."""
MOST_ENTRIES = 100
"""Explanations of a text that are looked at; house. Words of those behind them are left unknown."""


@dataclass(frozen=True, slots=True)
class OwnWords:
    """The words and signs that each word of a text's own stands for, in brackets."""

    meanings: Mapping[str, tuple[Token, ...]] = field(default_factory=dict)

    def spelt_out(self, run: Sequence[Token]) -> Sequence[Token]:
        """Return the words of a row with each own word spelt out, all of it at the place of the word."""
        if not self.meanings or self.meanings.keys().isdisjoint(token.norm for token in run):
            return run
        return [each for token in run for each in self._spelt(token)]

    def _spelt(self, token: Token) -> Iterator[Token]:
        meaning = self.meanings.get(token.norm)
        if meaning is None:
            yield token
            return
        for each in meaning:
            yield each._replace(line=token.line, start=token.start)


@lru_cache(maxsize=4)
def own_words(glossary: Glossary, vocabulary: Vocabulary, terms: Terms) -> OwnWords:
    """Return the words that a text explains, that are not known here, and whose explanation can be worked."""
    found: dict[str, tuple[Token, ...]] = {}
    for entry in glossary.entries[:MOST_ENTRIES]:
        names = [name for name in entry.names if name not in found and _is_own(name, vocabulary, terms)]
        meaning = _workable(entry.meaning, vocabulary, terms) if names else None
        found |= dict.fromkeys(names, meaning) if meaning else {}
    return OwnWords(found)


def _is_own(name: str, vocabulary: Vocabulary, terms: Terms) -> bool:
    """Tell whether a name is one word, and one that no row could use in a meaning of the trade."""
    run = _tokens(name)
    if len(run) != 1 or run[0].kind != "word" or is_reserved(name):
        return False
    read = read_tokens(run, vocabulary, terms)
    return not read.parts and any(fault.rule == "unknown-term" for fault in read.faults)


def _workable(meaning: str, vocabulary: Vocabulary, terms: Terms) -> tuple[Token, ...] | None:
    """Return an explanation in brackets, or what its last colon leads to; None where neither is closed stitches."""
    for words in dict.fromkeys((meaning, meaning.rpartition(":")[2])):
        run = _tokens(words)
        if len(run) <= LONGEST and _is_closed(read_tokens(run, vocabulary, terms), vocabulary):
            return (*_tokens("("), *run, *_tokens(")"))
    return None


def _is_closed(read: ReadRow, vocabulary: Vocabulary) -> bool:
    """Tell whether words take and leave the same number wherever they stand."""
    try:
        total(read.parts, vocabulary)
    except TypeError:
        return False
    return bool(read.parts) and read.readable and not read.whole and read.stated is None


def _tokens(text: str) -> list[Token]:
    return [token for line in normal_lines(text) for token in tokens(line)]
