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


def draw_safety(console: Console, safety: Mapping[str, Any]) -> None:
    """Draw findings first, then the lists."""
    console.print("\nSafety", style="bold")
    console.print(STANDING)
    for finding in safety["findings"]:
        style = STYLES[finding["severity"]]
        console.print(Text.assemble((finding["severity"], style), f" {finding['reference']} {finding['rule']}"))
        console.print(Padding(visible(finding["message"]), (0, 0, 0, 4)))
        console.print(Padding(visible(f"Source: {finding['source']} ({finding['basis']})"), (0, 0, 0, 4)))
    for name, label in (("assessed", "Looked at, nothing to say"), ("not_assessed", "Not assessed")):
        if safety[name]:
            console.print(Padding(f"{label}: {', '.join(safety[name])}", (0, 0, 0, 0)))
