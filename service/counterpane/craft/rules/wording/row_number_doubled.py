"""A row number that stands twice."""

from __future__ import annotations

import re
from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.runs import PrintedRow, given_line, runs
from counterpane.craft.checking.wording import at, row_name
from counterpane.craft.findings import Finding, rule

_NOTE = re.compile(r"\((?!\s*(?:rs|ws|right|wrong|\d+\s*st))")


@rule(
    "row-number-doubled",
    family="wording",
    severity="warning",
    bad="Cast on 4 sts.\nRow 1: Knit.\nRow 2: Purl.\nRow 2: Knit.",
    good="Cast on 4 sts.\nRow 1: Knit.\nRow 2: Purl.\nRow 3: Knit.",
)
def row_number_doubled(examined: Examined) -> Iterator[Finding]:
    """A row number stands twice.

    “Rep rows 1–4” then means two different things, and a knitter who keeps count is a row out. Rows that begin again
    at their first number are another part, and a number with a note of its own (“size 2 only”) is another row.
    """
    for run in runs(examined):
        for earlier, printed in _doubled(run):
            if _NOTE.search(printed.label) or _NOTE.search(earlier.label):
                continue
            message = f"{row_name(printed.row)} is given on line {earlier.row.place.line} already."
            hint = f"Number it {max(earlier.numbers) + 1}, or leave one of the two out."
            corrections = _renumbered(examined, run, printed)
            place = printed.row.place
            yield at(place, "row-number-doubled", "warning", message, hint, corrections=corrections)
            break


def _doubled(run: tuple[PrintedRow, ...]) -> Iterator[tuple[PrintedRow, PrintedRow]]:
    """Yield each printed row after one of the same number, unless the rows begin again at their first number."""
    first: dict[int, PrintedRow] = {}
    before: PrintedRow | None = None
    for printed in run:
        number = printed.numbers[0] if printed.numbers else None
        earlier = first.get(number) if number is not None else None
        if earlier is not None and (earlier is before or number != min(first)):
            yield earlier, printed
        if number is not None:
            if earlier is not None and number == min(first):
                first = {}
            first[number] = printed
        before = printed


def _renumbered(examined: Examined, run: tuple[PrintedRow, ...], printed: PrintedRow) -> tuple[str, ...]:
    """Return the line with the next number, where no other line has it."""
    new = printed.numbers[0] + 1
    if any(new in other.numbers for other in run) or len(printed.numbers) != 1:
        return ()
    place, line = printed.row.place, given_line(examined, printed.row.place.line)
    begin = place.column - 1
    label = line[begin : begin + len(printed.label)]
    changed = re.sub(rf"(?<!\d){printed.numbers[0]}(?!\d|st|nd|rd|th)", str(new), label, count=1)
    return (line[:begin] + changed + line[begin + len(label) :],) if changed != label else ()
