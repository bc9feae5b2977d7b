"""Sizes by name as a person reads them, and the insides of cots beside a piece."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from rich import box
from rich.console import Console
from rich.table import Table

NAME_ALONE = "A name says nothing of how a blanket is used."
CAUTIONED = {
    "car-seat": "blanket-under-the-harness",
    "pram": "blanket-over-the-pram",
    "receiving": "loose-blanket-in-sleep-space",
    "swaddle": "loose-blanket-in-sleep-space",
}
"""Sizes that are named after a use, and the rule that cautions there."""

Answer = Mapping[str, Any]
UNKNOWN = "not known"
FIGURES_ONLY = "Figures only; they say nothing of how a blanket may be used. A minus is smaller."


def draw_list(console: Console, answer: Answer) -> None:
    """Draw all named sizes with their spans."""
    table = _table("Name", "Also", "Said to be wide", "and long, cm", "Planned, cm")
    for each in answer["items"]:
        said = (span(each["range_cm"][side]) for side in ("width", "length"))
        table.add_row(each["name"], ", ".join(each["also"]), *said, _planned(each))
    console.print(table)
    console.print("\nNo standard sets any of these: charities and shops say them, and differ. The size planned is a")
    console.print("house choice inside what they say. " + NAME_ALONE)


def draw(console: Console, answer: Answer) -> None:
    """Draw one size: what its sources say, and the cots beside it."""
    console.rule(answer["name"], align="left", characters="─")
    console.print(f"\n{answer['says']} Planned at {_planned(answer)} cm.")
    console.print(answer["basis"])
    if answer["name"] in CAUTIONED:
        rule = CAUTIONED[answer["name"]]
        console.print(f"{NAME_ALONE} `counterpane explain {rule}` says what can hurt there.")
    console.print("\nWhat the sources say", style="bold")
    table = _table("Wide, cm", "Long, cm", "Source")
    for figure in answer["figures"]:
        table.add_row(span(figure["range_cm"]["width"]), span(figure["range_cm"]["length"]), figure["source"])
    console.print(table)
    draw_cots(console, answer["beside_cots"])


def draw_cots(console: Console, cots: Sequence[Answer]) -> None:
    """Draw by how much a piece is wider and longer than each cot, crib and mattress."""
    console.print("\nBeside cots and mattresses", style="bold")
    table = _table("What", "Inside wide", "and long, cm", "Wider by, cm:", "Longer by, cm:", "Basis")
    for each in cots:
        inside = (span(each["inside_cm"][side]) for side in ("width", "length"))
        more = (span(each[member], signed=True) for member in ("wider_by_cm", "longer_by_cm"))
        table.add_row(each["name"].replace("-", " "), *inside, *more, f"{each['basis']}, {each['jurisdiction']}")
    console.print(table)
    console.print(FIGURES_ONLY)


def span(ends: Sequence[float | None] | None, *, signed: bool = False) -> str:
    """Return a span of centimetres in words: `70.0`, `69.5 to 72.7`, `76.2 or more`, `not known`."""
    if ends is None:
        return UNKNOWN
    least, most = ends
    first = f"{least:+.1f}" if signed else f"{least:.1f}"
    if most is None:
        return f"{first} or more"
    last = f"{most:+.1f}" if signed else f"{most:.1f}"
    return first if least == most else f"{first} to {last}"


def _planned(card: Answer) -> str:
    return f"{card['width_cm']:.1f} by {card['length_cm']:.1f}"


def _table(*titles: str) -> Table:
    table = Table(box=box.SIMPLE_HEAD, pad_edge=False, show_edge=False)
    for title in titles:
        table.add_column(title.removesuffix(":"), justify="right" if title.endswith(":") else "left", overflow="fold")
    return table
