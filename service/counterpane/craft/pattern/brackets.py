"""One sentence for several sizes: what is alike once, and where numbers differ one for each size, "95 (113, 131)".

Sentences can be written so where they are alike but for their numbers. How the lists look is the trade's: the first
size before the brackets, the others in them.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from counterpane.craft.rows.words import NUMBER_WORD, NUMBER_WORDS

_NUMBER = re.compile(r"(?<![\d.,])(?:\d{1,3}(?:,\d{3})+|\d+(?:\.\d+)?[¼½¾]?|[¼½¾])(?!\d*[A-Za-z])")
_WORDED = re.compile(rf"\b({NUMBER_WORD})(?= times?\b)", re.IGNORECASE)
_LOOSE = (
    (re.compile(r"\bonce more\b"), "1 times more"),
    (re.compile(r"\blast (st|stitch)\b"), r"last 1 \1"),
    (re.compile(r"(?<=\b1 )(time|row|round|ridge|repeat|st|ball|end|pair)\b"), r"\1s"),
    (re.compile(r"(?<=\b1 )stitch\b"), "stitches"),
)
"""What reads otherwise for one than for several; lists are written as for several."""


@dataclass(frozen=True, slots=True)
class Cut:
    """A sentence cut at its numbers: one more stretch of words than numbers."""

    words: tuple[str, ...]
    numbers: tuple[str, ...]


def cut(text: str) -> Cut:
    """Cut a sentence at its numbers; those that belong to a word, as in k2tog, stay in it."""
    return Cut(tuple(_NUMBER.split(text)), tuple(match.group() for match in _NUMBER.finditer(text)))


def loose(text: str) -> str:
    """Return a sentence as it reads for any number: digits for number words, and the plural throughout."""
    text = _WORDED.sub(lambda match: str(NUMBER_WORDS[match[1].lower()]), text)
    for one, several in _LOOSE:
        text = one.sub(several, text)
    return text


def shape(text: str) -> tuple[str, ...]:
    """Return what sentences have in common that can be written as one."""
    return cut(loose(text)).words


def in_brackets(texts: Sequence[str]) -> str | None:
    """Return one sentence for all sizes, None where more than their numbers differs."""
    if len(set(texts)) == 1:
        return texts[0]
    for form in (str, loose):
        cuts = [cut(form(text)) for text in texts]
        if len({each.words for each in cuts}) == 1:
            lists = [_listed(numbers) for numbers in zip(*(each.numbers for each in cuts), strict=True)]
            return _joined(cuts[0].words, lists)
    return None


def _listed(numbers: Sequence[str]) -> str:
    if len(set(numbers)) == 1:
        return numbers[0]
    first, *others = (number.replace(",", "") for number in numbers)
    return f"{first} ({', '.join(others)})"


def _joined(words: Sequence[str], lists: Sequence[str]) -> str:
    """Put words and lists together; round brackets around a list become square ones, so that the two are told apart."""
    square = set(_around_lists(words, lists))
    out, at = [], 0
    for index, stretch in enumerate(words):
        for letter in stretch:
            out.append({"(": "[", ")": "]"}[letter] if at in square else letter)
            at += 1
        out.append(lists[index] if index < len(lists) else "")
    return "".join(out)


def _around_lists(words: Sequence[str], lists: Sequence[str]) -> Iterator[int]:
    """Give the places, counted over all words, of the round brackets that hold a list of several numbers."""
    opened: list[tuple[int, bool]] = []
    at = 0
    for index, stretch in enumerate(words):
        for letter in stretch:
            if letter == "(":
                opened.append((at, False))
            elif letter == ")" and opened:
                place, holds = opened.pop()
                if holds:
                    yield from (place, at)
            at += 1
        if index < len(lists) and "(" in lists[index]:
            opened = [(place, True) for place, _ in opened]
