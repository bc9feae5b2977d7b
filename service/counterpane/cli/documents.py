"""Plan requests and recipes from TOML or JSON; each number keeps its decimal text."""

from __future__ import annotations

import json
import re
import tomllib
from collections.abc import Mapping
from decimal import Decimal
from typing import Any

from counterpane.cli.endings import Unreadable
from counterpane.cli.inputs import Given

MOST_DIGITS = 18  # The contract refuses whole numbers of 19 digits and more.
MOST_DEPTH = 32  # As the API: brackets within brackets.
_AGAIN = "Correct it there and try again."
_SLIPS = (
    (re.compile("[“”„«»‘’]"), 'Put words between straight double quotes, as in body = "waffle".'),
    (re.compile(r"^[\s\w.-]+:"), 'Write = between a name and its value, as in body = "waffle".'),
    (re.compile(r"=\s*\d+,\d"), "Write a decimal number with a point, as in 21.5."),
    (re.compile(r"=\s*[A-Za-z]"), 'Put words between double quotes, as in body = "waffle".'),
)
"""Slips of the pen in a line that is no TOML, and what to write."""
_PLACE = re.compile(r"\s*\(at (?:line (\d+), column (\d+)|end of document)\)$")


def document_of(given: Given) -> dict[str, Any]:
    """Read a TOML or JSON document whose outermost value is a table; Unreadable, with the place, where it is not."""
    value = _json(given) if _is_json(given) else _toml(given)
    if not isinstance(value, dict):
        hint = "Put { before the first field and } after the last."
        raise Unreadable(f"{given.name}: a plan request is an object with fields", hint)
    _bounded(value, given.name, "", 1)
    return value


def _is_json(given: Given) -> bool:
    if given.name.endswith((".json", ".toml")):
        return given.name.endswith(".json")
    return given.text.lstrip()[:1] == "{"


def _json(given: Given) -> object:
    try:
        return json.loads(
            given.text, parse_float=Decimal, parse_int=_whole, parse_constant=_no_constant, object_pairs_hook=_no_twin
        )
    except json.JSONDecodeError as fault:
        place = f"{given.name}, line {fault.lineno}, column {fault.colno}"
        raise Unreadable(f"{place}: not JSON: {_lower(fault.msg)}", _AGAIN) from None
    except RecursionError:
        raise _too_deep(given.name) from None
    except ValueError as fault:
        raise Unreadable(f"{given.name}: {fault}", _AGAIN) from None


def _toml(given: Given) -> object:
    try:
        return tomllib.loads(given.text, parse_float=Decimal)
    except tomllib.TOMLDecodeError as fault:
        raise _of_toml(given, str(fault)) from None
    except RecursionError:
        raise _too_deep(given.name) from None
    except ValueError as fault:
        raise Unreadable(f"{given.name}: {fault}", _AGAIN) from None


def _of_toml(given: Given, said: str) -> Unreadable:
    found = _PLACE.search(said)
    what = said[: found.start()] if found else said
    end = (given.text.count("\n") + 1, len(given.text) - given.text.rfind("\n"))
    line, column = (found[1], found[2]) if found and found[1] else end
    place = f"{given.name}, line {line}, column {column}"
    return Unreadable(f"{place}: not TOML: {_lower(what)}", _mend(given.text, int(line)))


def _mend(text: str, line: int) -> str:
    lines = text.split("\n")
    wrong = lines[line - 1] if line <= len(lines) else ""
    return next((hint for slip, hint in _SLIPS if slip.search(wrong)), _AGAIN)


def _whole(text: str) -> int:
    if len(text.lstrip("-")) > MOST_DIGITS:
        raise ValueError(f"the number {text[:MOST_DIGITS]}… has more than {MOST_DIGITS} digits")
    return int(text)


def _no_constant(text: str) -> object:
    raise ValueError(f"{text} is not a number")


def _no_twin(pairs: list[tuple[str, object]]) -> dict[str, object]:
    seen: dict[str, object] = {}
    for name, value in pairs:
        if name in seen:
            raise ValueError(f"the field {name!r} stands there twice")
        seen[name] = value
    return seen


def _bounded(value: object, name: str, pointer: str, depth: int) -> None:
    if depth > MOST_DEPTH:
        raise _too_deep(name)
    if isinstance(value, int) and abs(value) >= 10**MOST_DIGITS:
        raise Unreadable(f"{name}, {pointer}: the number has more than {MOST_DIGITS} digits", _AGAIN)
    if isinstance(value, Mapping):
        for key, inner in value.items():
            _bounded(inner, name, f"{pointer}/{key}", depth + 1)
    elif isinstance(value, list):
        for index, inner in enumerate(value):
            _bounded(inner, name, f"{pointer}/{index}", depth + 1)


def _too_deep(name: str) -> Unreadable:
    hint = "A plan request needs no more than five."
    return Unreadable(f"{name}: more than {MOST_DEPTH} brackets within brackets", hint)


def _lower(sentence: str) -> str:
    return sentence[:1].lower() + sentence[1:]
