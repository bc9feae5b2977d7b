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
from itertools import accumulate
from typing import Any

import orjson

DEEPEST = 32
MOST_BRACKETS = 50_000
"""Brackets outside strings; each makes a value, and values cost far more than their bytes. House."""
LONGEST_WHOLE = 19
_STRINGS = re.compile(rb'"[^"\\]*(?:\\.[^"\\]*)*"', re.DOTALL)
_LONG = re.compile(rb"[0-9]{19}")
_STRING_OR_LONG = re.compile(_STRINGS.pattern + rb"|[0-9]{19,}", re.DOTALL)
_STEPS = {ord("["): 1, ord("{"): 1, ord("]"): -1, ord("}"): -1}
_NO_BRACKETS = bytes(byte for byte in range(256) if byte not in _STEPS)


class BrokenJson(Exception):
    """The bytes are not the JSON of one object within the limits; the message says what is wrong and where."""


def parse(data: bytes) -> Any:
    """Return the values of the JSON text: whole numbers as int, others as Decimal; raise BrokenJson."""
    if (limit := _too_much(data)) is not None:
        raise BrokenJson(limit)
    try:
        orjson.loads(_without_long_wholes(data))
        return json.loads(data, parse_float=Decimal, parse_int=_whole, object_pairs_hook=_once)
    except json.JSONDecodeError as fault:
        raise BrokenJson(f"Line {fault.lineno}, column {fault.colno}: {_first_words(fault.msg)}.") from None


def _too_much(data: bytes) -> str | None:
    """Say which limit the brackets outside strings pass, None where they pass none."""
    brackets = _STRINGS.sub(b"", data).translate(None, _NO_BRACKETS)
    if max(accumulate(_STEPS[bracket] for bracket in brackets[:MOST_BRACKETS]), default=0) > DEEPEST:
        return f"Brackets stand more than {DEEPEST} deep."
    return f"There are more than {MOST_BRACKETS:,} brackets." if len(brackets) > MOST_BRACKETS else None


def _without_long_wholes(data: bytes) -> bytes:
    """Return the text with a 0 for each long run of digits outside strings: orjson refuses those beyond a double."""
    if not _LONG.search(data):
        return data
    return _STRING_OR_LONG.sub(lambda found: found[0] if found[0].startswith(b'"') else b"0", data)


def _whole(text: str) -> int | Decimal:
    """Return the number; one too long for any field as a Decimal, which is read in linear time and refused later."""
    return int(text) if len(text) <= LONGEST_WHOLE else Decimal(text)


def _once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for name, value in pairs:
        if name in found:
            raise BrokenJson(f"The member {name!r} stands twice in one object.")
        found[name] = value
    return found


def _first_words(message: str) -> str:
    return message.partition(": line")[0]
