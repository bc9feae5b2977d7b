"""Rows of one size from those of the first, where they differ in plain numbers alone.

Most rows of a pattern in sizes are cut and told apart but once; the other sizes put their own numbers in. Only a row
that stands alone on its line, with lists of whole numbers behind its label, is treated so.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from counterpane.craft.records import record
from counterpane.craft.rows.borrowing import borrowed
from counterpane.craft.rows.clauses import Clause
from counterpane.craft.rows.sizes import Sizes
from counterpane.craft.rows.sizes.lists import Reading
from counterpane.craft.rows.words import Line, Token


@record
class _Swap:
    """Which word of a row holds the number of a list, and the letters before the number in it."""

    index: int
    lead: str
    reading: Reading


class Swaps:
    """The rows of the first size that others are made of, by their lines; `sizes` those of the text."""

    def __init__(self, sizes: Sizes, first: Sequence[Clause]) -> None:
        self.sizes = sizes
        readings = _by_line(sizes)
        noted = {line for note in sizes.notes for line in _lines(sizes, note.begin, note.stop)}
        noted |= {line for each in sizes.odd for line in _lines(sizes, each.start, each.end)}
        alone: dict[int, list[Clause]] = {}
        for clause in first:
            for number in clause.numbers:
                alone.setdefault(number - 1, []).append(clause)
        self.swaps: dict[int, tuple[_Swap, ...]] = {}
        for line, lists in readings.items():
            clauses = alone.get(line, [])
            if line not in noted and len(clauses) == 1 and _stands_alone(clauses[0]):
                swaps = tuple(_swaps(sizes, line, clauses[0], lists))
                if len(swaps) == len(lists):
                    self.swaps[line] = swaps

    def plain(self, size: int) -> frozenset[int]:
        """Return the lines, from 0, whose row in a size is the first size's with other numbers."""
        return frozenset(line for line, swaps in self.swaps.items() if all(self._word(swap, size) for swap in swaps))

    def swapped(self, clause: Clause, size: int) -> Clause:
        """Return the row of the first size with the numbers of another."""
        body = list(clause.body)
        for swap in self.swaps[clause.line.number - 1]:
            body[swap.index] = self._token(body[swap.index], swap, size)
        return replace(clause, body=body)

    def _word(self, swap: _Swap, size: int) -> str:
        """Return the number of a size as printed, "" where it is no plain one."""
        start, end = swap.reading.entries[size]
        word = self.sizes.flat.text[start:end]
        return word if word.isdecimal() and word.isascii() and word.strip("0") and word[0] != "0" else ""

    def _token(self, token: Token, swap: _Swap, size: int) -> Token:
        word = self._word(swap, size)
        if swap.lead:
            return Token(token.kind, swap.lead + word, token.line, token.start, None, swap.lead + word)
        flat, start = self.sizes.flat, swap.reading.entries[size][0]
        at = flat.line_at(start)
        column = flat.lines[at].place(start - flat.starts[at]).column
        line = Line(token.line.number, word, tuple(range(column, column + len(word) + 1)), token.line.raw)
        return Token(token.kind, word, line, 0, int(word), word)


def _by_line(sizes: Sizes) -> Mapping[int, list[Reading]]:
    """Return the lists of a text by the line that they stand on; one that goes over a line end is on none."""
    out: dict[int, list[Reading]] = {}
    broken: set[int] = set()
    for reading in (*([sizes.named] if sizes.named else []), *sizes.readings):
        lines = _lines(sizes, reading.start, reading.end)
        out.setdefault(lines[0], []).append(reading)
        if len(lines) > 1:
            broken.update(lines)
    return {line: found for line, found in out.items() if line not in broken}


def _stands_alone(clause: Clause) -> bool:
    """Tell whether a clause is a row on one line with stitches of its own."""
    return clause.kind == "row" and not clause.line.parts and borrowed(clause.body) is None


def _lines(sizes: Sizes, start: int, end: int) -> range:
    return range(sizes.flat.line_at(start), sizes.flat.line_at(max(start, end - 1)) + 1)


def _swaps(sizes: Sizes, line: int, clause: Clause, lists: Sequence[Reading]) -> Iterator[_Swap]:
    """Yield for each list of a line the word of the first size that its number stands in."""
    begin, body = sizes.flat.starts[line], clause.body
    own = clause.line
    ends = {token.start + len(token.text) - 1: at for at, token in enumerate(body) if token.line is own}
    for reading in lists:
        start, end = reading.entries[0]
        word = sizes.flat.text[start:end]
        index = ends.get(own.index(sizes.flat.lines[line].column(end - 1 - begin)))
        if index is None or not word.isdecimal() or not word.strip("0"):
            continue
        token = body[index]
        lead = token.text.removesuffix(word)
        if (token.kind == "number" and token.text == word) or (token.kind == "word" and lead in ("k", "p", "sl")):
            yield _Swap(index, lead if token.kind == "word" else "", reading)
