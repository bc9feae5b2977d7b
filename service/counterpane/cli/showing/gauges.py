"""What swatches say, as a person reads it: the gauge, the wash, and what stays open of a size."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from rich import box
from rich.console import Console
from rich.table import Table

from counterpane.cli.showing.plans import draw_findings
from counterpane.cli.showing.words import number_of

Answer = Mapping[str, Any]
NOT_SAID = "whether it was washed was not said"


def draw(console: Console, answer: Answer) -> None:
    """Draw each texture's gauge, and what the rules say of the swatches."""
    for place, each in enumerate(answer["gauges"]):
        console.rule(each["in"] or "The texture was not named", align="left", characters="─")
        for line in _lines(each):
            console.print(line)
        if each["size"]:
            console.print(_sizes(each["size"]))
        console.print("" if place + 1 < len(answer["gauges"]) else f"\n{answer['basis']}")
    draw_findings(console, answer["findings"])


def _lines(each: Answer) -> Iterator[str]:
    for name, window in (("per_10_cm", "10 cm"), ("per_4_in", "4 in")):
        yield f"{each[name]['stitches']:g} stitches and {each[name]['rows']:g} rows over {window}"
    washed = {True: "counted after a wash", False: "counted before the wash", None: NOT_SAID}[each["gauge"]["washed"]]
    yield f"{each['rows_to_a_stitch']:g} rows to the width of a stitch; {washed}"
    off = each["off_percent"]
    yield f"By reading alone a width may be {off['width']:g} % off either way, a length {off['length']:g} %."
    if each["wash"]:
        change = each["wash"]["change_percent"]
        yield f"The wash changed widths by {change['width']:+g} % and lengths by {change['length']:+g} %."
    if each["apart"]:
        yield _apart(each["apart"])


def _apart(apart: Answer) -> str:
    more = "more than reading explains: look for the cause" if apart["more_than_reading"] else "as reading explains"
    far = f"{apart['width_percent']:g} % in width and {apart['length_percent']:g} % in length"
    return f"The {number_of(apart['swatches'], 'swatch')} are up to {far} apart, {more}."


def _sizes(size: Answer) -> Table:
    table = Table(box=box.SIMPLE_HEAD, pad_edge=False, show_edge=False)
    within = f"{size['width']['within_cm']:g}"
    for title in ("Side", "cm:", "Give or take:", "At the worst:", f"Window of each, to within {within} cm:"):
        table.add_column(title.removesuffix(":"), justify="right" if title.endswith(":") else "left")
    for side, each in size.items():
        least, most = each["worst_cm"]
        worst = f"{least:.2f} or more" if most is None else f"{least:.2f} to {most:.2f}"
        table.add_row(side, f"{each['cm']:.2f}", f"{each['tolerance_cm']:.2f}", worst, f"{each['window_cm']:.0f} cm")
    return table
