"""Contents as peers send them: canonical JSON read by the schema of what is sent, with numbers that are numbers again.

Canonical JSON has "41/2" for 20.5, and only the schema knows which texts are numbers: those that it refuses as texts.
"""

from __future__ import annotations

import copy
import re
from collections.abc import Mapping
from decimal import Decimal
from typing import Any

from marshmallow import Schema

from counterpane.api.parsing import BrokenJson, parse
from counterpane.library.ports import Shelf
from counterpane_schema.component import ComponentContent
from counterpane_schema.edition import EditionContent
from counterpane_schema.faults import faults_of
from counterpane_schema.profile import ProfileContent
from counterpane_schema.recipe import RecipeContent

_SHAPES: Mapping[Shelf, type[Schema]] = {
    "component": ComponentContent,
    "recipe": RecipeContent,
    "profile": ProfileContent,
}
_FRACTION = re.compile(r"(-?[0-9]{1,30})/([0-9]{1,30})")
OF_SIZES = ("sizes", "sample", "borders")


def read(shelf: Shelf, data: bytes) -> Mapping[str, Any]:
    """Return the content of a revision as it would be sent; raise ValueError for one of another shape."""
    try:
        content: dict[str, Any] = parse(data)
    except BrokenJson as fault:
        raise ValueError(str(fault)) from fault
    if not isinstance(content, dict):
        raise ValueError("it is no JSON object")
    if shelf == "edition":
        graded = {name: content[name] for name in OF_SIZES if name in content}
        return {**content, **_loaded(EditionContent(), graded)}
    return _loaded(_SHAPES[shelf](), content)


def _loaded(schema: Schema, content: Mapping[str, Any]) -> dict[str, Any]:
    given = copy.deepcopy(dict(content))
    for place in _places(schema.validate(given), ()):
        _make_number(given, place)
    if faults := faults_of(schema, given):
        raise ValueError(f"{faults[0].pointer}: {faults[0].message}")
    return dict(schema.load(given))


def _places(messages: Any, before: tuple[Any, ...]) -> list[tuple[Any, ...]]:
    """Return the place of each fault, as the keys and numbers that lead to it."""
    if not isinstance(messages, Mapping):
        return [before]
    return [place for key, inner in messages.items() for place in _places(inner, (*before, key))]


def _make_number(content: Any, place: tuple[Any, ...]) -> None:
    """Put the decimal that a fraction is in its place; leave what is no fraction or has no decimal."""
    *way, last = place
    try:
        for step in way:
            content = content[step]
        found = _FRACTION.fullmatch(content[last])
    except (KeyError, IndexError, TypeError):
        return
    if found and (exact := _decimal(int(found[1]), int(found[2]))) is not None:
        content[last] = exact


def _decimal(numerator: int, denominator: int) -> Decimal | None:
    """Return a fraction as the decimal that it is, None where it has no end."""
    places, rest = 0, denominator
    while rest % 10 == 0 and rest:
        rest //= 10
    for prime in (2, 5):
        while rest and rest % prime == 0:
            rest //= prime
    if rest != 1:
        return None
    while numerator * 10**places % denominator:
        places += 1
    return Decimal(f"{numerator * 10**places // denominator}e-{places}")
