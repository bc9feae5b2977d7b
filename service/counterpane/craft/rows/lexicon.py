"""The names of the vocabulary as a book of phrases, and the names that a number is glued to."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from counterpane.craft.rows.phrasebook import Phrasebook
from counterpane.craft.stitches import Vocabulary

PLAIN_WORDS: Mapping[str, str] = {
    **{"k": "k", "knit": "k", "p": "p", "purl": "p", "pearl": "p"},
    **{"sl": "sl", "slip": "sl", "seam": "p", "knitted": "k", "purled": "p", "pearled": "p", "seamed": "p"},
}
GERUNDS: Mapping[str, str] = {
    **{"knitting": "k", "purling": "p", "pearling": "p", "seaming": "p", "slipping": "sl", "making": "m1"},
}
_GLUED_WORDS = {**PLAIN_WORDS, "s": "sl"}
_LETTERS_NUMBER = re.compile(r"([a-z]+(?:[/-][a-z]+)*)(\d{1,18})(?:-?(tbl|b))?")
_TAILS = {"tbl": " tbl", "b": "1b"}


@dataclass(frozen=True, slots=True, eq=False)
class Lexicon:
    """The names of a vocabulary, each with the keys it may mean."""

    names: Phrasebook[tuple[str, ...]]
    vocabulary: Vocabulary

    def glued(self, word: str) -> tuple[str, int] | None:
        """Return key and number of a word such as "k3", "k2tbl" or "yo2"; None for any other."""
        match = _LETTERS_NUMBER.fullmatch(word)
        if not match:
            return None
        name, number, tail = match.groups()
        keys = (_GLUED_WORDS[name],) if name in _GLUED_WORDS else self.vocabulary.by_name.get(name, ())
        key = keys[0] + _TAILS.get(tail, "") if keys else ""
        return (key, int(number)) if key in self.vocabulary.stitches else None


@lru_cache(maxsize=4)
def lexicon_of(vocabulary: Vocabulary) -> Lexicon:
    """Index the names of a vocabulary."""
    return Lexicon(Phrasebook(vocabulary.by_name.items()), vocabulary)
