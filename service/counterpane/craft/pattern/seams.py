"""How a knitter keeps borders level with the body: extra turned rows at the sides, rows that change the count.

The pattern's own rows and counts stay as they are; what is told here may be done or left, and stands in words that can
be worked.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from math import ceil, floor

from counterpane.craft.behaviour import Figure, Seam
from counterpane.craft.behaviour.extra_rows import ExtraRows
from counterpane.craft.behaviour.figures import Basis
from counterpane.craft.behaviour.places import the_band
from counterpane.craft.behaviour.take_up import ChangingRow
from counterpane.craft.pattern.figures import counted
from counterpane.craft.pattern.terms import in_terms
from counterpane.craft.rows.say import WordsKind, say_row
from counterpane.craft.rows.tree import Row
from counterpane.craft.stitches import Terms, Vocabulary

_BASES: Mapping[Basis, str] = {
    "published": "published",
    "borrowed": "borrowed",
    "common practice": "common practice",
    "house": "house figures",
    "memory": "from memory",
}
"""What a figure rests on, as a knitter reads it."""

_BORDERS = {"bottom": "bottom border", "top": "top border"}


def seam_notes(
    evened: Sequence[Seam], vocabulary: Vocabulary, terms: Terms, words: WordsKind = "short"
) -> tuple[str, ...]:
    """Say how the borders of a plan are kept level with its body, where that can be said row by row."""
    told = (note for seam in evened for note in _notes(seam, vocabulary, terms, words))
    return tuple(in_terms(note, terms) for note in told)


def rows_in_notes(evened: Sequence[Seam]) -> tuple[Row, ...]:
    """Return the rows that the notes write out, for the list of abbreviations."""
    pairs = [pair.parts for seam in evened for more in _extra(seam) for pair in more.pairs_in_words]
    return tuple(Row("", parts) for parts in (*pairs, *(row.parts for seam in evened for row in _row(seam))))


def _extra(seam: Seam) -> Iterator[ExtraRows]:
    if seam.extra_rows is not None and seam.extra_rows.pairs_in_words:
        yield seam.extra_rows


def _row(seam: Seam) -> Iterator[ChangingRow]:
    """Give the row that changes the count; it is written out only where the gauges of both parts are known."""
    if seam.swatched and seam.take_up is not None and seam.take_up.row is not None:
        yield seam.take_up.row


def _notes(seam: Seam, vocabulary: Vocabulary, terms: Terms, words: WordsKind) -> Iterator[str]:
    for more in _extra(seam):
        yield _pairs(seam, more, vocabulary, terms, words)
    for row in _row(seam):
        yield _changing(seam, row, vocabulary, terms, words)


def _pairs(seam: Seam, more: ExtraRows, vocabulary: Vocabulary, terms: Terms, words: WordsKind) -> str:
    right, left = (say_row(pair.parts, vocabulary, terms, words) for pair in more.pairs_in_words)
    every = " or ".join(dict.fromkeys(map(str, more.every)))
    return (
        f"To keep the side borders level with {the_band(seam.body)}, as you like: about "
        f"{counted(more.chosen, 'extra pair')} of border rows ({_span(more.pairs)}, {_basis(seam, more.pairs)}), one "
        f"every {every} rows. At the start of a RS row, on the right edge: {right}; then work the row. At the start of "
        f"the WS row after it, on the left edge: {left}; then work the row. The stitch counts stay as they are."
    )


def _basis(seam: Seam, figure: Figure) -> str:
    return "by the gauges given" if seam.swatched else f"by figures of the trade, {_BASES[figure.basis]}"


def _changing(seam: Seam, row: ChangingRow, vocabulary: Vocabulary, terms: Terms, words: WordsKind) -> str:
    said = say_row(row.parts, vocabulary, terms, words)
    first = f"begin with {row.before} sts in place of {row.after}, and " if seam.part == "bottom" else ""
    last = "" if seam.part == "bottom" else f", and bind off over {row.after} sts"
    return (
        f"To let the {seam.part} border be as wide as the body, as you like: {first}work the {row.side} row "
        f"{row.row} of the {_BORDERS.get(row.section, row.section)} as: {said}. That takes {row.before} sts to "
        f"{row.after}{last}."
    )


def _span(figure: Figure) -> str:
    return f"{floor(figure.low or Fraction(0))} to {ceil(figure.high or Fraction(0))}"
