"""The field types of the wire."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest
from marshmallow import ValidationError, fields

from counterpane_schema.fields import AtMost, Either, Number, Sha256, Slug, Text, Told, Whole, Word, YesNo
from counterpane_schema.forms import Closed, Open


class Named(Closed):
    """One of two forms of a part."""

    component = Slug(required=True)
    rows = Whole(least=1)


class Written(Closed):
    """The other form of a part."""

    text = Text(required=True, lines=True)


class Everything(Closed):
    """A schema with each type of field."""

    whole = Whole(least=1)
    number = Number()
    above = Number(above=True, most=100)
    line = Text(most=5)
    lines = Text(lines=True, least=0, most=300)
    slug = Slug()
    sha256 = Sha256()
    word = Word("us", "uk")
    flag = YesNo()
    told = Told()
    part = Either(Slug(), fields.Nested(Named), fields.Nested(Written), Number(), said="Write a part.")


@pytest.mark.parametrize(
    ("name", "value", "loaded"),
    [
        ("whole", 3, 3),
        ("whole", 3.0, 3),
        ("whole", Decimal("3.0"), 3),
        ("whole", Decimal("3e2"), 300),
        ("whole", 10**18 - 1, 10**18 - 1),
        ("number", Decimal("70.2"), Decimal("70.2")),
        ("number", 70.2, Decimal("70.2")),
        ("number", 0, Decimal(0)),
        ("number", 5e-324, Decimal("5e-324")),
        ("above", 100, Decimal(100)),
        ("line", "K2 p2", "K2 p2"),
        ("lines", "K2\n\tp2\r\n", "K2\n\tp2\r\n"),
        ("slug", "seed-stitch-2", "seed-stitch-2"),
        ("sha256", "0a" * 32, "0a" * 32),
        ("word", "uk", "uk"),
        ("flag", False, False),
        ("told", {"any": [1]}, {"any": [1]}),
        ("told", None, None),
        ("part", "waffle", "waffle"),
        ("part", {"component": "waffle", "rows": 2}, {"component": "waffle", "rows": 2}),
        ("part", {"text": "Row 1: knit."}, {"text": "Row 1: knit."}),
        ("part", 2, Decimal(2)),
    ],
)
def test_a_sound_value_is_loaded(name: str, value: Any, loaded: Any) -> None:
    """With its digits as sent."""
    assert Everything().load({name: value}) == {name: loaded}


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("whole", value)
        for value in (0, 3.5, "3", True, None, 10**18, -(10**18), float("nan"), float("inf"), Decimal("1e400"), [], {})
    ]
    + [("number", value) for value in (-1, "70.2", True, None, Decimal("NaN"), 10**16, Decimal("1e-401"))]
    + [("above", 0), ("above", 101)]
    + [("line", value) for value in ("", "sixsix", "a\nb", "a\0", "a\x9f", 3, None, b"a")]
    + [("lines", value) for value in ("\x00", "\x1b[0m", "\x85", "\ud800", "x" * 301)]
    + [("slug", value) for value in ("A", "a_b", "-a", "a--b", "a-", "é", "a\n", "x" * 81, "")]
    + [("sha256", value) for value in ("0a" * 31, "0A" * 32, "g" * 64, "0" * 64 + "\n")]
    + [("word", value) for value in ("fr", "US", None, 1, [])]
    + [("flag", value) for value in ("true", 1, 0, None)]
    + [("part", value) for value in (True, None, [], {}, {"component": "A"}, {"text": 1}, {"rows": 1})],
)
def test_an_unsound_value_is_refused(name: str, value: Any) -> None:
    """With the name of its field."""
    with pytest.raises(ValidationError) as caught:
        Everything().load({name: value})
    assert set(caught.value.messages) == {name}


def test_a_control_character_is_named_with_its_place() -> None:
    """So that it can be found and taken out."""
    with pytest.raises(ValidationError, match=r"Character 3 is the control character U\+0000"):
        Everything().load({"lines": "ab\0"})


def test_what_is_sent_is_closed_and_what_is_answered_is_open() -> None:
    """An unknown member is a slip in a request, and news in an answer."""
    assert set(Everything().validate({"wohle": 3})) == {"wohle"}
    assert Open().load({"wohle": 3}) == {}


def test_one_of_a_pair_must_be_there() -> None:
    """Neither and both are refused."""

    class Length(Closed):
        cm = Number()
        inch = Number()
        either_or = (("cm", "inch"),)

    assert not Length().validate({"inch": 4})
    assert Length().validate({}) == Length().validate({"cm": 10, "inch": 4}) == {"cm": ["Give either cm or inch."]}


def test_a_long_bound_is_told_in_words() -> None:
    """A short one is a number of the description."""
    assert "At most 300 characters." in Everything().fields["lines"].metadata["description"]
    assert AtMost(3)("abc") == "abc"


@pytest.mark.parametrize(
    ("field", "value", "said"),
    [
        (Number(above=True), 0, "Write a number above 0, of at most 15 digits."),
        (Number(most=100), 101, "Write a number from 0, up to 100."),
        (Whole(least=1), 0, "Write a whole number from 1, of at most 18 digits."),
        (Whole(least=1, most=2_000), 2_001, "Write a whole number from 1, up to 2,000."),
        (Number(above=True, said="Write the rows."), 0, "Write the rows."),
    ],
)
def test_a_bound_is_said_in_words(field: fields.Field[Any], value: int, said: str) -> None:
    """With the numbers as a person writes them."""
    with pytest.raises(ValidationError) as caught:
        field.deserialize(value)
    assert caught.value.messages == [said]
