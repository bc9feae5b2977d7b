"""A piece in the middle, as a person reads it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from rich.console import Console

from counterpane.cli.showing.plans import draw_counts, draw_findings, draw_title
from counterpane.cli.showing.tables import table_of
from counterpane.cli.showing.words import number_of
from counterpane.cli.showing.yarns import draw_yarn

Answer = Mapping[str, Any]
SAID = {
    "sure": "The yarn does for the rest as planned, by the high end of the figures too.",
    "likely": "The yarn will likely do for the rest as planned; by the high end of the figures it will not.",
    "short": "The yarn does not do for the rest as planned.",
}


def draw(console: Console, title: str, answer: Answer) -> None:
    """Draw where the work stands, what the yarn does for, and the plan at the gauge that came out."""
    draw_title(console, title)
    at = answer["at"]
    rows = f"{number_of(at['rows_done'], 'row')} worked, {at['rows_done_in_section']:,} of them in the {at['section']}"
    console.print(f"\n{rows}; {at['worked_percent']} in 100 of the yarn is worked in.")
    if answer["yarn"]:
        _draw_left(console, answer["yarn"])
    if answer["again"]:
        _draw_again(console, answer)


def _draw_left(console: Console, yarn: Answer) -> None:
    console.print("\nThe yarn that is left", style="bold")
    rest, rows = yarn["to_the_end"], yarn["rows_left"]
    console.print(f"{SAID[yarn['enough']]} It takes {_grams(rest)}, and {yarn['reserve_g']} g are to stay in hand.")
    if rows is not None:
        sure, likely = (_rows(rows[name]) for name in ("sure", "likely"))
        every = f", in repeats of {rows['repeat']}" if rows["repeat"] > 1 else ""
        console.print(f"Rows of the {rows['section']} still to come{every}: {rows['planned']} as planned.")
        console.print(f"The yarn does for {sure} for sure, for {likely} likely.")
        weight = f"when the yarn weighs {yarn['start_next_at_g']} g, at the latest"
        console.print(f"Start what follows {weight}: it takes {_grams(yarn['after_the_body'])}.")
    console.print(f"The figures rest on {rest['source']}.")


def _rows(rows: int | None) -> str:
    return "not even the part repeat that is begun" if rows is None else number_of(rows, "row")


def _grams(figure: Answer) -> str:
    return f"{figure['low']} to {figure['high']} g"


def _draw_again(console: Console, answer: Answer) -> None:
    planned, true, again = answer["gauge"]["planned"], answer["gauge"]["true"], answer["again"]
    console.print("\nThe plan at the gauge that came out", style="bold")
    table = table_of("Gauge over 10 cm", "Stitches:", "Rows:")
    table.add_row("as planned", str(planned["stitches"]), str(planned["rows"]))
    table.add_row("as it came out", str(true["stitches"]), str(true["rows"]))
    console.print(table)
    draw_counts(console, again)
    sections = table_of("Section", "Rows:", "From–to:", "Long cm:", "Done at:")
    for each in again["sections"]:
        ends = f"{each['first_row']:,}–{each['last_row']:,}"
        sections.add_row(each["name"], f"{each['rows']:,}", ends, str(each["length_cm"]), str(each["ends_at_cm"]))
    console.print(sections)
    if again["yarn"]:
        draw_yarn(console, again["yarn"])
    draw_findings(console, again["findings"])
