"""All sentences of a pattern, said anew: in another unit, in full words, in another language."""

from __future__ import annotations

from collections.abc import Callable, Collection
from dataclasses import fields, is_dataclass, replace
from typing import TypeVar

Thing = TypeVar("Thing")


def texts_said(thing: Thing, say: Callable[[str], str], kept: Collection[str]) -> Thing:
    """Return a value with each text in it said anew, except those in the fields that are `kept`."""
    if isinstance(thing, str):
        return say(thing)  # type: ignore[return-value]
    if isinstance(thing, tuple):
        return tuple(texts_said(each, say, kept) for each in thing)  # type: ignore[return-value]
    if not is_dataclass(thing) or isinstance(thing, type):
        return thing
    told = {field.name: getattr(thing, field.name) for field in fields(thing) if field.name not in kept}
    return replace(thing, **{name: texts_said(value, say, kept) for name, value in told.items()})
