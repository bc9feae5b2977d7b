"""The rows of a text as they are printed: line by line, in runs without anything between them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from counterpane.craft.checking.examine import Examined
from counterpane.craft.records import record
from counterpane.craft.rows.instructions import AgainStep, Step
from counterpane.craft.rows.layout import without_page_marks
from counterpane.craft.rows.pages import Page
from counterpane.craft.rows.tree import Place, Row
from counterpane.craft.rows.words import Line


@record
class PrintedRow:
    """The rows that one label stands for, in working order; `label` is the label as it stands in normal form.

    `numbers` are those of its rows, none where the label is a word.
    """

    rows: tuple[Row, ...]
    label: str
    numbers: tuple[int, ...]

    @property
    def row(self) -> Row:
        """The first of its rows."""
        return self.rows[0]


def runs(examined: Examined) -> tuple[tuple[PrintedRow, ...], ...]:
    """Return the printed rows in the order of the text, cut where prose, a repeat line or a heading stands between."""
    said = examined.instructions
    return said.shared.of(_runs, said.steps, examined.rows, said.page)


def _runs(steps: Sequence[Step], rows: Sequence[Row], page: Page) -> tuple[tuple[PrintedRow, ...], ...]:
    if len(rows) < 2:
        return ()
    out: list[list[PrintedRow]] = []
    before: tuple[int, PrintedRow] | None = None
    for part, printed in _printed(steps, rows, page):
        if before is None or before[0] != part or _apart(page, before[1].row, printed.row):
            out.append([])
        out[-1].append(printed)
        before = part, printed
    return tuple(map(tuple, out))


def _printed(steps: Sequence[Step], rows: Sequence[Row], page: Page) -> Iterator[tuple[int, PrintedRow]]:
    """Yield each printed row with the number of repeat lines and cast-ons that stand before it."""
    part, listed = 0, 0
    at_place: dict[Place, list[tuple[int, Row]]] = {}
    for step in steps:
        if isinstance(step, Row):
            at_place.setdefault(rows[listed].place, []).append((part, rows[listed]))
            listed += 1
        else:
            part += 1
    for place in sorted(at_place):
        found = at_place[place]
        named = tuple([row for _, row in found])
        numbers = tuple([int(row.label) for row in named if row.label.isdigit()])
        yield found[0][0], PrintedRow(named, _label_of(page, named[0]), numbers)


def _label_of(page: Page, row: Row) -> str:
    """Return the label of a row as printed, in normal form: "row 1 (rs):"."""
    line = page.lines[row.place.line - 1].text
    end = row.start.column - 1 if row.start.line == row.place.line else len(line)
    return line[row.place.column - 1 : end]


def _apart(page: Page, earlier: Row, later: Row) -> bool:
    """Tell whether another section begins or other words stand between two printed rows."""
    if earlier.section != later.section:
        return True
    between = page.lines[earlier.end.line : later.place.line - 1]
    words = any(line.text.strip() for line in between)
    return words and any(line.text.strip() for line in without_page_marks(between))


def lines_of_rows(examined: Examined) -> tuple[Line, ...]:
    """Return the lines on which rows and repeat lines stand."""
    numbers = {number for row in examined.rows for number in range(row.place.line, row.end.line + 1)}
    numbers |= {step.again.place.line for step in examined.instructions.steps if isinstance(step, AgainStep)}
    return tuple(line for line in examined.instructions.page.lines if line.number in numbers)


def lines_beside(examined: Examined) -> tuple[Line, ...]:
    """Return the lines on which neither rows nor explanations of abbreviations stand."""
    page = examined.instructions.page
    taken = {line.number for line in lines_of_rows(examined)} | page.glossary.lines
    return tuple(line for line in page.lines if line.number not in taken)


def given_line(examined: Examined, number: int) -> str:
    """Return a line of the text as given, by its number from 1."""
    return examined.instructions.page.given[number - 1]
