"""A text cut into clauses: labelled rows, repeat lines, statements, headings, prose; no row is understood here."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Literal, TypeAlias

from counterpane.craft.rows.again import FROM_STAR, Again, again_in
from counterpane.craft.rows.care import words_of_work
from counterpane.craft.rows.kinds import Kind, may_begin
from counterpane.craft.rows.labels import Label, label_at
from counterpane.craft.rows.layout import is_heading
from counterpane.craft.rows.pages import Page, page_of
from counterpane.craft.rows.passages import Topic
from counterpane.craft.rows.row_orders import order_at, plainly
from counterpane.craft.rows.sharing import Shared
from counterpane.craft.rows.tree import Place
from counterpane.craft.rows.words import Line, Token
from counterpane.craft.rows.wraps import beginnings, blocks, unwrapped

ClauseKind: TypeAlias = Literal["row", "again", "cast-on", "bind-off", "heading", "prose", "aside", "abbreviation"]
# Passages of a pattern in which nothing is knitted: what stands there without a label is no row.
_ASIDE: frozenset[Topic] = frozenset({"abbreviations", "gauge", "materials", "size", "notes"})
# Behind an order for rows, the call of a starred repeat and stitches that begin a sentence are no part of it.
_AFTER_ORDER = re.compile(
    rf"{FROM_STAR.pattern}|(?<=[.;]\s)(?:(?:k|p|sl)\s?\d|(?:k2tog|p2tog|ssk|yo)\b|(?:knit|purl)\s+(?:to|across|all)\b)"
)

LONGEST_ROW = 8_000
"""Characters of a row beyond which it is not read, some five printed pages; house figure that bounds time."""


@dataclass(slots=True)
class Clause:
    """A stretch of text of one kind, with the tokens of a row's words."""

    kind: ClauseKind
    line: Line
    start: int
    end: int
    label: Label | None = None
    again: Again | None = None
    body: list[Token] = field(default_factory=list)

    @property
    def text(self) -> str:
        """The clause as given, on one line."""
        return self.line.given(self.start, self.end).strip()

    @property
    def name(self) -> str:
        """The words of a heading without its signs."""
        return " ".join(self.text.strip("#*_: ").split())

    @property
    def is_long(self) -> bool:
        """Whether it is longer than any row that is read."""
        return self.end - self.start > LONGEST_ROW

    @property
    def numbers(self) -> tuple[int, ...]:
        """The numbers of the lines that it stands on."""
        if not self.line.parts:
            return (self.line.number,)
        return tuple(
            line.number for begin, line in self.line.parts if begin < self.end and begin + len(line.text) > self.start
        )

    @property
    def place(self) -> Place:
        """Where the clause begins."""
        return self.line.place(self.start)


def clauses(
    text: str, page: Page | None = None, lines: Sequence[Line] | None = None, shared: Shared | None = None
) -> list[Clause]:
    """Cut a text into clauses in the order printed; wrapped rows are joined.

    Lines of a list of abbreviations are "abbreviation", those about gauge, materials, sizes and notes "aside". `lines`
    are those of one size where the text is in several; what is the same in all of them is `shared`.
    """
    page, shared = page or page_of(text), shared or Shared()
    known: dict[int, ClauseKind] = {each.line.number: "aside" for topic in _ASIDE for each in page.under(topic)}
    known |= {passage.head.number: "aside" for passage in page.passages if passage.topic in _ASIDE}
    known |= dict.fromkeys(page.glossary.lines, "abbreviation")
    out: list[Clause] = []
    for block in blocks(page.lines) if lines is None else blocks(lines, shared):
        told = ",".join([known.get(line.number, "") for line in block]) if known else ""
        out += shared.of_words(_of_block, told, shared, *block)
    return out


def _of_block(told: str, shared: Shared, *block: Line) -> list[Clause]:
    """Cut lines of a block into clauses; `told` are their kinds, where known, with commas between."""
    kinds = {line.number: kind for line, kind in zip(block, told.split(","), strict=False) if kind}
    explained = frozenset(number for number, kind in kinds.items() if kind == "abbreviation")
    out: list[Clause] = []
    for line in unwrapped(block, explained, shared):
        kind = kinds.get(line.number)
        out += [_known(line, kind)] if kind else shared.of(_of_line, line, shared)
    return out


def _known(line: Line, kind: str) -> Clause:
    return Clause("aside" if kind == "aside" else "abbreviation", line, 0, len(line.text))


def _of_line(line: Line, shared: Shared) -> list[Clause]:
    """Cut one line where a sentence ends and a label, repeat line or cast-on begins."""
    if not may_begin(line):
        return [_clause(line, 0, len(line.text), "prose")]
    out: list[Clause] = []
    (begin, kind), *further = shared.of(beginnings, line).items()
    for cut, following in further:
        goes_on = following == "prose" and not (kind == "order" and _AFTER_ORDER.match(line.text, cut))
        if cut > begin and not goes_on:
            out.append(_clause(line, begin, cut, kind))
            begin, kind = cut, following
    return [*out, _clause(line, begin, len(line.text), kind)]


def _in_label(line: Line, start: int, end: int) -> Again | None:
    """Return the repeat line that a label stands before: "Row 9: Repeat rows 1-8 until it is square"."""
    begin = start + len(line.text[start:end]) - len(line.text[start:end].lstrip())
    again = again_in(line, begin, end)
    return again if again and len(again.numbers) > 1 and not again.loose else None


def _words(line: Line, start: int, end: int, rows: int) -> list[Token]:
    """Return the words of a row without those that only tell a knitter what to look after.

    "Rows 1-3: knit three plain rows" says how many rows there are once more.
    """
    begin = start + len(line.text[start:end]) - len(line.text[start:end].lstrip())
    if (order := order_at(line, begin, end)) and order.copies == rows:
        return list(order.body)
    return words_of_work(line, start, end)


def _clause(line: Line, start: int, end: int, kind: Kind) -> Clause:
    """Build the clause of a kind."""
    if kind == "again":
        return Clause("again", line, start, end, again=again_in(line, start, end))
    if kind == "row":
        found = label_at(line.text, start, end)
        label, behind = found or (Label(()), start)
        if (again := _in_label(line, behind, end)) and len(label.numbers) <= 1:
            return Clause("again", line, start, end, again=again)
        words = _words(line, behind, min(end, behind + LONGEST_ROW), len(label.numbers) or label.copies)
        return Clause("row", line, start, end, label, body=plainly(words))
    if kind == "order" and (order := order_at(line, start, end)):
        label = Label((), "next", order.copies, round=order.round)
        return Clause("row", line, start, end, label, body=list(order.body))
    if kind in ("cast-on", "bind-off"):
        return Clause("cast-on" if kind == "cast-on" else "bind-off", line, start, end)
    raw = line.given(start, end).strip()
    return Clause("heading" if is_heading(raw) else "prose", line, start, end)
