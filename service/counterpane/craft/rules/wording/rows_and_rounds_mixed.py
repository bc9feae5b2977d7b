"""Rows and rounds in one run."""

from __future__ import annotations

import re
from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.runs import PrintedRow, given_line, runs
from counterpane.craft.checking.wording import at
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.quick import word_of

_ROUND = re.compile(word_of("rounds?", "rnds?") + r"\b")
_ROW = re.compile(word_of("rows?") + r"\b")
_JOINS = re.compile(word_of("join", "turn", "circular", "in the round", "flat", "back and forth") + r"\b")


@rule(
    "rows-and-rounds-mixed",
    family="wording",
    severity="warning",
    bad="Cast on 4 sts.\nRow 1: Knit.\nRow 2: Purl.\nRound 3: Knit.",
    good="Cast on 4 sts.\nRow 1: Knit.\nRow 2: Purl.\nRow 3: Knit.",
)
def rows_and_rounds_mixed(examined: Examined) -> Iterator[Finding]:
    """Rows and rounds stand in one run.

    A round is worked without turning and a row is turned after: the same words give another fabric. Where the text
    says that the work is joined, nothing is said.
    """
    text = examined.text.lower()
    if not (_ROUND.search(text) and _ROW.search(text)) or _JOINS.search(text):
        return
    for run in runs(examined):
        rounds = [printed for printed in run if _ROUND.search(printed.label)]
        rows = [printed for printed in run if _ROW.search(printed.label)]
        if not (rounds and rows):
            continue
        few, kind, other = (rounds, _ROUND, "Row") if len(rounds) <= len(rows) else (rows, _ROW, "Round")
        message = f"This is a {'round' if kind is _ROUND else 'row'} between lines that are {other.lower()}s."
        hint = f"Write “{other}”, or say where the work is joined."
        corrections = _renamed(examined, few[0], kind, other)
        yield at(few[0].row.place, "rows-and-rounds-mixed", "warning", message, hint, corrections=corrections)


def _renamed(examined: Examined, printed: PrintedRow, kind: re.Pattern[str], other: str) -> tuple[str, ...]:
    """Return the line with the other word in its label, which has a word of this kind."""
    match = next(kind.finditer(printed.label))
    line, begin = given_line(examined, printed.row.place.line), printed.row.place.column - 1
    plural = "s" if match.group().endswith("s") else ""
    return (line[: begin + match.start()] + other + plural + line[begin + match.end() :],)
