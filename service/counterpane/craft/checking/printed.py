"""A text as it is printed, beside a house style: where it departs, and the line put right."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from counterpane.craft.checking.examine import Examined
from counterpane.craft.checking.wording import at, quoted
from counterpane.craft.findings import Finding
from counterpane.craft.rows.clauses import Clause, clauses
from counterpane.craft.rows.tree import Place
from counterpane.craft.rows.words import Token, given_lines
from counterpane.craft.styles import Style


@dataclass(frozen=True, slots=True)
class Printed:
    """An examined text with its lines as given and its clauses, and the style that it is held against."""

    examined: Examined
    style: Style
    lines: tuple[str, ...]
    clauses: tuple[Clause, ...]

    @property
    def rows(self) -> tuple[Clause, ...]:
        """The clauses of labelled rows."""
        return tuple(clause for clause in self.clauses if clause.kind == "row" and clause.label is not None)

    def line_at(self, place: Place) -> str:
        """Return the line of a place as given; empty where the text has none."""
        return self.lines[place.line - 1] if 0 < place.line <= len(self.lines) else ""

    def row_lines(self) -> Iterator[tuple[int, str]]:
        """Give number and text of each line that belongs to a row, once."""
        seen = {number for clause in self.rows for number in range(clause.place.line, _last_line(clause) + 1)}
        return ((number, self.lines[number - 1]) for number in sorted(seen))

    def between(self, first: Token, last: Token) -> str:
        """Return what is printed from one token to another, both included; empty where a line ends between them."""
        if first.place.line != last.place.line:
            return ""
        return self.line_at(first.place)[first.place.column - 1 : end_of(last) - 1]


@dataclass(frozen=True, slots=True)
class Departure:
    """Words at a place that the style prints otherwise."""

    place: Place
    words: str
    wanted: str


def printed(examined: Examined, style: Style) -> Printed:
    """Hold an examined text against a style."""
    lines = tuple(given_lines(examined.text))
    return Printed(examined, style, lines, tuple(clauses(examined.text)))


def _last_line(clause: Clause) -> int:
    return clause.body[-1].place.line if clause.body else clause.place.line


def end_of(token: Token) -> int:
    """Return the column just behind a token, in the text as given."""
    return token.line.place(token.start + len(token.text) - 1).column + 1


def noted(text: Printed, rule: str, what: str, departures: Iterable[Departure]) -> Iterator[Finding]:
    """Say once of all departures of a kind where the first one stands, how many follow, and what is printed instead.

    `what` begins the sentence: "A count is printed". The correction is the first line with its words replaced.
    """
    found = sorted(departures, key=lambda each: each.place)
    if not found:
        return
    first = found[0]
    more = f", here and in {len(found) - 1} more place{'s' if len(found) > 2 else ''}" if len(found) > 1 else ""
    message = f"{what} {quoted(first.words)}{more}; the style {quoted(text.style.name)} prints {quoted(first.wanted)}."
    line, begin = text.line_at(first.place), first.place.column - 1
    better = line[:begin] + first.wanted + line[begin + len(first.words) :]
    hint = "May we print it so?" if len(found) == 1 else "May we print it so throughout?"
    yield at(first.place, rule, "note", message, hint, corrections=(better.strip(),))
