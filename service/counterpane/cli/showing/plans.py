"""A plan as a person reads it: what to cast on, how big it gets, the sections, other counts, findings, safety."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from rich.console import Console
from rich.padding import Padding
from rich.table import Table

from counterpane.cli.showing.behaviour import draw_behaviour
from counterpane.cli.showing.findings import draw_heading, draw_words
from counterpane.cli.showing.labels import draw_of_plan
from counterpane.cli.showing.safety import draw_safety
from counterpane.cli.showing.sizes import draw_cots, span
from counterpane.cli.showing.tables import table_of
from counterpane.cli.showing.words import listed, number_of, tally, visible
from counterpane.cli.showing.yarns import draw_yarn

Answer = Mapping[str, Any]


def draw(console: Console, title: str, answer: Answer) -> None:
    """Draw the whole plan."""
    draw_title(console, title)
    console.print()
    draw_numbers(console, answer)
    draw_size(console, answer)
    draw_behaviour(console, answer["behaviour"])
    draw_findings(console, answer["findings"])
    if answer.get("label"):
        draw_of_plan(console, answer["label"])
    draw_safety(console, answer["safety"])


def draw_size(console: Console, answer: Answer) -> None:
    """Draw the span of a size that was asked for by its name, and the cots beside what comes of it."""
    size = answer["size"]
    if size["named"] is None:
        return
    wide, long = (span(size["range_cm"][side]) for side in ("width", "length"))
    asked = f"{size['asked_cm']['width']:.1f} by {size['asked_cm']['length']:.1f} cm"
    console.print(
        f"\nAsked for as {size['named']}, planned at {asked}; it is said to be {wide} cm wide and {long} cm long."
    )
    console.print(size["basis"])
    draw_cots(console, answer["beside_cots"])


def draw_refusal(console: Console, title: str, problem: Answer) -> None:
    """Draw why a plan cannot be made, and the smallest changes that make it possible."""
    draw_title(console, title)
    draw_reasons(console, problem)


def draw_title(console: Console, title: str) -> None:
    """Draw a title with a line after it."""
    console.rule(visible(title), align="left", characters="─")


def draw_numbers(console: Console, answer: Answer) -> None:
    """Draw all numbers of a plan."""
    draw_counts(console, answer)
    console.print()
    console.print(_sections(answer["sections"]))
    for edge in answer["picked"]:
        console.print(_picked(edge))
    console.print(f"\n{_work(answer)}")
    if answer["sampler"]:
        console.print(_sampler(answer["sampler"]))
    console.print(_swatches(answer["swatches"]))
    for missing in answer["no_swatch"]:
        console.print(f"{missing['name']} ({', '.join(missing['places'])}): {' '.join(missing['steps'])}")
    if answer.get("yarn"):
        draw_yarn(console, answer["yarn"])
    console.print("\nCounts near the width you want", style="bold")
    console.print(_nearest(answer["nearest"], answer["counts"]["cast_on"]))


def draw_counts(console: Console, answer: Answer) -> None:
    """Draw what to cast on and how big it gets."""
    console.print(_cast_on(answer))
    console.print(_sum(answer["counts"]))
    console.print(_size(answer["finished"]))


def draw_reasons(console: Console, problem: Answer) -> None:
    """Draw the findings of a problem and the changes of the request that solve it."""
    console.print("\nThis cannot be planned.")
    draw_findings(console, problem["findings"])
    if problem["corrections"]:
        console.print("\nThe smallest changes that make it possible", style="bold")
        console.print(_corrections(problem["corrections"]))


def draw_findings(console: Console, findings: Sequence[Answer]) -> None:
    """Draw findings about a plan."""
    if findings:
        console.print(f"\nFindings: {tally(findings)}", style="bold")
    for finding in findings:
        console.print()
        draw_heading(console, finding)
        draw_words(console, finding)


def _cast_on(answer: Answer) -> str:
    parts = answer["recipe"]["parts"]
    ends = f"by {parts['cast_on']['component']}; bind off by {parts['bind_off']['component']}"
    return f"Cast on {number_of(answer['counts']['cast_on'], 'stitch')} {ends}."


def _sum(counts: Answer) -> Padding:
    body, repeats = counts["body"], counts["repeats"]
    bodies = body if isinstance(body, list) else [body]
    times = repeats if isinstance(repeats, list) else [repeats]
    sides = [(counts["selvedge"], "selvedge"), (counts["sides"], "border")]
    edges = [f"{count} {noun}" for count, noun in sides if count]
    middle = " / ".join(f"{count:,} body ({number_of(n, 'repeat')})" for count, n in zip(bodies, times, strict=True))
    if len(bodies) > 1 and len(set(bodies)) == 1:
        middle = f"{bodies[0]:,} body ({listed([f'{n:,}' for n in times])} repeats)"
    return Padding(" + ".join([*edges, middle, *reversed(edges)]), (0, 0, 0, 2))


def _size(finished: Answer) -> str:
    give = finished["tolerance_cm"]
    width = f"{finished['width_cm']} cm wide (give or take {give['width']})"
    return f"Finished: {width}, {finished['length_cm']} cm long (give or take {give['length']})."


def _sections(sections: Sequence[Answer]) -> Table:
    table = table_of(
        "Section", "Texture", "Rows:", "From–to:", "Sides", "Stitches:", "Wide cm:", "Long cm:", "Done at:"
    )
    for each in sections:
        rows = f"{each['first_row']:,}–{each['last_row']:,}"
        sides = f"{each['first_row_side']}–{each['last_row_side']}"
        sizes = (_cm(each, name) for name in ("width_cm", "length_cm", "ends_at_cm"))
        texture = each["texture"] or "in words"
        table.add_row(each["name"], texture, f"{each['rows']:,}", rows, sides, _stitches(each), *sizes)
    return table


def _picked(edge: Answer) -> str:
    along = "; ".join(f"{each['name']} {each['rate']}" for each in edge["stretches"])
    picks = number_of(edge["stitches"], "stitch")
    return f"\nPick up {picks} along the {edge['edge']} edge, from the {edge['from']} on: {along}."


def _stitches(section: Answer) -> str:
    before, after = section["before"], section["after"]
    return f"{before:,}" if before == after else f"{before:,} to {after:,}"


def _cm(section: Answer, name: str) -> str:
    return "–" if section.get(name) is None else f"{section[name]:.1f}"


def _nearest(nearest: Sequence[Answer], chosen: int) -> Table:
    table = table_of("Cast on:", "Width cm:", "Off cm:", "")
    for each in nearest:
        mark = "this plan" if each["cast_on"] == chosen else ""
        table.add_row(f"{each['cast_on']:,}", f"{each['width_cm']:.1f}", f"{each['error_cm']:+.1f}", mark)
    return table


def _work(answer: Answer) -> str:
    rows = sum(section["rows"] for section in answer["sections"])
    said = [f"{number_of(rows, 'row')}, {number_of(answer['stitches_total'], 'stitch')} in all"]
    hours = (answer.get("time") or {}).get("hours")
    if hours:
        said.append(f"about {listed([f'{hour:g}' for hour in hours], 'to')} hours of knitting")
    return f"{', '.join(said)}."


def _sampler(sampler: Answer) -> str:
    size = f"{number_of(sampler['cast_on'], 'stitch')}, {number_of(sampler['rows'], 'row')}"
    cm = f"{sampler['width_cm']} by {sampler['length_cm']} cm"
    return f"A sampler of {size} ({cm}) shows every change from part to part."


def _swatches(swatches: Sequence[Answer]) -> str:
    def size(swatch: Answer) -> str:
        counts = f"{number_of(swatch['cast_on'], 'stitch')} by {number_of(swatch['rows'], 'row')}"
        return f"{swatch['in'] or 'the rows given'} {counts}"

    return f"Swatches to measure on first: {listed([size(each) for each in swatches])}."


def _corrections(corrections: Sequence[Answer]) -> Table:
    table = table_of("Change", "to", "because")
    for each in corrections:
        table.add_row(each["pointer"], visible(str(each["value"])), visible(each["why"]))
    return table
