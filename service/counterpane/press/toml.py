"""Plain values as TOML 1.0 that `tomllib` reads back the same: texts, numbers, true and false, lists, tables."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from decimal import Decimal
from typing import TypeAlias

Value: TypeAlias = "str | int | bool | Decimal | Sequence[Value] | Mapping[str, Value]"

_BARE = re.compile(r"[A-Za-z0-9_-]+")
_ESCAPED = re.compile(r'["\\\x00-\x1f\x7f]')
_ESCAPED_IN_LINES = re.compile(r'\\|"(?="")|"$|[\x00-\x08\x0b-\x1f\x7f]')
_SHORT = {'"': '\\"', "\\": "\\\\", "\n": "\\n", "\t": "\\t", "\r": "\\r"}


def document(table: Mapping[str, Value]) -> str:
    """Return a whole TOML document: plain keys first, then its tables and lists of tables; None values are left out."""
    return "".join(_document(table, ()))


def assignment(key: str, value: Value) -> str:
    """Return one key with its value, without a line end: `name = "Fan"`."""
    return f"{_key(key)} = {literal(value)}"


def literal(value: Value) -> str:
    """Return a value as it stands behind an equals sign; a text with line ends stays in lines.

    Raise TypeError for a value of another sort.
    """
    match value:
        case str():
            return _lines(value) if "\n" in value else f'"{_ESCAPED.sub(_escape, value)}"'
        case bool():
            return "true" if value else "false"
        case int():
            return str(value)
        case Decimal():
            return f"{value:f}"
        case Mapping():
            inside = ", ".join(assignment(key, each) for key, each in value.items() if each is not None)
            return f"{{ {inside} }}" if inside else "{}"
        case Sequence():
            return f"[{', '.join(_in_line(each) for each in value)}]"
    raise TypeError(f"{type(value).__name__} has no TOML here")


def _document(table: Mapping[str, Value], path: tuple[str, ...]) -> Iterator[str]:
    """Give the lines of a table: its plain keys, then the tables in it under their whole path."""
    below = {key: value for key, value in table.items() if isinstance(value, Mapping) or _tables(value)}
    for key, value in table.items():
        if key not in below and value is not None:
            yield f"{assignment(key, value)}\n"
    for key, value in below.items():
        name = ".".join(_key(step) for step in (*path, key))
        many = value if isinstance(value, Sequence) else None
        for each in [value] if many is None else many:
            yield f"\n[{name}]\n" if many is None else f"\n[[{name}]]\n"
            if isinstance(each, Mapping):
                yield from _document(each, (*path, key))


def _tables(value: Value) -> bool:
    return isinstance(value, list | tuple) and bool(value) and all(isinstance(each, Mapping) for each in value)


def _in_line(value: Value) -> str:
    """Return a value that stays on one line, as lists want it."""
    return f'"{_ESCAPED.sub(_escape, value)}"' if isinstance(value, str) else literal(value)


def _key(name: str) -> str:
    return name if _BARE.fullmatch(name) else f'"{_ESCAPED.sub(_escape, name)}"'


def _lines(text: str) -> str:
    """Return a text in lines; the first line end after the opening quotes does not count."""
    return f'"""\n{_ESCAPED_IN_LINES.sub(_escape, text)}"""'


def _escape(found: re.Match[str]) -> str:
    sign = found.group()
    return _SHORT.get(sign) or f"\\u{ord(sign):04X}"
