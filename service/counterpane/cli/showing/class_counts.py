"""A sheet of counts for a class as a person reads it: one line a knitter, then who has no plan and why."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from rich.console import Console

from counterpane.cli.showing.tables import table_of

Answer = Mapping[str, Any]


def draw(console: Console, title: str, answer: Answer) -> None:
    """Draw the sheet."""
    knitters = answer["knitters"]
    console.rule(f"{title}: counts for a class", align="left", characters="─")
    able = [each for each in knitters if each["cast_on"]]
    if able:
        table = table_of("", "Gauge:", "Cast on:", "Rows by part", "Wide, cm:", "Long, cm:", "Yarn, m:")
        for each in able:
            table.add_row(each["label"], *_figures(each))
        console.print(table)
    for each in knitters:
        if not each["cast_on"]:
            console.print(f"\n{each['label']} ({_gauge(each)}) has no plan. {_why(each)}", markup=False)


def _figures(knitter: Answer) -> tuple[str, ...]:
    finished = knitter["finished"]
    parts = ", ".join(f"{part['name']} {part['rows']}" for part in knitter["parts"])
    sizes = (f"{finished[name]:.1f}" for name in ("width_cm", "length_cm"))
    return (_gauge(knitter), f"{knitter['cast_on']:,}", parts, *sizes, _yarn(knitter["yarn"]))


def _gauge(knitter: Answer) -> str:
    gauge = knitter["gauge"]
    first = gauge[0] if isinstance(gauge, list) else gauge
    window = f"{first['over_in']} in" if first.get("over_in") else f"{first['over_cm']} cm"
    return f"{first['stitches']} x {first['rows']} over {window}"


def _yarn(yarn: Answer | None) -> str:
    metres = yarn["metres"] if yarn else None
    return "not known" if metres is None else f"{metres['low']:.0f}–{metres['high']:.0f}"


def _why(knitter: Answer) -> str:
    said = " ".join(f"{each['message']} {each['hint']}" for each in knitter["findings"] if each["severity"] == "error")
    nearest = knitter["nearest_size"]
    near = f" Nearest size: {nearest['pointer'].removeprefix('/size/')} {nearest['value']}." if nearest else ""
    return said + near
