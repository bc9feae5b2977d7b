"""Field types of the wire: strict where marshmallow is lenient, and exact where JSON is vague.

`Whole` takes 3 and 3.0, which JSON Schema both calls integers, and refuses 3.5, true and "3". `Number` gives a
`Decimal` with the digits as they were sent. `Text` refuses control characters once for all stores, since PostgreSQL
cannot keep NUL and nobody can read the others.
"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from copy import deepcopy
from datetime import date
from decimal import Decimal
from typing import Any

from marshmallow import Schema, fields, validate
from marshmallow.exceptions import ValidationError

from counterpane_schema.spans import GAUGE, SPAN, WHOLE_SPAN, is_gauge, span_of

MOST_WHOLE = 10**18 - 1
MOST_NUMBER = 10**15
DEEPEST_DECIMAL = 400
"""Decimal places that are read: every binary double has fewer, and the exact fraction stays small."""

SLUG = r"^[a-z0-9]+(-[a-z0-9]+)*$"
DAY = (
    r"^[12][0-9]{3}-((0[1-9]|1[0-2])-(0[1-9]|1[0-9]|2[0-8])|(0[13-9]|1[0-2])-(29|30)|(0[13578]|1[02])-31)$"
    # 29 February is read too, in a year that has it.
)
MILLIMETRES = r"^[0-9]{1,6}([.][0-9]{1,3})?$"
SHA256 = r"^[0-9a-f]{64}$"
LINES = "^[^\\x00-\\x08\\x0b\\x0c\\x0e-\\x1f\\x7f-\\x9f]*$"
LINE = "^[^\\x00-\\x1f\\x7f-\\x9f]*$"
LONGEST_COUNTED = 200
"""The longest bound of a text that the description gives as a number."""

_CONTROL = re.compile("[\\x00-\\x08\\x0b\\x0c\\x0e-\\x1f\\x7f-\\x9f\ud800-\udfff]")
_LINE_CONTROL = re.compile("[\\x00-\\x1f\\x7f-\\x9f\ud800-\udfff]")


class AtMost(validate.Validator):
    """A bound on the length of a long text, which is described in words.

    Beside a pattern a `maxLength` of thousands makes readers of the description build patterns of that size.
    """

    def __init__(self, most: int) -> None:
        self.most = most

    def __call__(self, value: str) -> str:
        """Return the text, or refuse it."""
        if len(value) > self.most:
            raise ValidationError(f"Write at most {self.most} characters: this text has {len(value)}.")
        return value


class Whole(fields.Integer):
    """A whole number of at most 18 digits, from `least` to `most`."""

    def __init__(self, *, least: int = -MOST_WHOLE, most: int = MOST_WHOLE, **kwargs: Any) -> None:
        said = _bounds_said("a whole number", least, most, above=False)
        super().__init__(validate=validate.Range(least, most, error=said), **kwargs)

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> int:
        return _whole(_decimal(value, "Write a whole number, such as 12, without quotes."))


class Number(fields.Decimal):
    """A decimal number, above or from a bound, with the digits as sent; `said` says what to write, if more is known."""

    def __init__(
        self, *, least: int = 0, above: bool = False, most: int = MOST_NUMBER, said: str = "", **kwargs: Any
    ) -> None:
        self.least, self.above, self.most = least, above, most
        error = said or _bounds_said("a number", least, most, above=above)
        bounds = validate.Range(least, most, min_inclusive=not above, error=error)
        super().__init__(validate=bounds, **kwargs)

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> Decimal:
        number = _decimal(value, "Write a number, such as 22.5, without quotes.")
        if _exponent(number) < -DEEPEST_DECIMAL:
            raise ValidationError(f"Write at most {DEEPEST_DECIMAL} decimal places.")
        return number


class Text(fields.String):
    """A text of at least one and at most `most` characters, in lines or in one line, without control characters."""

    def __init__(self, *, most: int | None = 2_000, least: int = 1, lines: bool = False, **kwargs: Any) -> None:
        self.lines = lines
        metadata = {"pattern": LINES if lines else LINE} | kwargs.pop("metadata", {})
        limits: list[validate.Validator] = [validate.Length(least, most)]
        if most and most > LONGEST_COUNTED:
            limits = [validate.Length(least), AtMost(most)]
            metadata["description"] = f"{metadata.get('description', '')} At most {most} characters.".strip()
        super().__init__(validate=limits, metadata=metadata, **kwargs)

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> str:
        if not isinstance(value, str):
            raise ValidationError("Write a text in quotes.")
        if found := (_CONTROL if self.lines else _LINE_CONTROL).search(value):
            code, place = ord(found.group()), found.start() + 1
            raise ValidationError(f"Character {place} is the control character U+{code:04X}: take it out.")
        return value


class Word(fields.String):
    """One of a few words."""

    def __init__(self, *words: str, **kwargs: Any) -> None:
        self.words = words
        known = ", ".join(words)
        super().__init__(validate=validate.OneOf(words, error=f"Write one of: {known}."), **kwargs)

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> str:
        if not isinstance(value, str):
            raise ValidationError(f"Write one of: {', '.join(self.words)}.")
        return value


def answer_form(*forms: str) -> Word:
    """Return the member `as`: the form of an answer that may be had in several."""
    metadata = {"description": "The form of the answer; beats the Accept header."}
    return Word(*forms, data_key="as", attribute="as", metadata=metadata)


class Slug(Text):
    """A name for addresses: lower-case letters and digits in groups joined by single hyphens, at most 80 characters."""

    def __init__(self, **kwargs: Any) -> None:
        metadata = {"pattern": SLUG} | kwargs.pop("metadata", {})
        super().__init__(most=80, metadata=metadata, **kwargs)

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> str:
        text = super()._deserialize(value, attr, data, **kwargs)
        if not re.fullmatch(SLUG, text):
            raise ValidationError("Write lower-case letters and digits, in groups joined by single hyphens.")
        return text


class Day(Text):
    """A day as ISO 8601 has it, such as 2026-11-30."""

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(most=10, least=10, metadata={"pattern": DAY}, **kwargs)

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> str:
        text = super()._deserialize(value, attr, data, **kwargs)
        try:
            return date.fromisoformat(text).isoformat()
        except ValueError:
            raise ValidationError("Write a day, such as 2026-11-30.") from None


class Millimetres(Text):
    """Millimetres as decimal text, such as "4.5", with at most three decimals."""

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(most=10, metadata={"pattern": MILLIMETRES}, **kwargs)

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> str:
        text = super()._deserialize(value, attr, data, **kwargs)
        if not re.fullmatch(MILLIMETRES, text):
            raise ValidationError('Write millimetres in quotes, such as "4.5".')
        return text


class Span(Text):
    """A number, or two with ".." between them, such as 60..80: all between them, whichever stands first."""

    def __init__(self, *, whole: bool = False, **kwargs: Any) -> None:
        self.form = WHOLE_SPAN if whole else SPAN
        metadata = {"pattern": self.form} | kwargs.pop("metadata", {})
        super().__init__(most=22, metadata=metadata, **kwargs)

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> str:
        text = super()._deserialize(value, attr, data, **kwargs)
        span = span_of(text, self.form)
        if span is None:
            raise ValidationError("Write a number, or two with .. between them, such as 60..80.")
        return span


class GaugeText(Text):
    """Stitches to 10 cm, and rows behind an x where they are told, such as 21 or 21x28."""

    def __init__(self, **kwargs: Any) -> None:
        metadata = {"pattern": GAUGE} | kwargs.pop("metadata", {})
        super().__init__(most=13, metadata=metadata, **kwargs)

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> str:
        text = super()._deserialize(value, attr, data, **kwargs)
        if not is_gauge(text):
            raise ValidationError("Write the stitches to 10 cm, at least 1, such as 21, or stitches by rows, 21x28.")
        return text


class Sha256(Text):
    """The SHA-256 of a revision, 64 lower-case hexadecimal digits."""

    def __init__(self, **kwargs: Any) -> None:
        metadata = {"pattern": SHA256} | kwargs.pop("metadata", {})
        super().__init__(most=64, least=64, metadata=metadata, **kwargs)

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> str:
        text = super()._deserialize(value, attr, data, **kwargs)
        if not re.fullmatch(SHA256, text):
            raise ValidationError("Write the 64 hexadecimal digits of a revision's hash.")
        return text


class YesNo(fields.Boolean):
    """True or false, and nothing that only looks like it."""

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> bool:
        if not isinstance(value, bool):
            raise ValidationError("Write true or false, without quotes.")
        return value


class Told(fields.Raw):
    """A member that the library tells in its answers; taken and left aside when an answer is sent back changed."""

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(allow_none=True, **kwargs)


class Either(fields.Field[Any]):
    """One of several fields, told apart by the JSON type of the value and, among objects, by their required members."""

    def __init__(self, *alternatives: fields.Field[Any], said: str, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self.alternatives = alternatives
        self.said = said

    def _bind_to_schema(self, field_name: str, parent: Schema | fields.Field[Any]) -> None:
        super()._bind_to_schema(field_name, parent)
        self.alternatives = tuple(deepcopy(each) for each in self.alternatives)
        for each in self.alternatives:
            each._bind_to_schema(field_name, self)

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> Any:
        fitting = [each for each in self.alternatives if isinstance(value, _json_type(each))]
        if not fitting:
            raise ValidationError(self.said)
        whole = (each for each in fitting[1:] if _required(each) <= set(value))
        return next(whole, fitting[0]).deserialize(value, attr, data, **kwargs)


def _json_type(field: fields.Field[Any]) -> type | tuple[type, ...]:
    if isinstance(field, fields.Nested):
        return dict
    if isinstance(field, Number | Whole):
        return (int, float, Decimal)
    return list if isinstance(field, fields.List) else str


def _required(field: fields.Field[Any]) -> set[str]:
    if not isinstance(field, fields.Nested):
        return set()
    return {name for name, inner in field.schema.fields.items() if inner.required}


def _bounds_said(what: str, least: int, most: int, *, above: bool) -> str:
    """Say in words which numbers are taken."""
    ends = [] if least == -MOST_WHOLE else [f"above {least:,}" if above else f"from {least:,}"]
    ends.append(f"of at most {len(str(most - 1))} digits" if most >= MOST_NUMBER else f"up to {most:,}")
    return f"Write {what} {', '.join(ends)}."


def _decimal(value: Any, said: str) -> Decimal:
    """Return the number as a decimal of ordinary size; the error says what to write instead."""
    if isinstance(value, bool) or not isinstance(value, int | float | Decimal):
        raise ValidationError(said)
    if isinstance(value, float) and not math.isfinite(value):
        raise ValidationError("Write a finite number.")
    number = Decimal(repr(value)) if isinstance(value, float) else Decimal(value)
    if not number.is_finite() or number.adjusted() >= len(str(MOST_WHOLE)):
        raise ValidationError("Write a number of at most 18 digits.")
    return number


def _exponent(number: Decimal) -> int:
    exponent = number.as_tuple().exponent
    return exponent if isinstance(exponent, int) else 0


def _whole(number: Decimal) -> int:
    if _exponent(number) < 0 and number != number.to_integral_value():
        raise ValidationError("Write a whole number: this one has a fraction.")
    return int(number)
