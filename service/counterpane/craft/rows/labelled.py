"""The rows that one labelled line stands for: one for each number of its label, with its words or borrowed ones."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from counterpane.craft.rows.borrowing import Borrowed, borrowed
from counterpane.craft.rows.clauses import Clause
from counterpane.craft.rows.labels import MOST_ROWS_AT_ONCE, Label
from counterpane.craft.rows.read import ReadRow
from counterpane.craft.rows.shapes import Shapes
from counterpane.craft.rows.sizes import Sizes
from counterpane.craft.rows.steps import Step
from counterpane.craft.rows.tree import BindOff, Node, OpenRepeat, Place, Row


def words_of(clause: Clause, shapes: Shapes) -> tuple[Borrowed | None, ReadRow]:
    """Return the rows that the words of a row name, and what its own words say."""
    named = borrowed(clause.body)
    return named, shapes.read(named.rest if named else clause.body)


def rows_of(section: str, clause: Clause, label: Label, read: ReadRow) -> tuple[Row, ...]:
    """Return the rows that a line names, of a section or of "" for none; the last carries the count."""
    names = [str(number) for number in label.numbers] or [label.word or "next"] * min(label.copies, MOST_ROWS_AT_ONCE)
    last = Row(
        names[-1],
        read.parts,
        "round" if label.round else label.side,
        read.stated,
        section or None,
        read.whole,
        read.readable,
        clause.place,
        start=clause.body[0].place if clause.body else clause.place,
        end=_end(clause),
        stated_place=read.stated_place or clause.place,
        text=clause.text,
        old=read.old,
    )
    earlier = {name: replace(last, label=name, stated=None) for name in dict.fromkeys(names[:-1])}
    return (*[earlier[name] for name in names[:-1]], last)


def _end(clause: Clause) -> Place:
    """Return the place just behind the last word of a row, without its full stop."""
    last = next((token for token in reversed(clause.body) if token.text != "."), None)
    if last is None:
        return clause.place
    place = last.line.place(last.start + len(last.text) - 1)
    return Place(place.line, place.column + 1)


def with_words(row: Row, other: Row) -> Row:
    """Return a row with the words of another."""
    return replace(row, parts=other.parts, whole=other.whole, readable=other.readable, stated=row.stated)


def lenders_of(rows: Sequence[Row]) -> int:
    """Return how many rows "the same" means: all before a run of rows that is so many times as long, else the last."""
    first = rows[0].label
    before = int(first) - 1 if first.isdigit() and len(rows) > 1 else 1
    return before if before and len(rows) % before == 0 else 1


def without_misfits(steps: Sequence[Step], sizes: Sizes) -> tuple[Step, ...]:
    """Take a row with a list of more or fewer numbers than there are sizes for one that cannot be read."""
    places = [each.place for each in sizes.misfits]
    if not places:
        return tuple(steps)
    return tuple(
        replace(step, readable=False)
        if isinstance(step, Row) and any(step.place <= place < step.end for place in places)
        else step
        for step in steps
    )


def as_whole(row: Row) -> Row:
    """Return a row as one repeat of its whole list, unless it holds an open repeat or binds all off."""
    if not row.parts or not row.readable or _has_open(row.parts):
        return row
    return replace(row, parts=(OpenRepeat(row.parts, 0, place=row.start),), whole=True)


def _has_open(parts: Sequence[Node]) -> bool:
    return any(isinstance(p, OpenRepeat) or (isinstance(p, BindOff) and p.times is None) for p in parts)
