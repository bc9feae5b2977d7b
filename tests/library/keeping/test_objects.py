"""Canonical bytes and their hash: exact, the same for the same content, and refused where JSON cannot hold them."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest

from counterpane.library.errors import Unkeepable
from counterpane.library.keeping.objects import canonical, digest, json_bytes

SORTED_BY_RFC_8785 = {"€": 1, "\r": 2, "\ufb33": 3, "1": 4, "😀": 5, "\x80": 6, "ö": 7}
"""The members of RFC 8785, section 3.2.3, with other values."""


def test_members_stand_in_the_order_of_the_standard() -> None:
    """By UTF-16 code units; RFC 8785, section 3.2.3."""
    wanted = '{"\\r":2,"1":4,"\x80":6,"ö":7,"€":1,"😀":5,"\ufb33":3}'
    assert canonical(SORTED_BY_RFC_8785).decode() == wanted


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (Fraction(45, 2), '"45/2"'),
        (Decimal("22.50"), '"45/2"'),
        (Fraction(6, 2), "3"),
        (Decimal("3.0"), "3"),
        ((1, Fraction(1, 3)), '[1,"1/3"]'),
        (None, "null"),
        (True, "true"),
    ],
)
def test_numbers_are_whole_or_fractions_in_lowest_terms(value: Any, text: str) -> None:
    """However they were written."""
    assert canonical({"a": value}).decode() == f'{{"a":{text}}}'


@pytest.mark.parametrize("value", [2**53, 22.5, float("nan"), "\ud800", {"a": [0.5]}])
def test_what_has_no_canonical_form_is_refused(value: Any) -> None:
    """Binary fractions, numbers beyond 2^53 - 1 and lone surrogates."""
    with pytest.raises(Unkeepable):
        canonical({"a": value})


def test_the_hash_is_sha_256() -> None:
    """Of the empty text: FIPS 180-4, from memory."""
    assert digest(b"") == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"


def test_an_answer_keeps_the_digits_of_a_number() -> None:
    """22.10 stays 22.10, and nothing unknown is written."""
    assert json_bytes({"a": [Decimal("22.10"), Decimal("1E+3")]}) == b'{"a":[22.10,1000]}'
    assert json_bytes({"a": ({"b": 10**30}, True, Decimal("2.5"))}) == b'{"a":[{"b":1' + b"0" * 30 + b"},true,2.5]}"
    with pytest.raises(TypeError):
        json_bytes({"a": Fraction(1, 3)})
