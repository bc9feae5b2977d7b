"""JSON bodies: limits first, then syntax, then values with their decimal text kept.

Two readers look at each body. orjson is strict where the standard library is not: it refuses NaN, bad UTF-8, lone
surrogates and numbers like 1e400. But it makes binary fractions of decimals (22.1 would no longer be 221/10) and rounds
long integers, so the values come from the standard reader, with `Decimal` for each fraction. Depth is measured before
either, since the standard reader ends in a RecursionError on deep nesting.
"""

from __future__ import annotations

import json
import re
from decimal import Decimal
from typing import Any

import orjson

DEEPEST = 32
LONGEST_WHOLE = 19
_STRINGS = re.compile(rb'"[^"\\]*(?:\\.[^"\\]*)*"', re.DOTALL)
_LONG = re.compile(rb"[0-9]{19}")
_STRING_OR_LONG = re.compile(_STRINGS.pattern + rb"|[0-9]{19,}", re.DOTALL)
_BRACKET = re.compile(rb"[\[\]{}]")


class BrokenJson(Exception):
    """The bytes are not the JSON of one object within the limits; the message says what is wrong and where."""


class TooDeep(BrokenJson):
    """Brackets stand too deep within brackets."""


def parse(data: bytes) -> Any:
    """Return the values of the JSON text: whole numbers as int, others as Decimal; raise BrokenJson."""
    if depth(data) > DEEPEST:
        raise TooDeep(f"Brackets stand more than {DEEPEST} deep.")
    try:
        orjson.loads(_without_long_wholes(data))
        return json.loads(data, parse_float=Decimal, parse_int=_whole, object_pairs_hook=_once)
    except json.JSONDecodeError as fault:
        raise BrokenJson(f"Line {fault.lineno}, column {fault.colno}: {_first_words(fault.msg)}.") from None


def _without_long_wholes(data: bytes) -> bytes:
    """Return the text with a 0 for each long run of digits outside strings: orjson refuses those beyond a double."""
    if not _LONG.search(data):
        return data
    return _STRING_OR_LONG.sub(lambda found: found[0] if found[0].startswith(b'"') else b"0", data)


def depth(data: bytes) -> int:
    """Return how deep brackets stand within brackets, or one above the limit as soon as it is passed."""
    deepest = level = 0
    for bracket in _BRACKET.finditer(_STRINGS.sub(b"", data)):
        level += 1 if bracket.group() in b"[{" else -1
        deepest = max(deepest, level)
        if deepest > DEEPEST:
            break
    return deepest


def _whole(text: str) -> int | Decimal:
    """Return the number; one too long for any field as a Decimal, which is read in linear time and refused later."""
    return int(text) if len(text) <= LONGEST_WHOLE else Decimal(text)


def _once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found = dict(pairs)
    if len(found) < len(pairs):
        twice = next(name for place, (name, _) in enumerate(pairs) if name in dict(pairs[:place]))
        raise BrokenJson(f"The member {twice!r} stands twice in one object.")
    return found


def _first_words(message: str) -> str:
    return message.partition(": line")[0]
