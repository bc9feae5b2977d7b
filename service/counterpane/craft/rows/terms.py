"""US or UK terms, told from words that only one of them uses."""

from __future__ import annotations

import re

from counterpane.craft.rows.quick import word_of
from counterpane.craft.stitches import Terms

_UK = word_of(
    *("cast(?:ing)? off", "tension", "yfwd", "yrn", "yfrn", "yon", "stocking st(?:itch)?", "skpo"),
    *("alt(?:ernate)? row", "work straight", "tog tbl"),
)
_US = word_of("bind(?:ing)? off", "bo", "gauge", "yo", "yarn over", "stockinette", "ssk", "work even")
_SMALL: dict[Terms, re.Pattern[str]] = {"uk": re.compile(rf"{_UK}\b"), "us": re.compile(rf"{_US}\b")}
_ANY_CASE = {terms: re.compile(words.pattern, re.IGNORECASE) for terms, words in _SMALL.items()}


def terms_of(text: str) -> Terms:
    """Return the terms that a text is written in; US where nothing decides."""
    small = text.lower()
    british = len(_SMALL["uk"].findall(small))
    return "uk" if british and british > len(_SMALL["us"].findall(small)) else "us"


def telling_word(text: str, terms: Terms) -> tuple[str, int] | None:
    """Return the first word that only these terms use, and its index; None where there is none."""
    found = _ANY_CASE[terms].search(text)
    return (found.group(), found.start()) if found else None
