"""The rows of a section in words: one vertical repeat row by row, then how often it is worked again."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from counterpane.craft.constructions import Section
from counterpane.craft.counts import work
from counterpane.craft.pattern import Repeat, WrittenRow
from counterpane.craft.pattern.figures import times_more
from counterpane.craft.rows.say import WordsKind, say_line
from counterpane.craft.rows.tree import Row, Side
from counterpane.craft.sizing.lengths import side_of
from counterpane.craft.stitches import Terms, Vocabulary


class CannotBeWritten(ValueError):
    """A section whose rows do not work at its own stitch count; a plan that was proved holds none."""


def listed_rows(section: Section, vocabulary: Vocabulary) -> tuple[Row, ...]:
    """Return the rows to print once, numbered from 1, with side, and with the count where it changes.

    A cycle of an odd number of rows stands twice, because its second pass begins on the other side. Raises
    CannotBeWritten where a row does not work at the section's count.
    """
    cycle = section.cycle if len(section.cycle) % 2 == 0 else section.cycle * 2
    rows = cycle[: section.rows]
    counts = counts_of(section, rows, vocabulary)
    return tuple(
        replace(
            row,
            label=str(index + 1),
            side=side_of(index + 1, section.first_row_side),
            stated=counts[index + 1] if counts[index + 1] != counts[index] else None,
        )
        for index, row in enumerate(rows)
    )


def next_side(section: Section) -> Side:
    """Return the side of the row that follows a section."""
    return side_of(section.rows + 1, section.first_row_side)


def written_rows(
    rows: Sequence[Row], section: Section, vocabulary: Vocabulary, terms: Terms, words: WordsKind = "short"
) -> tuple[WrittenRow, ...]:
    """Write each listed row as a line, beside the stitches it leaves."""
    counts = counts_of(section, rows, vocabulary)
    return tuple(
        WrittenRow(
            row.label,
            side_of(index, section.first_row_side),
            say_line(row, vocabulary, terms, words=words),
            counts[index],
        )
        for index, row in enumerate(rows, start=1)
    )


def repeats(listed: int, rows: int) -> tuple[Repeat, ...]:
    """Return the lines that take a section from its listed rows to all its rows: whole repeats, then a part of one."""
    again, over = divmod(rows - listed, listed)
    lines: list[Repeat] = []
    if again:
        lines.append(Repeat(1, listed, again, f"Rep {_span(listed)} {times_more(again)}."))
    if over:
        lines.append(Repeat(1, over, 1, f"Then work {_span(over)} once more."))
    return tuple(lines)


def _span(last: int) -> str:
    return "row 1" if last == 1 else f"rows 1–{last}"


def counts_of(section: Section, rows: Sequence[Row], vocabulary: Vocabulary) -> list[int]:
    """Return the count before the first row and after each row."""
    counts = [section.before]
    for row, step in zip(rows, work([row.parts for row in rows], section.before, vocabulary), strict=True):
        if step.after is None:
            raise CannotBeWritten(f"{section.name}, row {row.label}: does not work over {counts[-1]} stitches")
        counts.append(step.after)
    return counts
