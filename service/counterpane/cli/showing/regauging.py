"""A recipe at another gauge as a person reads it: both ways beside what it was, and the change of shape."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from rich import box
from rich.console import Console
from rich.table import Table

from counterpane.cli.showing.plans import draw_findings

Answer = Mapping[str, Any]
WAYS = {"before": "as it is", "same_size": "same size", "same_counts": "same counts"}


def draw(console: Console, title: str, answer: Answer) -> None:
    """Draw the two ways to another gauge."""
    console.rule(title, align="left", characters="─")
    table = Table(box=box.SIMPLE_HEAD, pad_edge=False, show_edge=False)
    for name in ("", "Cast on:", "Rows:", "Wide, cm:", "Long, cm:", "Give or take, cm:"):
        table.add_column(name.removesuffix(":"), justify="right" if name.endswith(":") else "left")
    for name, said in WAYS.items():
        table.add_row(said, *_figures(answer[name]))
    console.print(table)
    console.print(f"\n{_shape(answer['shape'])}")
    draw_findings(console, answer["same_size"]["findings"])


def _figures(way: Answer) -> tuple[str, ...]:
    counts, finished = way["counts"], way["finished"]
    if counts is None:
        return ("cannot be", "made", "", "", "")
    give = finished["tolerance_cm"]
    sizes = (f"{finished[name]:.1f}" for name in ("width_cm", "length_cm"))
    return (f"{counts['cast_on']:,}", f"{finished['rows']:,}", *sizes, f"{give['width']:.1f}, {give['length']:.1f}")


def _shape(shape: Answer) -> str:
    before, after = (shape["width_to_length"][name] for name in ("before", "after"))
    if shape["percent"] == 0:
        return f"The same counts keep their shape: width to length {before:.2f} to 1."
    more = "wider" if shape["percent"] > 0 else "narrower"
    far = f"{abs(shape['percent']):.1f} % {more} for its length"
    return f"With the same counts the piece is {far}: {before:.2f} to 1 before, {after:.2f} to 1 after."
