"""Numbers and rows in a knitter's words, for every rule that speaks of counts."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from counterpane.craft.checking.follow import Jam
from counterpane.craft.counts import Misfit, Progression
from counterpane.craft.findings import Finding, Severity
from counterpane.craft.rows.tree import NOWHERE, Place, Row

_LONGEST_WORD = 40  # House.


def stitches(number: int) -> str:
    """Say a number of stitches: "1 stitch", "20 stitches"."""
    return f"{number} stitch" if number == 1 else f"{number} stitches"


def row_name(row: Row) -> str:
    """Say which row: "Row 3", "Round 2", "The setup row"."""
    if not row.label.isdigit():
        return f"The {row.label} row"
    return f"{'Round' if row.side == 'round' else 'Row'} {row.label}"


def in_several_sections(rows: Iterable[Row]) -> frozenset[str]:
    """Return the labels that rows of more than one section have."""
    sections: dict[str, set[str | None]] = {}
    for row in rows:
        sections.setdefault(row.label, set()).add(row.section)
    return frozenset(label for label, found in sections.items() if len(found) > 1)


def jam_name(jam: Jam, several: frozenset[str]) -> str:
    """Say which row a knitter is stuck in, and when: "Row 3 of Border", "Row 2, worked again at line 7,".

    The section is named where `several` have a row of that label.
    """
    row = jam.row
    name = f"{row_name(row)} of {quoted(row.section)}" if row.label in several and row.section else row_name(row)
    if jam.again is None:
        return name
    often = "" if jam.working == 1 else f" for the {ordinal(jam.working)} time"
    return f"{name}, worked again{often} at line {jam.again.again.place.line},"


def on_needle(jam: Jam) -> str:
    """Say what is on the needle where a row fails at any count, if that is known; empty where it is not."""
    return "" if jam.begins is None else f" From the cast-on it begins with {stitches(jam.begins)}."


def ordinal(number: int) -> str:
    """Say a number in order: "3rd", "11th", "22nd"."""
    last = "" if number // 10 % 10 == 1 else str(number % 10)
    return f"{number}{ {'1': 'st', '2': 'nd', '3': 'rd'}.get(last, 'th') }"


def multiple(progression: Progression) -> str:
    """Say a progression: "a multiple of 6 stitches plus 2, at least 8", "24 stitches and no other count"."""
    if progression.of == 0:
        return f"{stitches(progression.least)} and no other count"
    if progression.of == 1:
        return f"any count from {stitches(progression.least)} on"
    plus = f" plus {progression.plus}" if progression.plus else ""
    return f"a multiple of {progression.of} stitches{plus}, at least {progression.least}"


def counts(starts: Sequence[Progression]) -> str:
    """Say what counts rows take, a multiple or a few single ones: "5, 6 or 7 stitches and no other count"."""
    if len(starts) == 1:
        return multiple(starts[0])
    *others, last = (start.least for start in starts)
    return f"{', '.join(map(str, others))} or {stitches(last)} and no other count"


def either(numbers: Iterable[int | None]) -> str:
    """Say one or two counts: "15 or 21"; empty where none is known."""
    return " or ".join(str(number) for number in dict.fromkeys(numbers) if number is not None)


def quoted(word: str) -> str:
    """Quote a word of the text, shortened where it is very long."""
    return f"“{word if len(word) <= _LONGEST_WORD else word[:_LONGEST_WORD] + '…'}”"


def at(
    place: Place, rule: str, severity: Severity, message: str, hint: str, *, corrections: tuple[str, ...] = ()
) -> Finding:
    """Build a finding at a place of the text."""
    return Finding(rule, severity, message, hint, place.line, place.column, corrections=corrections)


def place_of(row: Row, misfit: Misfit) -> Place:
    """Return where a row fails: its first stitch or repeat that fails, else where its words begin."""
    return row.start if misfit.place == NOWHERE else misfit.place
