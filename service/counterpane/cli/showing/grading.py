"""A recipe in several sizes as a person reads it: a table of the sizes, then what the rules say of each."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from rich import box
from rich.console import Console
from rich.table import Table

from counterpane.cli.showing.words import tally

Answer = Mapping[str, Any]
TITLES = (
    "Size",
    "Cast on:",
    "Rows:",
    "Wide, cm:",
    "Long, cm:",
    "Width to length:",
    "Borders across, along %:",
    "Findings",
)


def draw(console: Console, title: str, answer: Answer) -> None:
    """Draw every size of the range."""
    number = len(answer["sizes"])
    console.rule(f"{title} in {number} size{'s' if number > 1 else ''}", align="left", characters="─")
    table = Table(box=box.SIMPLE_HEAD, pad_edge=False, show_edge=False)
    for name in TITLES:
        table.add_column(name.removesuffix(":"), justify="right" if name.endswith(":") else "left")
    for size in answer["sizes"]:
        finished, borders = size["finished"], size["borders_percent"]
        table.add_row(
            size["name"],
            f"{size['counts']['cast_on']:,}",
            f"{finished['rows']:,}",
            f"{finished['width_cm']:.1f}",
            f"{finished['length_cm']:.1f}",
            f"{size['width_to_length']:.2f}",
            f"{borders['across']:.1f}, {borders['along']:.1f}",
            tally(size["findings"]) or "nothing said",
        )
    console.print(table)
    first, *others = (str(size["counts"]["cast_on"]) for size in answer["sizes"])
    counts, of = (f"{first} ({', '.join(others)})", " of all sizes") if others else (first, "")
    console.print(f"\nCast on {counts} sts. The pattern{of}: --as text.")
    console.print("It was read back in every size, with the rows and counts of that size's own plan.")
