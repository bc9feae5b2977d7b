"""Which row a piece is on, as a person reads it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from rich.console import Console
from rich.padding import Padding

from counterpane.cli.showing.plans import draw_title
from counterpane.cli.showing.words import number_of, visible

Answer = Mapping[str, Any]


def draw(console: Console, title: str, answer: Answer) -> None:
    """Draw the next question with its answers, or the rows that are left."""
    draw_title(console, title)
    if answer["question"]:
        first, last = answer["between"]
        console.print(f"\n{number_of(answer['left'], 'row')} of {answer['rows']:,} may be it, {first:,} to {last:,}.")
        _draw_question(console, answer["question"])
        return
    console.print()
    for line in answer["told"]:
        console.print(visible(line))
    for each in answer["candidates"]:
        _draw_candidate(console, each)


def _draw_question(console: Console, question: Answer) -> None:
    console.print(f"\n{question['asks']}", style="bold")
    console.print(Padding(visible(question["look"]), (0, 0, 0, 2)))
    for each in question["answers"] or ():
        left = number_of(each["left"], "row")
        line = visible(f'--seen {question["name"]}="{each["answer"]}"   leaves {left}')
        console.print(Padding(line, (0, 0, 0, 2)))
    if not question["answers"]:
        low, high = question["between"]
        worst = number_of(question["at_worst"], "row")
        line = f"--seen {question['name']}=N, from {low} to {high}; it leaves at most {worst}"
        console.print(Padding(line, (0, 0, 0, 2)))
    console.print(Padding(f"--seen {question['name']}=not-sure   if you cannot tell", (0, 0, 0, 2)))


def _draw_candidate(console: Console, candidate: Answer) -> None:
    row, following = candidate["worked"], candidate["next"]
    place = f"row {row['in_part']:,} of {row['of_part']:,} in the {row['part']}, row {row['in_repeat']} of its repeat"
    console.print(f"\nRow {row['number']:,} worked, a {row['side']} row: {place}.", style="bold")
    lines = [
        f"{number_of(row['stitches_after'], 'stitch')} on the needle, {candidate['length_cm']} cm from the cast-on."
    ]
    if following:
        lines.append(f"Next, row {following['number']:,}, a {following['side']} row: {following['text']}")
    else:
        lines.append("Next comes the bind-off.")
    for line in lines:
        console.print(Padding(visible(line), (0, 0, 0, 2)))
