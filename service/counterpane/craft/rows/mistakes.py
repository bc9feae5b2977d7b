"""What went wrong while reading: faults named by the slug of the rule that words them."""

from __future__ import annotations

import difflib
from collections.abc import Iterable
from dataclasses import field

from counterpane.craft.records import record
from counterpane.craft.rows.tree import Place

# House figures: which words are compared, how many of those near are, and how near is likely.
LONGEST_WORD = 40
NEAR_WORDS = 5
LIKELY = 0.6


@record
class Fault:
    """A place that the reader could not read, or could read in two ways.

    `rule` is the slug of the rule that words it, `word` the text found, `likely` what was probably meant, `readings`
    the meanings of a term that has several; `fatal` says that the row cannot be counted.
    """

    rule: str
    place: Place
    word: str = ""
    likely: str | None = None
    readings: tuple[str, ...] = ()
    fatal: bool = True
    extra: str = field(default="", compare=False)


def likely_word(word: str, known: Iterable[str]) -> str | None:
    """Return the known word nearest to this one, or None where none is near."""
    if not word or len(word) > LONGEST_WORD:
        return None
    near = difflib.get_close_matches(word, list(known), n=NEAR_WORDS, cutoff=LIKELY)
    return max(near, key=lambda name: _alike(name, word), default=None)


def _alike(one: str, other: str) -> int:
    """Return how many letters two words share from their start."""
    return next((i for i, (a, b) in enumerate(zip(one, other, strict=False)) if a != b), min(len(one), len(other)))
