"""A function of SQL: whether a class of counts shares one with any of several others."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import astuple
from functools import lru_cache

from counterpane.library.parts.wanted import CountClass

KEPT = 64
"""Lists of classes that are kept read; house."""


def written(classes: Sequence[CountClass]) -> str:
    """Return classes as the function of SQL takes them."""
    return json.dumps([astuple(each) for each in classes])


def shares_count(modulus: int, residue: int, least: int, most: int | None, others: str) -> bool:
    """Say whether the class shares a count with one of the others, which are `written`."""
    own = CountClass(modulus, residue, least, most)
    return any(own.common(other) is not None for other in _read(others))


@lru_cache(KEPT)
def _read(text: str) -> tuple[CountClass, ...]:
    return tuple(CountClass(*each) for each in json.loads(text))
