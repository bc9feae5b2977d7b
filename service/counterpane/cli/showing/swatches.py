"""Swatches as a person reads them: each with its steps."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from rich.console import Console
from rich.padding import Padding
from rich.table import Table

Answer = Mapping[str, Any]


def draw(console: Console, title: str, answer: Answer) -> None:
    """Draw every swatch of a plan."""
    console.rule(f"Swatches: {title}", align="left", characters="─")
    for each in answer["swatches"]:
        _name(console, each)
        steps = Table.grid(padding=(0, 1))
        steps.add_column(justify="right")
        for number, step in enumerate(each["steps"], 1):
            steps.add_row(str(number), step)
        console.print(Padding(steps, (0, 0, 0, 2)))
    for each in answer["no_swatch"]:
        _name(console, each)
        console.print(Padding("\n".join(each["steps"]), (0, 0, 0, 2)))
    console.print(f"\n{answer['basis']}")


def _name(console: Console, each: Answer) -> None:
    console.print(f"\n{each['name']} ({', '.join(each['places'])})", style="bold")
