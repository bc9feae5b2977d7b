"""Answers about texts of rows as frozen values: checks, sheets, and other words."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from counterpane.client.results import Finding, Multiple, Result


@dataclass(frozen=True, slots=True)
class CheckedRow(Result):
    """A row in working order with the stitches before and after it."""

    label: str
    section: str | None
    side: str | None
    line: int
    before: int | None
    after: int | None


@dataclass(frozen=True, slots=True)
class Check(Result):
    """What follows from a text of rows."""

    cast_on: int | None
    terms: str
    multiple: Multiple | None
    fixed: int | None
    classes: tuple[Multiple, ...] | None
    rows: tuple[CheckedRow, ...]
    drift: int | None
    findings: tuple[Finding, ...]

    @classmethod
    def item(cls, name: str, value: Any) -> Any:
        """Return an entry of a list as a value of its own sort, where it has one."""
        return CheckedRow.of(value) if name == "rows" else Result.item(name, value)


@dataclass(frozen=True, slots=True)
class SheetQuery(Result):
    """A question to the designer, with what was answered and decided, and where it stands."""

    number: int
    state: str
    question: str
    answer: str
    decision: str | None
    note: str
    rule: str | None
    section: str | None
    row: str | None
    line: int | None
    column: int | None
    words: str
    acceptance: str | None


@dataclass(frozen=True, slots=True)
class Sheet(Result):
    """An editor's sheet after a check; `data` is what to change and send again with the changed text."""

    text: str | None
    checked: str
    style: str | None
    queries: tuple[SheetQuery, ...]

    @classmethod
    def item(cls, name: str, value: Any) -> Any:
        """Return an entry of a list as a value of its own sort, where it has one."""
        return SheetQuery.of(value) if name == "queries" else Result.item(name, value)


@dataclass(frozen=True, slots=True)
class SaidRow(Result):
    """A row in words, and as it is worked at its count; `repeats` is how often each repeat is worked.

    `kept` is why the words are those that are printed, None where they are not.
    """

    label: str
    section: str | None
    side: str | None
    line: int
    words: str
    kept: str | None
    written_out: str | None
    before: int | None
    after: int | None
    repeats: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Wording(Result):
    """A text in other words."""

    terms: str
    rows: tuple[SaidRow, ...]
    text: str
    findings: tuple[Finding, ...]

    @classmethod
    def item(cls, name: str, value: Any) -> Any:
        """Return an entry of a list as a value of its own sort."""
        return SaidRow.of(value) if name == "rows" else Finding.of(value)
