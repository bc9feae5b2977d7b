"""A whole text of rows: statements, rows in working order, repeat lines and sections, with the faults of reading.

Nothing is counted here. A line that names several rows is listed once for each; a line that says "as row 1" gets that
row's words; "row 2 and all WS rows" stands for every even row up to the last row of the repeat line, or else up to the
highest printed odd number plus one.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TypeAlias

from counterpane.craft.rows.again import Again
from counterpane.craft.rows.blocks import Wanted, in_order
from counterpane.craft.rows.borrowing import Borrowed, borrowed
from counterpane.craft.rows.clauses import STITCHES, Clause, clauses
from counterpane.craft.rows.labels import Label
from counterpane.craft.rows.mistakes import Fault
from counterpane.craft.rows.read import read_tokens
from counterpane.craft.rows.sides import with_sides
from counterpane.craft.rows.statements import StatedCastOn, StatedMultiple, cast_on_in, multiple_in
from counterpane.craft.rows.terms import terms_of
from counterpane.craft.rows.tree import BindOff, Node, OpenRepeat, Place, Row
from counterpane.craft.rows.unlabelled import numbered, reads_well
from counterpane.craft.rows.words import tokens
from counterpane.craft.stitches import Terms, Vocabulary

MOST_ROWS = 20_000
_NEAR_ROW = re.compile(r"\W*([a-z]{2,8})\s+\d{1,4}\s*(?:\([^)]*\)\s*)?:")
_ADDS = re.compile(r"\b(?:at|more|extra|further|additional|beg|beginning|next)\b")
_ROW_WORDS = ("row", "rows", "round", "rounds", "rnd", "rnds")


@dataclass(frozen=True, slots=True)
class AgainStep:
    """A repeat line in working order: the indices of the listed rows that it works again."""

    again: Again
    rows: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class StartStep:
    """A cast-on after rows: another piece begins."""

    cast_on: StatedCastOn


Step: TypeAlias = Row | AgainStep | StartStep


@dataclass(frozen=True, slots=True)
class Instructions:
    """What a text says: rows in working order with repeat lines between them, statements, faults, and the terms."""

    steps: tuple[Step, ...]
    faults: tuple[Fault, ...]
    terms: Terms
    cast_on: StatedCastOn | None = None
    multiple: StatedMultiple | None = None
    title: str | None = None

    @property
    def rows(self) -> tuple[Row, ...]:
        """The rows in working order, each listed once."""
        return tuple(step for step in self.steps if isinstance(step, Row))


def read_text(text: str, vocabulary: Vocabulary, terms: Terms | None = None) -> Instructions:
    """Read a whole text; every fault is kept and none hides another."""
    found = clauses(text)
    if not any(clause.kind == "row" for clause in found):
        found = numbered(found, vocabulary)
    return _Assembly(found, vocabulary, terms or terms_of(text)).instructions()


class _Assembly:
    """Rows put into working order, section by section."""

    def __init__(self, found: Sequence[Clause], vocabulary: Vocabulary, terms: Terms) -> None:
        self.found = found
        self.terms = terms
        self.vocabulary = vocabulary
        self.steps: list[Step] = []
        self.block: list[Row] = []
        self.labels: set[str] = set()
        self.known: dict[str, Row] = {}
        self.latest: dict[str, int] = {}
        self.wanted: list[Wanted] = []
        self.faults: list[Fault] = []
        self.section: str | None = None
        self.cast_on: StatedCastOn | None = None
        self.multiple: StatedMultiple | None = None
        self.listed = self.first = 0
        self.title: str | None = None

    def instructions(self) -> Instructions:
        """Go through all clauses in order."""
        for clause in self.found:
            if clause.kind == "row":
                self.row(clause)
            elif clause.kind == "again":
                self.again(clause)
            elif not self.unnamed_row(clause):
                self.statement(clause)
        self.end_block(None)
        steps = with_sides(self.with_whole(self.steps))
        return Instructions(steps, tuple(self.faults), self.terms, self.cast_on, self.multiple, self.title)

    def unnamed_row(self, clause: Clause) -> bool:
        """List stitches that stand among rows without a label; nothing that can be worked is passed over."""
        if (
            clause.kind == "cast-on"
            or not (self.steps or self.block)
            or not STITCHES.match(clause.line.text, clause.start)
        ):
            return False
        body = tokens(clause.line, clause.start, clause.end)
        if not reads_well(read_tokens(body, self.vocabulary, self.terms)):
            return False
        self.row(replace(clause, kind="row", label=Label(()), body=body))
        return True

    # -- statements and headings

    def statement(self, clause: Clause) -> None:
        """Take what a line says of counts, or note it as a heading."""
        line, start, end = clause.line, clause.start, clause.end
        if not self.steps and not self.block:
            multiple = multiple_in(line, start, end)
            self.multiple = self.multiple or multiple
            self.cast_on = self.cast_on or cast_on_in(line, start, end)
        elif clause.kind == "cast-on" and not _ADDS.search(line.text, start, end):
            self.new_piece(cast_on_in(line, start, end))
        if clause.kind != "cast-on" and not self.near_label(clause) and clause.kind == "heading":
            self.head(clause)

    def new_piece(self, cast_on: StatedCastOn | None) -> None:
        """Begin another piece at a cast-on that follows rows."""
        if cast_on is not None:
            self.end_block(None)
            self.first = self.listed
            self.steps.append(StartStep(cast_on))

    def head(self, clause: Clause) -> None:
        """Take the first heading of a text as its title, a later one as the section that follows."""
        name = clause.text.strip("#*_: ").strip()
        if self.title is None and not self.steps and not self.block:
            self.title = name
            return
        self.end_block(None)
        self.first = self.listed
        self.section = name

    def near_label(self, clause: Clause) -> bool:
        """Note a word before a number and a colon that is nearly "row"."""
        match = _NEAR_ROW.match(clause.line.text, clause.start)
        near = match and next((word for word in _ROW_WORDS if sorted(word) == sorted(match.group(1))), None)
        if match and near:
            self.faults.append(Fault("unknown-term", clause.line.place(match.start(1)), match.group(1), near))
        return bool(near)

    # -- rows

    def row(self, clause: Clause) -> None:
        """List the rows of a labelled line."""
        label = clause.label or Label(())
        if any(str(number) in self.labels for number in label.numbers):
            self.end_block(None)
        if label.too_long:
            self.faults.append(Fault("too-many-rows", clause.place, str(label.numbers[-1])))
        for row in self.rows_of(clause, label):
            self.add(row)

    def add(self, row: Row) -> None:
        """Add a row to the block, unless the text has too many."""
        if len(self.steps) + len(self.block) < MOST_ROWS:
            self.block.append(row)
            self.labels.add(row.label)
            self.known[row.label] = row
        elif not any(fault.rule == "too-many-rows" for fault in self.faults[-1:]):
            self.faults.append(Fault("too-many-rows", row.place, row.label))

    def rows_of(self, clause: Clause, label: Label) -> list[Row]:
        """Return one row for each number of a label, or for each copy of "next 2 rows"; the last carries the count."""
        names = [str(number) for number in label.numbers] or [label.word or "next"] * label.copies
        named = borrowed(clause.body)
        read = read_tokens(named.rest if named else clause.body, self.vocabulary, self.terms)
        self.faults += read.faults
        row = Row(
            names[0],
            read.parts,
            "round" if label.round else label.side,
            None,
            self.section,
            read.whole,
            read.readable,
            clause.place,
            start=clause.body[0].place if clause.body else clause.place,
            end=_end(clause),
            stated_place=read.stated_place or clause.place,
            text=clause.text,
        )
        rows = [replace(row, label=name) for name in names]
        if named:
            rows = self.lent(rows, named)
        elif not read.parts and read.readable:
            self.faults.append(Fault("row-says-nothing", clause.place, names[0]))
            rows = [replace(row, readable=False) for row in rows]
        rows[-1] = replace(rows[-1], stated=read.stated)
        if label.also:
            self.wanted.append(Wanted(label, rows[-1], len(self.block)))
            rows = rows if label.numbers else []
        return rows

    def lent(self, rows: list[Row], named: Borrowed) -> list[Row]:
        """Give rows the words of those they name; a name without a row, and words beside it, cannot be read."""
        missing = [number for number in named.numbers if str(number) not in self.known]
        if missing:
            self.faults.append(Fault("unknown-row", rows[0].start, str(missing[0])))
        elif rows[0].parts:
            beside = next(token for token in named.rest if token.kind != "pause")
            self.faults.append(Fault("unknown-term", beside.place, beside.text))
        if missing or rows[0].parts or not rows[0].readable:
            return [replace(row, readable=False) for row in rows]
        lenders = [self.known[str(number)] for number in named.numbers]
        return [_as(row, lenders[index % len(lenders)]) for index, row in enumerate(rows)]

    # -- repeat lines

    def again(self, clause: Clause) -> None:
        """Add a repeat line after the rows of its section."""
        again = clause.again
        if again is None:
            return
        self.end_block(again)
        missing = [number for number in again.numbers if str(number) not in self.latest]
        if missing and not again.loose:
            self.faults.append(Fault("unknown-row", again.place, str(missing[0])))
        rows = self.targets(again)
        if rows and len(self.steps) < MOST_ROWS:
            self.steps.append(AgainStep(again, rows))

    def targets(self, again: Again) -> tuple[int, ...]:
        """Return the indices of the listed rows that a repeat line means: the latest of each label."""
        if again.numbers:
            labels = dict.fromkeys(str(number) for number in again.numbers)
            return tuple(self.latest[label] for label in labels if label in self.latest)
        first = self.first if again.last == 0 else max(0, self.listed - again.last)
        if again.since is not None:
            first = self.latest.get(str(again.since), self.first)
        return tuple(range(first, self.listed))

    def end_block(self, again: Again | None) -> None:
        """Put the rows of a block into working order: by number, with those that a label stands for."""
        block = in_order(self.block, self.wanted, max(again.numbers) if again and again.numbers else None)
        for row in block[: MOST_ROWS - len(self.steps)]:
            self.known[row.label] = row
            self.latest[row.label] = self.listed
            self.listed += 1
            self.steps.append(row)
        self.block, self.labels, self.wanted = [], set(), []

    def with_whole(self, steps: list[Step]) -> list[Step]:
        """Take a row without a repeat as one whole repeat where the text states a multiple."""
        if self.multiple is None or self.multiple.of < 2:
            return steps
        return [_whole(step) if isinstance(step, Row) else step for step in steps]


def _end(clause: Clause) -> Place:
    """Return the place just behind the last word of a row, without its full stop."""
    words = [token for token in clause.body if token.text != "."]
    if not words:
        return clause.place
    last = words[-1]
    return Place(last.place.line, last.place.column + len(last.text))


def _as(row: Row, other: Row) -> Row:
    """Return a row with the words of another."""
    return replace(row, parts=other.parts, whole=other.whole, readable=other.readable, stated=row.stated)


def _whole(row: Row) -> Row:
    """Return a row as one repeat of its whole list, unless it holds an open repeat or binds all off."""
    if not row.parts or not row.readable or _has_open(row.parts):
        return row
    return replace(row, parts=(OpenRepeat(row.parts, 0, place=row.start),), whole=True)


def _has_open(parts: Sequence[Node]) -> bool:
    return any(isinstance(p, OpenRepeat) or (isinstance(p, BindOff) and p.times is None) for p in parts)
