"""The largest blanket of the yarn at hand, as a person reads it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from rich.console import Console

from counterpane.cli.showing.plans import draw_counts, draw_findings, draw_title
from counterpane.cli.showing.safety import draw_safety
from counterpane.cli.showing.words import number_of
from counterpane.cli.showing.yarns import draw_yarn

Answer = Mapping[str, Any]


def draw(console: Console, title: str, answer: Answer) -> None:
    """Draw the size, what it takes, and what the plan has to say."""
    draw_title(console, title)
    plan, size = answer["plan"], answer["size"]
    console.print(f"\nThe largest for which the yarn is enough: {_cm(size)}.", style="bold")
    draw_counts(console, plan)
    console.print(f"{number_of(answer['rows'], 'row')} in all.")
    console.print("The yarn does for more: nothing larger is looked at." if answer["limited"] else _bare(answer))
    draw_yarn(console, answer["yarn"])
    draw_findings(console, plan["findings"])
    draw_safety(console, plan["safety"])


def _bare(answer: Answer) -> str:
    bare = answer["without_margin"]
    if bare is None or _cm(bare) == _cm(answer["size"]):
        return "With no margin it would be no larger."
    return f"With no margin, if the likely figures held exactly: {_cm(bare)}, cast on {bare['cast_on']:,}."


def _cm(size: Answer) -> str:
    return f"{size['width_cm']} by {size['length_cm']} cm"
