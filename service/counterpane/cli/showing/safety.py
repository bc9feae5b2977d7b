"""The safety record as a person reads it: what is known, what was looked at, and what nobody has assessed."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from rich.console import Console
from rich.padding import Padding
from rich.text import Text

from counterpane.cli.showing.findings import STYLES
from counterpane.cli.showing.words import visible

STANDING = "General information, not approval. What is not assessed is never a pass."
MORE = "`counterpane explain SLUG` gives the reason and the source of each."


def draw_safety(console: Console, safety: Mapping[str, Any]) -> None:
    """Draw findings first, then the lists."""
    console.print("\nSafety", style="bold")
    console.print(STANDING)
    for finding in safety["findings"]:
        head = (finding["severity"], STYLES[finding["severity"]])
        console.print(Text.assemble("\n", head, f" {finding['rule']} ({finding['reference']}, {finding['basis']})"))
        console.print(Padding(visible(finding["message"]), (0, 0, 0, 4)))
    console.print()
    for name, label in (("assessed", "Looked at, nothing to say"), ("not_assessed", "Not assessed")):
        if safety[name]:
            console.print(f"{label}: {', '.join(ranges(safety[name]))}.")
    if safety["findings"]:
        console.print(MORE)


def ranges(references: Sequence[str]) -> list[str]:
    """Return references in order with neighbours drawn together: R03, R04, R05 as R03–R05."""
    runs: list[list[str]] = []
    for reference in sorted(references):
        if runs and _number(reference) == _number(runs[-1][-1]) + 1:
            runs[-1].append(reference)
        else:
            runs.append([reference])
    return [run[0] if len(run) == 1 else f"{run[0]}–{run[-1]}" for run in runs]


def _number(reference: str) -> int:
    return int(reference.removeprefix("R"))
