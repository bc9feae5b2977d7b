"""A whole text of rows: statements, rows in working order, repeat lines and sections, with the faults of reading.

Nothing is counted here. A line that names several rows is listed once for each; a line that says "as row 1" gets that
row's words; "row 2 and all WS rows" stands for every even row up to the last row of the repeat line, or else up to the
highest printed odd number plus one.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property

from counterpane.craft.rows.borrowing import Borrowed
from counterpane.craft.rows.clauses import Clause, ClauseKind, clauses
from counterpane.craft.rows.kept import Kept
from counterpane.craft.rows.labelled import as_whole, lenders_of, rows_of, with_words, without_misfits, words_of
from counterpane.craft.rows.labels import MOST_ROWS_AT_ONCE, Label
from counterpane.craft.rows.listing import Listing
from counterpane.craft.rows.mistakes import Fault
from counterpane.craft.rows.pages import Page, page_of
from counterpane.craft.rows.row_orders import every_row_in
from counterpane.craft.rows.shapes import Shapes
from counterpane.craft.rows.sharing import Shared
from counterpane.craft.rows.sides import with_sides
from counterpane.craft.rows.sizes import Sizes, for_size, sizes_in
from counterpane.craft.rows.sizes.swaps import Swaps
from counterpane.craft.rows.starred import with_starred_rows
from counterpane.craft.rows.statements import (
    StatedCastOn,
    StatedMultiple,
    begins_piece,
    cast_on_in,
    count_in,
    end_in,
    multiple_in,
    not_whole_in,
)
from counterpane.craft.rows.steps import AgainStep, EndStep, StartStep, Step
from counterpane.craft.rows.terms import terms_of
from counterpane.craft.rows.tree import Row
from counterpane.craft.rows.unlabelled import numbered, strange_label, worked
from counterpane.craft.stitches import Terms, Vocabulary

__all__ = ["AgainStep", "EndStep", "Instructions", "StartStep", "Step", "read_again", "read_sizes", "read_text"]
_NEAR_ROW = re.compile(r"\W*([a-z]{2,8})\s+\d{1,4}\s*(?:\([^)]*\)\s*)?:")
LONGEST_TITLE = 80  # House.
_OF_WORK: frozenset[ClauseKind] = frozenset({"row", "again", "cast-on", "bind-off"})
_ROW_WORDS = ("row", "rows", "round", "rounds", "rnd", "rnds")


@dataclass(frozen=True, slots=True)
class Instructions:
    """What a text says: rows in working order with repeat lines between them, statements, faults, and the terms.

    `sizes` are those of a text in several, None of one in one size; `size` counts from 0. `kept` is what was read on
    the way, for texts of the same terms that are nearly alike.
    """

    steps: tuple[Step, ...]
    faults: tuple[Fault, ...]
    terms: Terms
    cast_on: StatedCastOn | None = None
    multiple: StatedMultiple | None = None
    title: str | None = None
    page: Page = Page()
    sizes: Sizes | None = None
    size: int = 0
    kept: Kept | None = field(default=None, compare=False, repr=False)

    @property
    def shared(self) -> Shared:
        """What was worked out of the text before, for whoever asks again."""
        return self.kept.shared if self.kept else Shared()

    @property
    def rows(self) -> tuple[Row, ...]:
        """The rows in working order, each listed once."""
        return tuple(step for step in self.steps if isinstance(step, Row))


def read_text(text: str, vocabulary: Vocabulary, terms: Terms | None = None) -> Instructions:
    """Read a whole text; every fault is kept and none hides another. Of a text in several sizes, read the first."""
    return next(read_sizes(text, vocabulary, terms))


def read_sizes(text: str, vocabulary: Vocabulary, terms: Terms | None = None) -> Iterator[Instructions]:
    """Read a text once for each of its sizes; what is the same in all of them is read once."""
    return _read_sizes(text, Kept(Shapes(vocabulary, terms or terms_of(text))))


def read_again(text: str, earlier: Instructions) -> Iterator[Instructions]:
    """Read a text once for each of its sizes, in the terms of one that is nearly alike; only other lines are read."""
    kept = earlier.kept
    assert kept is not None
    return _read_sizes(text, kept)


def _read_sizes(text: str, kept: Kept) -> Iterator[Instructions]:
    page = page_of(text, kept.lines)
    kept = kept.explained(page)
    shared, sizes = kept.shared, sizes_in(page.lines)
    in_sizes = _of_sizes(text, page, sizes, shared) if sizes else [clauses(text, page, shared=shared)]
    for size, found in enumerate(in_sizes):
        labelled = any(clause.kind == "row" for clause in found)
        listed = numbered(with_starred_rows(found), kept.shapes.vocabulary, labelled, shared)
        read = _Assembly(listed, kept, sizes.number if sizes else 1).instructions(page)
        yield replace(read, steps=without_misfits(read.steps, sizes), sizes=sizes, size=size) if sizes else read


def _of_sizes(text: str, page: Page, sizes: Sizes, shared: Shared) -> Iterator[list[Clause]]:
    """Yield the clauses of each size; rows that differ in plain numbers alone come from those of the first size."""
    lines = for_size(sizes, 0)
    first = clauses(text, page, lines, shared)
    yield first
    swaps = Swaps(sizes, first)
    for size in range(1, sizes.number):
        plain = swaps.plain(size)
        of_size = for_size(sizes, size, {number: lines[number] for number in plain})
        found = clauses(text, page, of_size, shared)
        yield [swaps.swapped(each, size) if each.line.number - 1 in plain else each for each in found]


class _Assembly:
    """The clauses of a text taken one by one: statements kept, rows listed."""

    def __init__(self, found: Sequence[Clause], kept: Kept, sizes: int) -> None:
        self.found = found
        self.kept, self.shapes, self.shared = kept, kept.shapes, kept.shared
        self.vocabulary, self.terms = kept.shapes.vocabulary, kept.shapes.terms
        self.listing = Listing(sizes)
        self.faults = self.listing.faults
        self.cast_on: StatedCastOn | None = None
        self.cast_on_beside: StatedCastOn | None = None
        self.multiple: StatedMultiple | None = None
        self.title: str | None = None
        self.titled = -1

    @cached_property
    def last_worked(self) -> Clause | None:
        """The last clause that is a row, with a label or without, a repeat line, a cast-on or an end."""
        known = self.vocabulary, self.terms
        found = (one for one in reversed(self.found) if one.kind in _OF_WORK or self.shared.of(worked, one, *known))
        return next(found, None)

    def instructions(self, page: Page) -> Instructions:
        """Go through all clauses in order."""
        for index, clause in enumerate(self.found):
            if index == 0 and self.is_title(clause):
                self.title, self.titled = clause.name, clause.numbers[-1]
            elif clause.kind == "row":
                self.row(clause)
            elif clause.kind == "again" and clause.again:
                self.listing.again(clause.again)
            elif clause.kind == "aside":
                self.beside(clause)
            elif clause.kind != "abbreviation" and not self.unnamed_row(clause):
                self.statement(clause)
        if self.listing.empty and (self.cast_on or self.cast_on_beside):
            self.only_fabrics()
        self.listing.end_block(None)
        if page.unread:
            self.faults.append(Fault("too-many-rows", page.unread))
        steps = with_sides(self.with_whole(self.listing.steps), self.shared)
        found = self.cast_on or self.cast_on_beside, self.multiple, self.title
        return Instructions(steps, tuple(self.faults), self.terms, *found, page, kept=self.kept)

    def unnamed_row(self, clause: Clause) -> bool:
        """List stitches that stand among rows without a label; nothing that can be worked is passed over."""
        begun = not self.listing.empty or self.cast_on is not None
        body = self.shared.of(worked, clause, self.vocabulary, self.terms) if begun else None
        if body:
            self.row(replace(clause, kind="row", label=Label(()), body=[*body]))
        return bool(body)

    def only_fabrics(self) -> None:
        """List the row that is worked over and over, and the end, where a text casts on and says no other rows."""
        for clause in self.found:
            if clause.kind == "bind-off":
                self.statement(clause)
            elif order := every_row_in(clause.line, clause.start, clause.end):
                self.row(replace(clause, kind="row", label=Label((), "every"), body=[*order.body]))

    # -- statements and headings

    def is_title(self, clause: Clause) -> bool:
        """Tell whether a text begins with its title; a multiple in brackets behind it is taken as well."""
        if clause.kind == "prose" and (len(clause.text) > LONGEST_TITLE or clause.text[-1:] in ".!?:;,)"):
            return False
        if clause.kind not in ("heading", "prose") or worked(clause, self.vocabulary, self.terms):
            return False
        if self.near_label(clause) or cast_on_in(clause.line, clause.start, clause.end):
            return False
        self.multiple = multiple_in(clause.line, clause.start, clause.end)
        return clause.kind == "heading" or self.multiple is None

    def beside(self, clause: Clause) -> None:
        """Take what notes, sizes and gauge say of counts, where nothing else does."""
        if self.listing.empty:
            stretch = clause.line, clause.start, clause.end
            self.multiple = self.multiple or multiple_in(*stretch)
            self.cast_on_beside = self.cast_on_beside or cast_on_in(*stretch)

    def statement(self, clause: Clause) -> None:
        """Take what a line says of counts, or note it as a heading."""
        line, start, end = clause.line, clause.start, clause.end
        if clause.kind == "cast-on" and (odd := not_whole_in(line, start, end)):
            self.faults.append(Fault("count-not-whole", odd[1], odd[0]))
        elif self.listing.empty:
            self.multiple = self.multiple or multiple_in(line, start, end)
            self.cast_on = self.cast_on or cast_on_in(line, start, end)
        elif clause.kind == "cast-on" and begins_piece(line, start, end):
            self.listing.begin_section(self.listing.section)
            begun = cast_on_in(line, start, end)
            self.listing.step(StartStep(begun or StatedCastOn(0, clause.place), begun is not None))
        elif clause.kind == "bind-off" and (ended := end_in(line, start, end, clause is self.last_worked)):
            self.listing.step(EndStep(ended))
        elif stated := count_in(line, start, end):
            self.listing.state(stated)
            return
        if clause.kind in ("heading", "prose") and not self.near_label(clause):
            if strange := strange_label(clause, self.vocabulary, self.terms):
                self.faults.append(Fault("label-not-known", clause.place, strange, fatal=False))
            elif clause.kind == "heading":
                self.head(clause)

    def head(self, clause: Clause) -> None:
        """Take a heading for the section that follows; a line right below the title is none."""
        if clause.line.number != self.titled + 1:
            self.listing.begin_section(clause.name)

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
        if not label.numbers and not label.copies:
            self.faults.append(Fault("asks-for-nothing", clause.place, clause.text))
            return
        self.listing.begin_rows(label)
        if self.listing.full:
            self.listing.refuse(clause.place, str(label.numbers[0]) if label.numbers else label.word)
            return
        if label.too_long or label.copies > MOST_ROWS_AT_ONCE:
            last = label.numbers[-1] if label.numbers else label.copies
            self.faults.append(Fault("too-many-rows", clause.place, str(last)))
        for row in self.rows_of(clause, label):
            self.listing.add(row)

    def rows_of(self, clause: Clause, label: Label) -> list[Row]:
        """Return one row for each number of a label, or for each copy of "next 2 rows"; the last carries the count."""
        clause = replace(clause, body=[]) if clause.is_long else clause
        named, read = self.shared.of(words_of, clause, self.shapes)
        self.faults += read.faults
        rows = list(self.shared.of_words(rows_of, self.listing.section or "", clause, label, read))
        if named:
            rows = self.lent(rows, named)
        elif not read.parts and read.readable:
            rule = "row-too-long" if clause.is_long else "row-says-nothing"
            self.faults.append(Fault(rule, clause.place, rows[0].label))
            rows = [replace(row, readable=False) for row in rows]
        if label.also:
            self.listing.want(label, rows[-1])
            rows = rows if label.numbers else []
        return rows

    def lent(self, rows: list[Row], named: Borrowed) -> list[Row]:
        """Give rows the words of those they name; a name without a row, and words beside it, cannot be read."""
        recent = () if named.labels else self.listing.recent(named.back or lenders_of(rows))
        labels = named.labels or tuple(row.label for row in recent) or ("",)
        lenders = recent or [self.listing.named(label) for label in labels]
        found = [lender for lender in lenders if lender is not None]
        if len(found) < len(labels):
            missing = next(label for label, lender in zip(labels, lenders, strict=True) if lender is None)
            self.faults.append(Fault("unknown-row", rows[0].start, missing))
        elif rows[0].parts:
            beside = next(token for token in named.rest if token.kind != "pause")
            self.faults.append(Fault("unknown-term", beside.place, beside.text))
        if len(found) < len(labels) or rows[0].parts or not rows[0].readable:
            return [replace(row, readable=False) for row in rows]
        return [with_words(row, found[index % len(found)]) for index, row in enumerate(rows)]

    def with_whole(self, steps: list[Step]) -> list[Step]:
        """Take a row without a repeat as one whole repeat where the text states a multiple."""
        if self.multiple is None or self.multiple.of < 2:
            return steps
        return [as_whole(step) if isinstance(step, Row) else step for step in steps]
