"""Statements of a text about its counts: "Cast on 96 sts.", "(multiple of 6 sts plus 2)"."""

from __future__ import annotations

import re
from dataclasses import dataclass

from counterpane.craft.rows.tree import Place
from counterpane.craft.rows.words import LONGEST_NUMBER, NUMBER_WORDS, Line

_STITCHES = r"(?:stitches|sts?)\b"
_STS = rf"(?:\s*{_STITCHES})?"
_N = (
    rf"(\d{{1,3}}(?:,\d{{3}})+(?!\d)|\d{{1,{LONGEST_NUMBER}}}|"
    rf"{'|'.join(sorted(NUMBER_WORDS, key=len, reverse=True))})"
)
CAST_ON = re.compile(
    r"\b(?:cast(?:ing)? on|co|c\.o\.)\s*(?:(?:loosely|about|approx\w*|exactly|a total of)\s+)*"
    rf"{_N}\b((?:\s*[(\[][\d,;\s]+[)\]])?)"
)
_MULTIPLE = re.compile(
    rf"\b(?:mult(?:iples?|s)?\.? of|mult(?:iple)?\s*:|divisible by|divided by|divide by){_STS}\s+{_N}{_STS}"
    rf"((?:\s*,?\s*[(\[]?(?:\+|plus|and|adding|with|&)\s*{_N}{_STS}"
    r"(?:\s+(?:over|extra|more|edge sts?|edge stitches|for the edges?))?)*)"
)
_COUNT_ALONE = re.compile(rf"\W*(\d{{1,{LONGEST_NUMBER}}})\s*{_STITCHES}\W*$")
_EXTRA = re.compile(_N)
_PARITY = re.compile(r"\b(?:an?\s+)?(odd|uneven|even)\s+(?:number|no\.?)\b")
_ANY = re.compile(r"\bany\s+number\s+of\s+(?:sts|stitches)\b")
CASTING_ON = re.compile(r"(?:cast(?:ing)? on|co)\b")


@dataclass(frozen=True, slots=True)
class StatedCastOn:
    """A cast-on as printed; `others` are the counts of further sizes in brackets."""

    count: int
    place: Place
    others: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class StatedMultiple:
    """A multiple as printed; `plus` may be larger than `of`."""

    of: int
    plus: int
    place: Place


def _number(text: str) -> int:
    return NUMBER_WORDS.get(text) or int(text.replace(",", ""))


def cast_on_in(line: Line, start: int, end: int) -> StatedCastOn | None:
    """Find a cast-on count in a stretch of a line; a count that stands there alone is one as well ("141 sts")."""
    match = CAST_ON.search(line.text, start, end)
    if not match:
        alone = _COUNT_ALONE.match(line.text, start, end)
        return StatedCastOn(int(alone.group(1)), line.place(alone.start(1))) if alone else None
    others = tuple(int(text) for text in re.findall(rf"\d{{1,{LONGEST_NUMBER}}}", match.group(2)))
    return StatedCastOn(_number(match.group(1)), line.place(match.start(1)), others)


def multiple_in(line: Line, start: int, end: int) -> StatedMultiple | None:
    """Find a stated multiple in a stretch of a line; "an odd number of sts" is one as well."""
    if match := _MULTIPLE.search(line.text, start, end):
        plus = sum(_number(text) for text in _EXTRA.findall(match.group(2)))
        return StatedMultiple(_number(match.group(1)), plus, line.place(match.start()))
    if match := _PARITY.search(line.text, start, end):
        return StatedMultiple(2, 0 if match.group(1) == "even" else 1, line.place(match.start()))
    if match := _ANY.search(line.text, start, end):
        return StatedMultiple(1, 0, line.place(match.start()))
    return None
