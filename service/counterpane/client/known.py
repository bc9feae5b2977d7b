"""What comes with the program as frozen values: rules, facts, and sizes by name."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from counterpane.client.results import Json, Result


@dataclass(frozen=True, slots=True)
class Rule(Result):
    """A rule with its reason and examples; a list gives the first four fields only."""

    slug: str
    family: str
    severity: str
    title: str
    reason: str | None
    bad: str | None
    good: str | None
    source: str | None


@dataclass(frozen=True, slots=True)
class Fact(Result):
    """A fact with its source; numbers are decimal text."""

    name: str
    topic: str
    says: str
    source: str
    value: Any
    unit: str | None


@dataclass(frozen=True, slots=True)
class Size(Result):
    """A size by its name: what is planned for it, and the span of what its sources say."""

    name: str
    also: tuple[str, ...]
    says: str
    width_cm: float
    length_cm: float
    range_cm: Json
    beside_cots: tuple[Json, ...] | None
