"""The names of the vocabulary as runs of tokens, so that the longest name at a place is found at once."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

from counterpane.craft.rows.words import Line, Token, tokens
from counterpane.craft.stitches import Vocabulary

Name = tuple[str, ...]


@dataclass(frozen=True, slots=True, eq=False)
class Lexicon:
    """Names by their first token, the longest first, each with the keys it may mean."""

    by_first: Mapping[str, tuple[tuple[Name, tuple[str, ...]], ...]]
    vocabulary: Vocabulary

    def longest(self, run: Sequence[Token], start: int) -> tuple[int, tuple[str, ...]]:
        """Return how many tokens the longest name at `start` takes and what it may mean; (0, ()) for none."""
        if start >= len(run):
            return 0, ()
        for name, keys in self.by_first.get(run[start].norm, ()):
            end = start + len(name)
            if end <= len(run) and all(token.norm == word for token, word in zip(run[start:end], name, strict=True)):
                return len(name), keys
        return 0, ()


@lru_cache(maxsize=4)
def lexicon_of(vocabulary: Vocabulary) -> Lexicon:
    """Index the names of a vocabulary."""
    found: dict[str, list[tuple[Name, tuple[str, ...]]]] = {}
    for name, keys in vocabulary.by_name.items():
        run = tuple(token.norm for token in tokens(Line(0, name.lower())))
        if run:
            found.setdefault(run[0], []).append((run, keys))
    longest_first = {first: tuple(sorted(names, key=lambda n: -len(n[0]))) for first, names in found.items()}
    return Lexicon(longest_first, vocabulary)
