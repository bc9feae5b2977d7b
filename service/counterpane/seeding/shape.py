"""The shape of a seed file, read off the dataclass that it fills.

One reader for stitches, components and sources: a field without a default must be there, an unknown key or a value of
another type is a SeedFault with its place. What the values mean is checked elsewhere.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import MISSING, Field, fields, is_dataclass
from functools import cache
from pathlib import Path
from types import NoneType, UnionType
from typing import Any, Literal, TypeVar, Union, cast, get_args, get_origin, get_type_hints

from counterpane.seeding.faults import SeedFault, nearest

Shape = TypeVar("Shape")
_WORDS = {str: "a text in quotes", int: "a whole number", bool: "true or false", Mapping: "a table"}


def read_toml(path: Path, file: str) -> dict[str, Any]:
    """Read a TOML file; SeedFault for one that is no UTF-8 or no TOML, with the line that the parser names."""
    try:
        return tomllib.loads(path.read_text(encoding="utf-8"))
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as fault:
        raise SeedFault(file, "", f"not readable as TOML ({fault})", "Correct the file at that place.") from fault


def fill(shape: type[Shape], content: Any, file: str, key: str = "") -> Shape:
    """Fill a dataclass from parsed TOML, strictly; SeedFault at the first key that does not fit."""
    table = _expect(content, Mapping, file, key)
    known = _hints(cast(Any, shape))
    for name in table:
        if name not in known:
            raise SeedFault(file, _join(key, name), "unknown key", nearest(name, known))
    values = {
        each.name: _value(known[each.name], table[each.name], file, _join(key, each.name))
        for each in fields(cast(Any, shape))
        if _present(each, table, file, key)
    }
    return shape(**values)


@cache
def _hints(shape: Any) -> dict[str, Any]:
    return get_type_hints(shape)


def _present(field: Field[Any], table: Mapping[str, Any], file: str, key: str) -> bool:
    if field.name in table:
        return True
    if field.default is MISSING and field.default_factory is MISSING:
        raise SeedFault(file, _join(key, field.name), "missing", "Add this key.")
    return False


def _join(key: str, name: object) -> str:
    return f"{key}.{name}" if key else str(name)


def _value(kind: Any, value: Any, file: str, key: str) -> Any:
    origin = get_origin(kind)
    if origin in (Union, UnionType):
        return _choice(get_args(kind), value, file, key)
    if origin is Literal:
        return _word(get_args(kind), value, file, key)
    if origin is tuple:
        items = _expect(value, list, file, key)
        return tuple(_value(get_args(kind)[0], each, file, f"{key}[{place}]") for place, each in enumerate(items))
    if origin is not None and issubclass(origin, Mapping):
        of = get_args(kind)[1]
        table = _expect(value, Mapping, file, key)
        return {name: _value(of, each, file, _join(key, name)) for name, each in table.items()}
    if is_dataclass(kind):
        return fill(cast(type, kind), value, file, key)
    return _expect(value, kind, file, key)


def _choice(kinds: tuple[Any, ...], value: Any, file: str, key: str) -> Any:
    """Fill the one kind of a union whose outer form the value has, else say what the first kind wants."""
    kinds = tuple(kind for kind in kinds if kind is not NoneType)
    plain = tuple(kind for kind in kinds if not is_dataclass(kind))
    if isinstance(value, Mapping):
        kinds = tuple(kind for kind in kinds if is_dataclass(kind)) or kinds
    elif plain:
        kinds = tuple(kind for kind in plain if isinstance(kind, type) and isinstance(value, kind)) or plain
    return _value(kinds[0], value, file, key)


def _word(words: tuple[Any, ...], value: Any, file: str, key: str) -> Any:
    if value not in words:
        raise SeedFault(file, key, f"{value!r} is none of {', '.join(map(repr, words))}", "Write one of these.")
    return value


def _expect(value: Any, kind: Any, file: str, key: str) -> Any:
    if kind is Any or (isinstance(value, kind) and not (kind is int and isinstance(value, bool))):
        return value
    wanted = _WORDS.get(kind, "a list in square brackets" if kind is list else getattr(kind, "__name__", str(kind)))
    raise SeedFault(file, key, f"{value!r} where {wanted} belongs", "Change the value.")
