"""The rows of a plan as they are worked, with the stitches that each should leave."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from counterpane.craft.constructions import Plan, Section
from counterpane.craft.counts.writing_out import write_out
from counterpane.craft.helping import Stretches, WorkedRow
from counterpane.craft.pattern.rows import counts_of
from counterpane.craft.rows.effects import total
from counterpane.craft.rows.tree import Group, IntoOne, Node, OpenRepeat, Row, Work
from counterpane.craft.sizing.lengths import side_of
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.yarn.pace import is_slow

PLAIN = frozenset({"k", "p"})


def worked_rows(plan: Plan, first: int, last: int, vocabulary: Vocabulary) -> tuple[WorkedRow, ...]:
    """Return the rows from one number to another, counted from 1 at the cast-on; those there are not are left out."""
    return tuple(row for section in plan.sections for row in rows_of(section, first, last, vocabulary))


def rows_of(section: Section, first: int, last: int, vocabulary: Vocabulary) -> list[WorkedRow]:
    """Return the rows of a section from one number of the blanket to another; those it has not are left out."""
    begin = max(1, first - section.first_row + 1)
    end = min(section.rows, last - section.first_row + 1)
    if begin > end:
        return []
    counts = counts_of(section, section.cycle, vocabulary)
    slower = is_slow(section, vocabulary)
    return [
        WorkedRow(
            section.first_row + number - 1,
            section.name,
            number,
            _row(section, number),
            counts[(number - 1) % (len(counts) - 1)],
            counts[(number - 1) % (len(counts) - 1) + 1],
            slower,
        )
        for number in range(begin, end + 1)
    ]


def _row(section: Section, number: int) -> Row:
    row = section.cycle[(number - 1) % len(section.cycle)]
    return replace(row, side=side_of(number, section.first_row_side))


def stretches(rows: Sequence[WorkedRow], vocabulary: Vocabulary) -> Stretches | None:
    """Return what the last of the rows that has one repeat leaves, from the edge where the last row ended.

    Rows of plain stitches after it change nothing on the needle. None where none has a repeat.
    """
    turned = True
    for row in reversed(rows):
        found = _stretches(row, vocabulary)
        if found is not None:
            return Stretches(found.after, found.each, found.times, found.before) if turned else found
        if not _is_plain(row):
            return None
        turned = not turned
    return None


def _stretches(row: WorkedRow, vocabulary: Vocabulary) -> Stretches | None:
    opens = [index for index, node in enumerate(row.row.parts) if isinstance(node, OpenRepeat) and not node.plain]
    written = write_out(row.row.parts, row.before, vocabulary, row.row.side)
    if len(opens) != 1 or len(written.times) != 1:
        return None
    (at,) = opens
    repeat = row.row.parts[at]
    if not isinstance(repeat, OpenRepeat) or repeat.last is not None:
        return None
    before, each, after = (
        total(nodes, vocabulary).makes for nodes in (row.row.parts[:at], repeat.parts, row.row.parts[at + 1 :])
    )
    return Stretches(before, each, written.times[0], after)


def _is_plain(row: WorkedRow) -> bool:
    """Say whether a row knits and purls alone: it leaves the stretches of the row before it as they are."""
    return row.before == row.after and stitches_in(row.row.parts) <= PLAIN


def stitches_in(parts: Sequence[Node]) -> frozenset[str]:
    """Return the keys of the stitches that are worked; "" stands for all else that happens to loops."""
    found: set[str] = set()
    for node in parts:
        match node:
            case Work():
                found.add(node.stitch)
            case Group() | IntoOne():
                found |= stitches_in(node.parts) | ({""} if isinstance(node, IntoOne) else set())
            case OpenRepeat():
                found |= stitches_in(node.parts) | stitches_in(node.last or ())
            case _:
                found.add("")
    return frozenset(found)
