"""What a dataclass is that is made by the ten thousand: one that nobody changes, made in a quarter of the time.

A frozen dataclass sets each of its members by a call, which took a tenth of the time of a check. These are frozen for
the type checker, which sees every line of the program, and plain objects at run time.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TypeVar, dataclass_transform

Kind = TypeVar("Kind")


@dataclass_transform(frozen_default=True, field_specifiers=(field,))
def record(kind: type[Kind]) -> type[Kind]:
    """Make a dataclass with slots that is equal and hashed by its members, which stay as they were made."""
    return dataclass(slots=True, unsafe_hash=True)(kind)
