"""Values of requests read strictly, by name: each refusal has its place and the next step."""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping
from datetime import date
from decimal import Decimal
from difflib import get_close_matches
from fractions import Fraction
from typing import TypeVar

from counterpane.craft.measures import exact
from counterpane.library.errors import LibraryError

T = TypeVar("T")
Choice = TypeVar("Choice", bound=str)
Parser = Callable[[str, object], T]

MOST_LETTERS = 200
"""House: the longest text that an input may be."""

MOST = 10**18
"""House: the largest number that an input may be."""


class BadInput(LibraryError):
    """A value that cannot be used; `pointer` is its JSON pointer (RFC 6901), "" for the whole."""

    def __init__(self, pointer: str, message: str, hint: str) -> None:
        super().__init__(message, hint)
        self.pointer = pointer


def read_fields(pointer: str, content: object, fields: Mapping[str, Parser[object]]) -> dict[str, object]:
    """Read an object by the parsers of its fields; absent and null are left out."""
    if not isinstance(content, Mapping):
        raise BadInput(pointer, f"{shown(content)} is not an object.", f"Give an object of {', '.join(fields)}.")
    for name in content:
        if name not in fields:
            raise BadInput(f"{pointer}/{_escaped(name)}", f"{shown(name)} is no field here.", near(name, fields))
    return {name: fields[name](f"{pointer}/{name}", value) for name, value in content.items() if value is not None}


def near(word: object, allowed: Collection[str]) -> str:
    """Name the nearest of the words allowed, else all of them."""
    written = {name.casefold(): name for name in allowed}
    close = get_close_matches(word[:MOST_LETTERS].casefold(), written, n=1) if isinstance(word, str) else []
    return f"Did you mean {written[close[0]]}?" if close else f"Use one of: {', '.join(allowed)}."


def _escaped(name: object) -> str:
    return str(name)[:MOST_LETTERS].replace("~", "~0").replace("/", "~1")


def shown(value: object) -> str:
    """Show a refused value in a few letters."""
    if isinstance(value, Mapping):
        return "An object"
    if isinstance(value, list | tuple):
        return "A list"
    if isinstance(value, int) and abs(value) > MOST:
        return "A number beyond 10^18"
    text = repr(value)
    return text if len(text) <= 60 else f"{text[:57]}…"


def number(pointer: str, value: object) -> Fraction:
    """Read a number from 0 by its decimal text."""
    if isinstance(value, bool) or not isinstance(value, int | float | Decimal | Fraction):
        raise BadInput(pointer, f"{shown(value)} is not a number.", "Give a number, or leave the field out.")
    try:
        found = exact(repr(value) if isinstance(value, float) else value)
    except ValueError:
        raise BadInput(pointer, f"{shown(value)} is no finite number.", "Give the value as measured.") from None
    if found < 0 or found > MOST:
        raise BadInput(pointer, f"{shown(value)} is below 0 or beyond measure.", "Give a number from 0 to 10^18.")
    return found


def decimal_of(value: Fraction) -> Decimal:
    """Return the decimal that was read as this fraction, digit for digit; it is 0 or more and has an end."""
    places = value.denominator.bit_length()  # 2^a times 5^b ends after the greater of a and b places.
    digits = f"{value.numerator * 10**places // value.denominator:0{places + 1}d}"
    return Decimal(f"{digits[:-places]}.{digits[-places:]}".rstrip("0").rstrip("."))


def above_zero(pointer: str, value: object) -> Fraction:
    """Read a number above 0."""
    found = number(pointer, value)
    if found == 0:
        raise BadInput(pointer, "0 is nothing to measure.", "Give a number above 0, or leave the field out.")
    return found


def per_cent(pointer: str, value: object) -> Fraction:
    """Read a share from 0 to 100."""
    found = number(pointer, value)
    if found > 100:
        raise BadInput(pointer, f"{shown(value)} per cent is more than the whole.", "Give a share from 0 to 100.")
    return found


def layers(pointer: str, value: object) -> int:
    """Read a whole number from 1."""
    found = number(pointer, value)
    if found.denominator != 1 or found < 1:
        raise BadInput(pointer, f"{shown(value)} is no number of layers.", "Give a whole number from 1.")
    return found.numerator


def flag(pointer: str, value: object) -> bool:
    """Read true or false."""
    if not isinstance(value, bool):
        raise BadInput(pointer, f"{shown(value)} is neither true nor false.", "Give true or false, or leave it out.")
    return value


def text(pointer: str, value: object) -> str:
    """Read a text of one line."""
    if not isinstance(value, str) or not value.strip() or len(value) > MOST_LETTERS or not value.isprintable():
        hint = f"Give a text of 1 to {MOST_LETTERS} printable characters."
        raise BadInput(pointer, f"{shown(value)} is no text to use.", hint)
    return value


def one_of(allowed: tuple[Choice, ...]) -> Parser[Choice]:
    """Return the parser of one of a few words."""

    def parse(pointer: str, value: object) -> Choice:
        for choice in allowed:
            if choice == value:
                return choice
        raise BadInput(pointer, f"{shown(value)} is not known here.", near(value, allowed))

    return parse


def list_of(each: Parser[T]) -> Parser[tuple[T, ...]]:
    """Return the parser of a list of what one parser reads."""

    def parse(pointer: str, value: object) -> tuple[T, ...]:
        if not isinstance(value, list | tuple):
            raise BadInput(pointer, f"{shown(value)} is not a list.", "Give a list, empty where there is none.")
        return tuple(each(f"{pointer}/{index}", item) for index, item in enumerate(value))

    return parse


def day(pointer: str, value: object) -> str:
    """Read a day as ISO 8601 has it, such as 2026-11-30."""
    try:
        if isinstance(value, str) and len(value) == len("2026-11-30"):
            return date.fromisoformat(value).isoformat()
    except ValueError:
        pass
    raise BadInput(pointer, f"{shown(value)} is no day.", "Give year, month and day, such as 2026-11-30.")
