"""Content-addressed objects: canonical JSON bytes (RFC 8785) and the SHA-256 that names them; and JSON for answers.

RFC 8785 writes numbers as IEEE doubles, which would round a gauge of 22.1. So no float ever reaches it: a whole number
stays one, any other number is the text "a/b" in lowest terms.
"""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction
from typing import Any

import orjson
import rfc8785

from counterpane.library.errors import Unkeepable

WORD_BITS = 64


def plain(value: Any) -> Any:
    """Return the value with each Fraction and Decimal as an int or as "a/b", tuples as lists."""
    if isinstance(value, Fraction | Decimal):
        exact = Fraction(value)
        return exact.numerator if exact.denominator == 1 else f"{exact.numerator}/{exact.denominator}"
    if isinstance(value, Mapping):
        return {key: plain(item) for key, item in value.items()}
    if isinstance(value, list | tuple):
        return [plain(item) for item in value]
    return value


def canonical(content: Mapping[str, Any]) -> bytes:
    """Return the RFC 8785 bytes; raise Unkeepable for a float, a lone surrogate or a number beyond 2^53 − 1."""
    value = plain(content)
    _refuse_floats(value)
    try:
        return rfc8785.dumps(value)
    except rfc8785.CanonicalizationError as fault:
        raise Unkeepable(f"The content has no canonical form: {fault}.") from fault


def json_bytes(value: Any) -> bytes:
    """Return JSON for an answer, where a Decimal is a number with its own digits, and a whole number may be any."""
    try:
        return orjson.dumps(value, default=_with_its_digits)
    except orjson.JSONEncodeError:
        return orjson.dumps(_any_size(value), default=_with_its_digits)


def _any_size(value: Any) -> Any:
    """Return the value with each whole number of more than 64 bits, which orjson does not write, as its digits."""
    if isinstance(value, Mapping):
        return {key: _any_size(item) for key, item in value.items()}
    if isinstance(value, list | tuple):
        return [_any_size(item) for item in value]
    return orjson.Fragment(str(value)) if isinstance(value, int) and value.bit_length() >= WORD_BITS else value


def _with_its_digits(value: Any) -> orjson.Fragment:
    if isinstance(value, Decimal):
        return orjson.Fragment(format(value, "f"))
    raise TypeError(f"{type(value).__name__} has no JSON form")


def digest(data: bytes) -> str:
    """Return the SHA-256 of the bytes in lower-case hexadecimal."""
    return hashlib.sha256(data).hexdigest()


def _refuse_floats(value: Any) -> None:
    if isinstance(value, float):
        raise Unkeepable(f"The content has no canonical form: {value!r} is a binary fraction.")
    items = value.values() if isinstance(value, dict) else value if isinstance(value, list) else ()
    for item in items:
        _refuse_floats(item)
