"""A row number that is left out."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import chain, islice, pairwise

from counterpane.craft.checking import Examined
from counterpane.craft.checking.runs import PrintedRow, given_line, runs
from counterpane.craft.checking.wording import at
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.quick import word_of

_EVERY = re.compile(
    word_of("all", "every", "each", "alt(?:ernate)?", "even", "odd")
    + r"\b[^.\n]{0,60}\brow|"
    + word_of(r"rows?\s+not", "back")
    + r"\b"
)
_MOST_NAMED = 6  # House.


@rule(
    "row-number-skipped",
    family="wording",
    severity="warning",
    bad="Cast on 4 sts.\nRow 1: Knit.\nRow 2: Purl.\nRow 4: Purl.",
    good="Cast on 4 sts.\nRow 1: Knit.\nRow 2: Purl.\nRow 3: Purl.",
)
def row_number_skipped(examined: Examined) -> Iterator[Finding]:
    """A row number is left out.

    Either a row is missing or the rows are numbered wrongly; the knitter cannot tell which, and a repeat line that
    names rows by number means other rows than were meant.
    """
    filled = _is_cut(examined) or _EVERY.search(examined.text.lower())
    for run in () if filled else runs(examined):
        numbers = sorted({number for printed in run for number in printed.numbers})
        gaps = [range(one + 1, other) for one, other in pairwise(numbers) if other > one + 1]
        if not gaps or not all(printed.numbers for printed in run):
            continue
        first, missing = gaps[0][0], sum(map(len, gaps))
        behind = next(printed for printed in run if printed.numbers and max(printed.numbers) > first)
        named = ", ".join(map(str, islice(chain.from_iterable(gaps), _MOST_NAMED)))
        some = named + ("…" if missing > _MOST_NAMED else "")
        message = f"Row {some} is not given." if missing == 1 else f"Rows {some} are not given."
        hint = f"Add row {first}, or number the rows again."
        corrections = _renumbered(examined, run, behind, gaps)
        yield at(behind.row.place, "row-number-skipped", "warning", message, hint, corrections=corrections)


def _is_cut(examined: Examined) -> bool:
    """Tell whether the text names more rows than are read."""
    return any(fault.rule == "too-many-rows" for fault in examined.instructions.faults)


def _renumbered(
    examined: Examined, run: tuple[PrintedRow, ...], behind: PrintedRow, gaps: list[range]
) -> tuple[str, ...]:
    """Return the line with the next number, where it is the last of its run and so no other line changes."""
    if behind is not run[-1] or len(behind.numbers) != 1 or gaps[-1].stop != behind.numbers[0]:
        return ()
    place, line = behind.row.place, given_line(examined, behind.row.place.line)
    label = line[place.column - 1 : place.column - 1 + len(behind.label)]
    new = re.sub(rf"(?<!\d){behind.numbers[0]}(?:st|nd|rd|th)?", lambda _: str(gaps[0][0]), label, count=1)
    worded = label.split()[:1]
    if not worded or not worded[0].isalpha():
        return ()
    return (line[: place.column - 1] + new + line[place.column - 1 + len(label) :],)
