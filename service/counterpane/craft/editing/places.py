"""Where a finding stands, in the words of a pattern: section, row, the line as printed, and the words themselves."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from counterpane.craft.rows.clauses import Clause, clauses
from counterpane.craft.rows.labels import Label
from counterpane.craft.rows.words import given_lines

LONGEST_LINE = 200
"""Characters of a printed line that a sheet repeats. House figure."""

LONGEST_WORDS = 60
"""Characters of the words that are quoted. House figure."""

_WORDS = re.compile(
    rf"[(\[{{][^)\]}}]{{0,{LONGEST_WORDS}}}[)\]}}]"  # What stands in brackets is one thing.
    rf"|[(\[{{*†‡#]*\s*[^\s,;.:()\[\]][^,;.:()\[\]]{{0,{LONGEST_WORDS}}}"
    rf"|\S{{1,{LONGEST_WORDS}}}"
)


@dataclass(frozen=True, slots=True)
class Spot:
    """A place of a text; `row` is the number or name of the row, None where it is none."""

    section: str | None
    row: str | None
    printed: str
    words: str


class Places:
    """A text by its places, read once."""

    def __init__(self, text: str, sections: Iterable[tuple[int, str | None]]) -> None:
        """Read the text; `sections` gives for each listed row its line and its section."""
        self._lines = given_lines(text)
        self._clauses = clauses(text)
        self._begins = [(clause.place.line, clause.place.column) for clause in self._clauses]
        self._sections = sorted({line: section for line, section in sections}.items())
        self._rows = [line for line, _ in self._sections]

    def spot(self, line: int | None, column: int | None) -> Spot:
        """Return what stands at a line and column; nothing is known of a finding without a place."""
        if line is None or not 0 < line <= len(self._lines):
            return Spot(None, None, "", "")
        raw = self._lines[line - 1]
        found = _WORDS.match(raw, max(0, (column or 1) - 1))
        words = " ".join(found.group().split()) if found else ""
        return Spot(self._section(line), self._row(line, column or 1), shortened(raw), words)

    def _row(self, line: int, column: int) -> str | None:
        """Return the row that a place belongs to: that of the last clause which begins before it."""
        index = bisect_right(self._begins, (line, column)) - 1
        clause = self._clauses[max(index, 0)] if self._clauses else None
        if clause is None or clause.label is None or line > last_line(clause):
            return None
        return row_of(clause.label)

    def _section(self, line: int) -> str | None:
        index = bisect_right(self._rows, line) - 1
        return self._sections[index][1] if index >= 0 else None


def last_line(clause: Clause) -> int:
    """Return the line on which a clause ends; a wrapped row ends where its last word stands."""
    return clause.body[-1].place.line if clause.body else clause.place.line


def row_of(label: Label) -> str | None:
    """Return the rows that a label names, as short as can be: "3", "1-4", "2, 4, 6", "setup"."""
    return _span(label.numbers) if label.numbers else label.word or None


def _span(numbers: Sequence[int]) -> str:
    if len(numbers) > 2 and list(numbers) == list(range(numbers[0], numbers[0] + len(numbers))):
        return f"{numbers[0]}-{numbers[-1]}"
    return ", ".join(map(str, numbers))


def shortened(raw: str) -> str:
    """Return a line as a sheet repeats it: single blanks, cut where it is very long."""
    line = " ".join(raw.split())
    return line if len(line) <= LONGEST_LINE else line[: LONGEST_LINE - 1] + "…"
