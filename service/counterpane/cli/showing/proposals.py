"""Proposals as a person reads them: each with its parts and the reasons for its place."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from rich.console import Console
from rich.padding import Padding

from counterpane.cli.showing.words import visible

Answer = Mapping[str, Any]
PASSED = 12
"""Parts passed over that are shown; house figure."""


def draw(console: Console, answer: Answer) -> None:
    """Draw the proposals, the best first, and what was passed over."""
    for number, each in enumerate(answer["proposals"], 1):
        _draw_one(console, number, each)
    more = "" if answer["whole"] else "; the library holds more than were looked at"
    passed = answer["passed_over"]
    console.print(f"Bodies and borders looked at: {answer['looked_at']}{more}.")
    if passed:
        console.print(f"Passed over: {len(passed)}", style="bold")
    for each in passed[:PASSED]:
        console.print(Padding(visible(f"{each['component']}: {each['why']}"), (0, 0, 0, 2)))
    if len(passed) > PASSED:
        console.print(f"  … and {len(passed) - PASSED} more; --json tells all.")
    console.print(answer["said"])
    if answer["proposals"]:
        console.print("--take NUMBER writes the request of one, for `counterpane plan -`.")


def _draw_one(console: Console, number: int, proposal: Answer) -> None:
    console.rule(visible(f"{number}. {proposal['title']}"), align="left", characters="─")
    parts = proposal["request"]["parts"]
    ends, sides = parts["bottom"], parts["sides"]
    said = f"body {parts['body']}; {ends['rows']} rows of {ends['component']} at both ends"
    console.print(visible(f"{said}; {sides['stitches']} stitches of {sides['component']} on each side."))
    for reason in proposal["reasons"]:
        console.print(Padding(visible(f"{reason['about']}: {reason['said']}"), (0, 0, 0, 2)))
    console.print()
