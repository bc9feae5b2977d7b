"""Yarn as a person reads it: what each part takes, in all, the balls to buy, and what the figures rest on."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from rich.console import Console
from rich.table import Table

from counterpane.cli.showing.tables import table_of
from counterpane.cli.showing.words import number_of, visible

Answer = Mapping[str, Any]


def draw_yarn(console: Console, yarn: Answer) -> None:
    """Draw the yarn of a plan, colour by colour."""
    for each in yarn["colours"]:
        console.print(f"\n{visible(_title(each))}", style="bold")
        console.print(_parts(each))
        console.print(_balls(each))
        if each["joins_at"]:
            console.print(_joins(each["joins_at"]))
        console.print(f"The figures rest on {_source(each)}.")
    for note in (*yarn["weaving"], *yarn["notes"]):
        console.print(visible(note))


def _title(each: Answer) -> str:
    names = [name for name in (each["colour"], each["name"]) if name]
    thick = f", {each['tex']:g} tex" if each["tex"] else ""
    strands = f", {each['strands']} strands together" if each["strands"] > 1 else ""
    return f"Yarn{': ' if names else ''}{', '.join(names)}{thick}{strands}"


def _source(each: Answer) -> str:
    return str((each["metres"] or each["grams"])["source"])


def _parts(each: Answer) -> Table:
    table = table_of("Part", "Metres:", "from–to:", "Grams:", "from–to:")
    whole = {"part": "in all", "metres": each["metres"], "grams": each["grams"]}
    for part in (*each["parts"], whole):
        metres, grams = part["metres"], part["grams"]
        table.add_row(part["part"], likely(metres), span(metres), likely(grams), span(grams))
    return table


def likely(figure: Answer | None) -> str:
    """Write the likely value of a figure, a dash where it is not known."""
    return "–" if figure is None else _rounded(figure["likely"])


def span(figure: Answer | None) -> str:
    """Write the ends of a figure, "not known" where there is none."""
    return "not known" if figure is None else f"{_rounded(figure['low'])}–{_rounded(figure['high'])}"


def _joins(joins: Sequence[Answer]) -> str:
    rows = [f"{first:,}–{last:,}" for first, last in (join["rows"] for join in joins)]
    return f"A ball runs out about rows {'; '.join(rows)}: join the next at the side, at the beginning of a row."


def _rounded(value: float) -> str:
    return f"{value:,.1f}" if value < 10 else f"{value:,.0f}"


def _balls(each: Answer) -> str:
    balls, held = each["balls"], each["ball"]
    ends = f"About {number_of(each['ends'], 'end')} to weave in."
    if balls is None:
        return ends
    size = [f"{held['grams']:g} g" if held["grams"] else "", f"{held['metres']:g} m" if held["metres"] else ""]
    takes = f"{balls['low']}" if balls["low"] == balls["high"] else f"{balls['low']} to {balls['high']}"
    buy = f"Buy {number_of(balls['buy'], 'ball')} of {', '.join(part for part in size if part)}"
    return f"{buy}: the work takes {takes}, and {each['margin_percent']:g} % are kept over the likely amount. {ends}"
