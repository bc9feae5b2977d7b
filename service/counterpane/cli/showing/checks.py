"""The answer of a check as a person reads it: the rows with their counts, the multiple in words, the findings."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from typing import Any

from rich import box
from rich.console import Console
from rich.table import Table

from counterpane.cli.showing.findings import draw_findings
from counterpane.cli.showing.words import listed, number_of, progression, tally, visible

GRAVITY = ("error", "warning", "note")

Answer = Mapping[str, Any]
_NUMBER = re.compile(r"\d+")
MOST_ROWS = 40  # From more rows on, neighbours with an unchanged count are drawn as one line; house.


def draw(console: Console, name: str, text: str, answer: Answer) -> None:
    """Draw the whole answer."""
    console.print(f"{visible(name)}: {_heading(answer)}")
    for part in _tables(answer):
        console.print()
        console.print(part)
    for sentence in _sentences(answer):
        console.print(sentence)
    findings = _all_findings(answer)
    draw_findings(console, text, findings)
    console.print(f"\n{_verdict(findings)}")


def _heading(answer: Answer) -> str:
    start = f", beginning with {number_of(answer['cast_on'], 'stitch')}" if answer["cast_on"] else ""
    return f"{number_of(len(answer['rows']), 'row')} read in {answer['terms'].upper()} terms{start}"


def _tables(answer: Answer) -> list[Table]:
    """Return the rows with their counts: of all sizes side by side where they are the same rows."""
    sizes = answer["sizes"] or [answer]
    if len(sizes) == 1:
        return [_table(answer["rows"])] if answer["rows"] else []
    names = [f"Size {number}" for number in range(1, len(sizes) + 1)]
    if len({tuple((row["label"], row["side"]) for row in size["rows"]) for size in sizes}) == 1:
        return [_side_by_side(names, sizes)] if sizes[0]["rows"] else []
    tables = [_table(size["rows"]) for size in sizes]
    for name, table in zip(names, tables, strict=True):
        table.title, table.title_justify = name, "left"
    return tables


def _side_by_side(names: Sequence[str], sizes: Sequence[Answer]) -> Table:
    table = Table(box=box.SIMPLE_HEAD, pad_edge=False, show_edge=False)
    for title in ("Row", "Side"):
        table.add_column(title)
    for name in names:
        table.add_column(name, justify="right")
    begun = [_count(size["rows"][0]["before"]) for size in sizes]
    table.add_row("cast on", "", *begun)
    last: list[str] = begun
    for rows in zip(*(size["rows"] for size in sizes), strict=True):
        counts = [_count(row["after"]) for row in rows]
        if len(sizes[0]["rows"]) <= MOST_ROWS or counts != last:
            table.add_row(visible(str(rows[0]["label"])), rows[0]["side"] or "", *counts)
        last = counts
    return table


def _all_findings(answer: Answer) -> list[Answer]:
    """Return the findings of all sizes in the order of their places, once where they differ in numbers alone.

    One that is not the same in all says in which it is.
    """
    if not answer["sizes"]:
        return list(answer["findings"])
    found: dict[tuple[object, ...], list[tuple[int, Answer]]] = {}
    for number, size in enumerate(answer["sizes"], start=1):
        for finding in size["findings"]:
            said = _NUMBER.sub("", f"{finding['message']} {finding['hint']}")
            key = finding["rule"], finding["line"], finding["column"], said, *finding["corrections"]
            found.setdefault(key, []).append((number, finding))
    told = [_of_sizes(alike, len(answer["sizes"])) for alike in found.values()]
    return sorted(told, key=lambda finding: (finding["line"] or 0, finding["column"] or 0))


def _of_sizes(alike: Sequence[tuple[int, Answer]], many: int) -> Answer:
    """Return the first of findings that are alike, with its numbers, saying in which sizes they are."""
    (number, first), *others = alike
    where = [str(other) for other, _ in others]
    same = all(finding["message"] == first["message"] and finding["hint"] == first["hint"] for _, finding in others)
    if same and len(alike) == many:
        return first
    if same:
        which = f"size{'s' if where else ''} {listed([str(number), *where], 'and')}"
    else:
        which = f"size {number}, and alike in size{'s' if len(where) > 1 else ''} {listed(where, 'and')}"
    return {**first, "message": f"In {which}: {first['message']}"}


def _table(rows: Sequence[Answer]) -> Table:
    table = Table(box=box.SIMPLE_HEAD, pad_edge=False, show_edge=False)
    sections = any(row["section"] for row in rows)
    for title in (["Section"] if sections else []) + ["Row", "Side"]:
        table.add_column(title)
    for title in ("Before", "After"):
        table.add_column(title, justify="right")
    for row in _folded(rows) if len(rows) > MOST_ROWS else rows:
        cells = [visible(str(row["label"])), row["side"] or "", _count(row["before"]), _count(row["after"])]
        table.add_row(*([visible(row["section"] or "")] if sections else []), *cells)
    return table


def _folded(rows: Sequence[Answer]) -> list[Answer]:
    runs: list[list[Answer]] = []
    for row in rows:
        if runs and _same(runs[-1][-1], row):
            runs[-1].append(row)
        else:
            runs.append([row])
    return [run[0] if len(run) == 1 else _joined(run[0], run[-1]) for run in runs]


def _joined(first: Answer, last: Answer) -> Answer:
    return {**first, "label": f"{first['label']}–{last['label']}", "side": None}


def _same(one: Answer, other: Answer) -> bool:
    counts = {one["before"], one["after"], other["before"], other["after"]}
    return bool(one["section"] == other["section"]) and len(counts) == 1


def _count(count: int | None) -> str:
    return "–" if count is None else f"{count:,}"


def _sentences(answer: Answer) -> list[str]:
    if not answer["rows"]:
        return []
    return ["", _works(answer), *([_change(answer["drift"])] if answer["drift"] is not None else [])]


def _works(answer: Answer) -> str:
    if answer["multiple"]:
        return f"The rows work over {progression(answer['multiple'])}."
    if answer["fixed"] is not None:
        return f"The rows work over {number_of(answer['fixed'], 'stitch')} and no other count."
    if answer["classes"]:
        return f"The rows work over {listed([progression(each) for each in answer['classes']], 'or over')}."
    return "No stitch count follows from these rows; the findings say why."


def _change(drift: int) -> str:
    if not drift:
        return "The last row leaves as many stitches as the first one took."
    how = "more" if drift > 0 else "fewer"
    return f"The last row leaves {number_of(abs(drift), 'stitch')} {how} than the first one took."


def _verdict(findings: Sequence[Answer]) -> str:
    if not findings:
        return "Nothing to correct."
    gravest = min(findings, key=lambda each: GRAVITY.index(each["severity"]))
    which = "it" if len(findings) == 1 else f"the first {gravest['severity']}"
    return f"{tally(findings)}. `counterpane explain {gravest['rule']}` says more about {which}."
