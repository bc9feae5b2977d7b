"""Sides printed with rows that cannot all be true."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from counterpane.craft.checking import Examined
from counterpane.craft.checking.runs import PrintedRow, given_line, runs
from counterpane.craft.checking.wording import at, row_name
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.quick import word_of
from counterpane.craft.rows.tree import Place

_SIDE = re.compile(word_of("rs", "right[- ]side", "ws", "wrong[- ]side") + r"\b")
_TURNS = re.compile(r"\b(?:turn|slide|do not turn|rejoin|break|cut|fasten off|join)\b")


@rule(
    "sides-contradict",
    family="wording",
    severity="warning",
    bad="Cast on 4 sts.\nRow 1 (RS): Knit.\nRow 2 (RS): Purl.",
    good="Cast on 4 sts.\nRow 1 (RS): Knit.\nRow 2 (WS): Purl.",
)
def sides_contradict(examined: Examined) -> Iterator[Finding]:
    """Two rows claim sides that do not alternate.

    Worked back and forth, the sides alternate: if row 1 is a right-side row, row 2 is a wrong-side row and row 3 a
    right-side row again. Where a row turns early, or the work is slid back, nothing is said.
    """
    if _SIDE.search(examined.text.lower()) is None:
        return
    for run in runs(examined):
        stated = [(printed, side) for printed in run if (side := _stated(printed)) and printed.numbers]
        if len(stated) < 2 or any(_TURNS.search(printed.row.text.lower()) for printed in run):
            continue
        for printed, side in _minority(stated):
            other = "WS" if side == "RS" else "RS"
            message = f"{row_name(printed.row)} says {side}, which does not alternate with the other rows."
            hint = f"Print {other}, or number the rows so that right and wrong side alternate."
            corrections = _swapped(examined, printed.row.place, printed.label, other)
            yield at(printed.row.place, "sides-contradict", "warning", message, hint, corrections=corrections)


def _stated(printed: PrintedRow) -> str | None:
    """Return the one side that a label prints; None for none, for both, and for "and all WS rows"."""
    label = re.split(r"\b(?:and|&)\b", printed.label)[0]
    found = {"RS" if side.startswith("r") else "WS" for side in _SIDE.findall(label)}
    return found.pop() if len(found) == 1 and len({number % 2 for number in printed.numbers}) == 1 else None


def _minority(stated: Sequence[tuple[PrintedRow, str]]) -> list[tuple[PrintedRow, str]]:
    """Return the rows whose side does not go with that of most others; the first row is believed on a tie."""
    phases = [(printed.numbers[0] + (side == "RS")) % 2 for printed, side in stated]
    most = max((0, 1), key=lambda phase: (phases.count(phase), phase == phases[0]))
    return [item for item, phase in zip(stated, phases, strict=True) if phase != most]


def _swapped(examined: Examined, place: Place, label: str, other: str) -> tuple[str, ...]:
    """Return the line with the other side in its label, which prints one."""
    line = given_line(examined, place.line)
    start, end = next(_SIDE.finditer(label)).span()
    return (line[: place.column - 1 + start] + other + line[place.column - 1 + end :],)
