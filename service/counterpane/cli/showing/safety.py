"""The safety record as a person reads it: what is known, what was looked at, and what nobody has assessed."""

from __future__ import annotations

from collections.abc import Mapping
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
            console.print(f"{label}: {', '.join(safety[name])}.")
    if safety["findings"]:
        console.print(MORE)
