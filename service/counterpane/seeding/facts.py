"""seeds/facts/*.toml → facts: figures and statements of the trade and of health bodies, each with its source."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict, dataclass
from functools import cache
from pathlib import Path
from typing import Any, Literal

from counterpane.seeding.faults import SeedFault
from counterpane.seeding.roots import seeds_root, toml_files
from counterpane.seeding.shape import fill, read_toml


@dataclass(frozen=True, slots=True)
class Fact:
    """One fact: a value in decimal text or words, a table or a list of such, None where the fact is a statement.

    `says` puts it in our own words. `basis` tells what a limit rests on; a borrowed one was made for other goods.
    `signed` is who answers for a house figure, and since when ("A. Name, 2026-11-30"); None where nobody does yet.
    """

    name: str
    says: str
    source: str
    confidence: Literal["seen-first-hand", "seen-second-hand", "memory"]
    basis: Literal["published", "borrowed", "house", "memory", "common practice"]
    jurisdiction: str = "none"
    value: Any = None
    unit: str | None = None
    signed: str | None = None


@dataclass(frozen=True, slots=True)
class _File:
    topic: str
    fact: tuple[Fact, ...]


def load_facts(root: Path | None = None) -> tuple[dict[str, Any], ...]:
    """Load the facts in order of topic, each as JSON values with its topic; SeedFault where an entry does not hold."""
    return _load(root or seeds_root())


def facts_by_name() -> dict[str, dict[str, Any]]:
    """Return the facts that ship with the program by name, in order of topic."""
    return {fact["name"]: fact for fact in load_facts()}


@cache
def _load(root: Path) -> tuple[dict[str, Any], ...]:
    facts: dict[str, dict[str, Any]] = {}
    for path, file in toml_files(root, "facts"):
        content = fill(_File, read_toml(path, file), file)
        for number, fact in enumerate(content.fact):
            key = f"fact[{number}]"
            _check_value(fact.value, file, f"{key}.value")
            if fact.name in facts:
                raise SeedFault(file, f"{key}.name", f"{fact.name!r} stands twice", "Rename one.")
            facts[fact.name] = {**asdict(fact), "topic": content.topic}
    return tuple(facts.values())


def _check_value(value: object, file: str, key: str) -> None:
    """Refuse numbers that are not written as text, which would lose their decimals."""
    if isinstance(value, Mapping):
        for name, each in value.items():
            _check_value(each, file, f"{key}.{name}")
    elif isinstance(value, list):
        for place, each in enumerate(value):
            _check_value(each, file, f"{key}[{place}]")
    elif not isinstance(value, str | None):
        raise SeedFault(file, key, f"{value!r} is not in quotes", "Write numbers as decimal text, in quotes.")
