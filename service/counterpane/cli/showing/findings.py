"""Findings as a person reads them: the line quoted, a caret under the column, the numbers, the next step."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from typing import Any

from rich.cells import cell_len
from rich.console import Console
from rich.padding import Padding
from rich.text import Text

from counterpane.cli.showing.words import visible

MOST_SHOWN = 30  # Findings drawn for a person; --json holds all of them; house.
QUOTED = 88  # Characters of a line that are quoted around its fault; house.
STYLES = {"error": "bold red", "stop": "bold red", "warning": "bold yellow", "warn": "bold yellow", "note": "bold cyan"}
_LINE_END = re.compile("\r\n|[\n\r\u2028\u2029\x0b\x0c]")


def draw_findings(console: Console, text: str, findings: Sequence[Mapping[str, Any]]) -> None:
    """Draw findings about a text, in the order given."""
    lines = _LINE_END.split(text)
    for finding in findings[:MOST_SHOWN]:
        console.print()
        draw_heading(console, finding)
        if finding["line"] and finding["line"] <= len(lines):
            for quoted in quotation(lines[finding["line"] - 1], finding["column"] or 1):
                console.print(f"    {quoted}", soft_wrap=True)
        draw_words(console, finding)
    if len(findings) > MOST_SHOWN:
        console.print(f"\n… and {len(findings) - MOST_SHOWN:,} more; --json lists them all.")


def draw_heading(console: Console, finding: Mapping[str, Any]) -> None:
    """Draw severity, rule and place."""
    head = Text.assemble((finding["severity"], STYLES[finding["severity"]]), " ", finding["rule"], _place(finding))
    console.print(head)


def draw_words(console: Console, finding: Mapping[str, Any]) -> None:
    """Draw the message, the hint and the corrections, indented."""
    said = [finding["message"], finding["hint"]]
    said += [f"Corrected: {text}" for text in finding.get("corrections", ()) if isinstance(text, str)]
    for sentence in filter(None, said):
        console.print(Padding(visible(sentence), (0, 0, 0, 4)))


def quotation(line: str, column: int) -> tuple[str, str]:
    """Return the line, cut to a readable length around the column, and a caret under that column."""
    begin = max(0, min(column - 1 - QUOTED // 2, len(line) - QUOTED)) if len(line) > QUOTED else 0
    left, right = ("…" if begin else ""), ("…" if begin + QUOTED < len(line) else "")
    before = left + visible(line[begin : column - 1])
    return f"{left}{visible(line[begin : begin + QUOTED])}{right}", " " * cell_len(before) + "^"


def _place(finding: Mapping[str, Any]) -> str:
    if finding.get("line"):
        return f", line {finding['line']}, column {finding['column']}"
    return f", {finding['pointer']}" if finding.get("pointer") else ""
