"""Rows that can be read, said more clearly: a star put where a repeat was assumed, a word with one meaning only.

A clearer row reads as the row does, and says it without the doubt.
"""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.checking.doubts import undoubted
from counterpane.craft.checking.edits import Edit
from counterpane.craft.checking.examine import Examined
from counterpane.craft.checking.rewordings import decided, starred
from counterpane.craft.checking.rewriting import Stretch, lines_with
from counterpane.craft.checking.suspects import printed_row
from counterpane.craft.rows.mistakes import Fault
from counterpane.craft.rows.read import read_row
from counterpane.craft.rows.tree import Row

LONGEST_AGAIN = 1_200
"""Signs of a row beyond which it is not read again without one doubt; house figure that bounds time."""


def with_star(examined: Examined, row: Row) -> tuple[str, ...]:
    """Return the line of a row whose whole list was taken as the repeat, with the star that says so."""
    printed = printed_row(examined, row, LONGEST_AGAIN)
    return _clearer(examined, row, printed, [starred(printed)]) if printed else ()


def without_doubt(examined: Examined, fault: Fault) -> tuple[str, ...]:
    """Return the line of a row in which a word with two meanings is replaced by the one that what is printed decides.

    Where nothing decides, none is given.
    """
    rows = (row for row in examined.rows if row.start <= fault.place < row.end and row.readable)
    row = next(rows, None)
    printed = printed_row(examined, row, LONGEST_AGAIN) if row else None
    if row is None or printed is None:
        return ()
    at = examined.offset(fault.place)
    word = next((word for word in printed.words if word.begin == at), None)
    keys = (key for key in fault.readings if key in examined.vocabulary.stitches)
    names = [examined.vocabulary[key].names[examined.instructions.terms][0] for key in keys]
    return _clearer(examined, row, printed, decided(printed, word, names)) if word else ()


def _clearer(examined: Examined, row: Row, printed: Stretch, edits: Iterable[Edit]) -> tuple[str, ...]:
    """Return the line of a row by the first edit that reads as the row does, without a fault."""
    shared = examined.instructions.shared  # The other sizes of a text mostly say the same row.
    for edit in edits:
        words = printed.changed(edit.changes)
        read = shared.of_words(read_row, words, examined.vocabulary, examined.instructions.terms)
        if not read.faults and not read.whole and read.parts == undoubted(row.parts):
            return (lines_with(examined.text, edit.changes, row.place.line, row.end.line),)
    return ()
