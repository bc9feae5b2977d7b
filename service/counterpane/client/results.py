"""Answers as frozen values. Each keeps the whole JSON object in `data`, with members that are not named here."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, fields
from typing import Any, Self

Json = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class Result:
    """An answer; `data` is all of it as it came."""

    data: Json

    @classmethod
    def of(cls, data: Json) -> Self:
        """Return the answer with its members as fields; one that is missing is None."""
        named = (field.name for field in fields(cls) if field.name != "data")
        return cls(data, **{name: cls.read(name, data.get(name)) for name in named})

    @classmethod
    def read(cls, name: str, value: Any) -> Any:
        """Return the value of a field; lists become tuples."""
        if isinstance(value, Mapping) and name == "multiple":
            return Multiple(value["of"], value["plus"], value["least"])
        if isinstance(value, list):
            return tuple(cls.item(name, each) for each in value)
        return value

    @classmethod
    def item(cls, name: str, value: Any) -> Any:
        """Return an entry of a list as a value of its own sort, where it has one."""
        if name == "classes":
            return Multiple(value["of"], value["plus"], value["least"])
        return Finding.of(value) if name == "findings" else value


@dataclass(frozen=True, slots=True)
class Multiple:
    """Every count from `least` that leaves `plus` when divided by `of`."""

    of: int
    plus: int
    least: int


@dataclass(frozen=True, slots=True)
class Finding(Result):
    """What a rule says, with its place and the next step."""

    rule: str
    severity: str
    message: str
    hint: str | None
    line: int | None
    column: int | None
    pointer: str | None
