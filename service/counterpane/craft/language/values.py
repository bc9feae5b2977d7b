"""The values in sentences: what a named place can hold, told by its name, "n" for a number, "n2" for another one."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Literal, TypeAlias

Way: TypeAlias = Literal[
    "number", "word", "words", "side", "sentence", "list", "steps", "row", "stitch", "own", "name", "names"
]
"""How a value is said: a list holds sentences between semicolons, "words" have commas between them, and steps are rows
with their sides."""

_NUMBER = r"\d[\d,]*(?:\.\d+)?[¼½¾]?|[¼½¾]"
_INCHES = r"(?:under )?(?:\d+[¼½¾]?|[¼½¾])"
SIZE = rf"\d[\d.]*(?: to \d[\d.]*)? cm(?: \({_INCHES}(?: to {_INCHES})? in\))?|{_INCHES}(?: to {_INCHES})? in\b"
"""A length or a span of lengths, in one unit or in both."""

_ANY = ".+?"
_WORD = r"[A-Za-z0-9][A-Za-z0-9 -]*"
_KINDS: Mapping[str, tuple[str, Way]] = {
    "n": (_NUMBER, "number"),
    "digits": (r"\d+", "own"),
    "own": (_ANY, "own"),
    "row": (_ANY, "row"),
    "steps": (_ANY, "steps"),
    "stitch": (r"[A-Za-z0-9/ ]+", "stitch"),
    "name": (_ANY, "name"),
    "names": (_ANY, "names"),
    "side": ("RS|WS", "side"),
    "short": ("RS|WS", "word"),
    **dict.fromkeys(("word", "level", "basis", "face", "look", "count"), (_WORD, "word")),
    "place": (r"[A-Za-z][A-Za-z -]*(?: \d+)?", "word"),
    **dict.fromkeys(("places", "risk"), (rf"{_WORD}(?:, {_WORD})*", "words")),
    **dict.fromkeys(("multiples", "rules", "risks", "spans", "changes"), (_ANY, "list")),
    **dict.fromkeys(("text", "fibres", "soaks"), (_ANY, "sentence")),
    "part": (r"[A-Z][A-Za-z -]*(?: \d+)?", "sentence"),
    "every": (r"\d+(?: or \d+)?", "sentence"),
    "size": (SIZE, "sentence"),
    "amount": (r"\d[\d,]* [a-z-]+(?: (?!in\b|along\b|on\b)[a-z]+)?", "sentence"),
    "gauge": (r"[\d.]+ sts and [^()]*?(?: \([^()]*\))?", "sentence"),
    "often": (r"once more|[a-z0-9,]+ times more", "sentence"),
}
"""What a place may hold and how that is said. By the first letters of its name, up to its number."""

_PLACE = re.compile(r"\{([a-z]+\d*)\}")


def placeholders(text: str) -> frozenset[str]:
    """Return the names of the places in a message."""
    return frozenset(_PLACE.findall(text))


def way_of(name: str) -> Way:
    """Return how the value of a place is said."""
    return _KINDS[name.rstrip("0123456789")][1]


def pattern_of(english: str) -> re.Pattern[str]:
    """Return what finds a message in a sentence, with a group for each place; KeyError for a place of no kind."""
    literal = True
    out: list[str] = []
    for piece in _PLACE.split(english):
        out.append(re.escape(piece) if literal else f"(?P<{piece}>{_KINDS[piece.rstrip('0123456789')][0]})")
        literal = not literal
    return re.compile("".join(out))


def longest_words(english: str) -> str:
    """Return the longest stretch of a message between two places: where it is missing the message does not fit."""
    return max(_PLACE.split(english)[::2], key=len)


def with_places(english: str) -> str:
    """Return a sentence of the library with places for its lengths, which are printed in the units asked for."""
    count = 0

    def place(match: re.Match[str]) -> str:
        nonlocal count
        count += 1
        return f"{{size{count}}}"

    return re.sub(SIZE, place, english)
