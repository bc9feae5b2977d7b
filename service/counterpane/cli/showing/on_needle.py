"""What should be on the needle after a row, as a person reads it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from rich.console import Console
from rich.padding import Padding

from counterpane.cli.showing.plans import draw_title
from counterpane.cli.showing.words import number_of, visible

Answer = Mapping[str, Any]


def draw(console: Console, title: str, answer: Answer) -> None:
    """Draw the row with its counts, how far the piece is, and where the count went wrong."""
    draw_title(console, title)
    row = answer["row"]
    place = f"row {row['in_part']:,} of {row['of_part']:,} in the {row['part']}, row {row['in_repeat']} of its repeat"
    console.print(f"\nRow {row['number']:,} of {row['of']:,}, a {row['side']} row: {place}.")
    console.print(Padding(visible(row["text"]), (0, 0, 0, 2)))
    after = number_of(row["stitches_after"], "stitch")
    begun = "" if row["stitches_before"] == row["stitches_after"] else f"; it begins with {row['stitches_before']:,}"
    console.print(f"It should leave {after}{begun}.")
    _draw_stretches(console, answer["count_in"])
    _draw_progress(console, answer["progress"])
    if answer["gauge"]:
        _draw_gauge(console, answer["gauge"])
    if answer["wrong"]:
        _draw_wrong(console, answer["wrong"])
    else:
        _draw_looks_wrong(console, answer["looks_wrong"])


def _draw_gauge(console: Console, found: Answer) -> None:
    """Say what comes out at the other gauge with the same counts, and which counts keep the size."""
    console.print("\nAt your gauge", style="bold")
    wide, long = (_size(found["same_counts"], name) for name in ("width_cm", "length_cm"))
    planned = " by ".join(_size(found["before"], name) for name in ("width_cm", "length_cm"))
    lines = [f"If you knit on as written, it will be {wide} by {long} cm; {planned} cm were planned."]
    kept = found["same_size"]
    if kept["counts"] is None:
        lines.append("No counts give the planned size at this gauge.")
    else:
        rows = f"{kept['finished']['rows']:,} rows"
        lines.append(f"For the planned size begin again with {kept['counts']['cast_on']:,} stitches and {rows}.")
    lines.append(
        "Or keep the counts and change the needle: a smaller one for more stitches to 10 cm, a larger for fewer."
    )
    lines.append("Measure a piece that is washed and dry, in the middle; `counterpane regauge` shows all of it.")
    for line in lines:
        console.print(Padding(line, (0, 0, 0, 2)))


def _size(way: Answer, name: str) -> str:
    return f"{way['finished'][name]:.1f}"


def _draw_looks_wrong(console: Console, found: list[Answer]) -> None:
    if found:
        console.print("\nThe count is right and it looks wrong?", style="bold")
    for each in found:
        console.print(f"\n{each['said'][0].upper()}{each['said'][1:]}.")
        for line in (each["looks"], each["correct"], _back(each)):
            console.print(Padding(visible(line), (0, 0, 0, 2)))


def _draw_stretches(console: Console, found: Answer | None) -> None:
    if found is None:
        return
    repeats = f"{number_of(found['times'], 'repeat')} of {found['each']}"
    console.print(f"Counted from where the row ended: {found['before']}, then {repeats}, then {found['after']}.")


def _draw_progress(console: Console, far: Answer) -> None:
    quick, slow = far["hours_left"]
    grams = far["grams_left"]
    yarn = f", and {grams[0]} to {grams[1]} g of yarn" if grams else ""
    to_come = f"about {quick} to {slow} hours{yarn} are to come"
    console.print(f"{far['percent']} in 100 of the stitches are worked; {to_come}.")


def _draw_wrong(console: Console, wrong: Answer) -> None:
    off = wrong["off"]
    console.print(f"\n{number_of(abs(off), 'stitch')} too {'many' if off > 0 else 'few'}", style="bold")
    for line in wrong["first"]:
        console.print(Padding(f"- {line}", (0, 0, 0, 2)))
    if not wrong["suspects"]:
        first, last = wrong["looked_at"]
        console.print(f"No one slip in rows {first:,} to {last:,} leads to this count: it may be several.")
    for each in wrong["suspects"]:
        _draw_suspect(console, each)
    console.print()
    for line in wrong["care"]:
        console.print(f"{line}")


def _draw_suspect(console: Console, suspect: Answer) -> None:
    console.print(f"\n{_where(suspect['rows'])}: {suspect['said']}.", style="bold")
    for line in (suspect["why"], suspect["looks"], suspect["correct"], _back(suspect)):
        if line:
            console.print(Padding(visible(line), (0, 0, 0, 2)))


def _where(rows: list[int]) -> str:
    first, last = rows
    if last == 0:
        return "The cast-on"
    return f"Row {first:,}" if first == last else f"Rows {first:,} to {last:,}"


def _back(suspect: Answer) -> str:
    back = suspect["back"]
    if back is None:
        return ""
    quick, slow = back["minutes"]
    again = number_of(back["again"], "stitch")
    ladder = "Or let that one stitch down and hook it up again: all above it is plain. " if back["ladder"] else ""
    if back["undone"]:
        return f"{ladder}To undo and knit again: {again}, one by one, about {quick} to {slow} minutes."
    onto = f"the stitches of row {back['onto_row']:,}" if back["onto_row"] else "the cast-on"
    return f"{ladder}To take it back to {onto} and knit again: {again}, about {quick} to {slow} minutes."
