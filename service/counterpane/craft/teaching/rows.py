"""The rows of a part as a class is shown them: each row of other words once, and stretches that repeat them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from counterpane.craft.pattern.figures import times_more
from counterpane.craft.rows.tree import Row


@dataclass(frozen=True, slots=True)
class Stretch:
    """Rows of a part, from 1: one row to show, or rows that repeat earlier ones; `again` are those, row by row."""

    first: int
    last: int
    again: tuple[int, ...] = ()


def stretches(listed: Sequence[Row], rows: int) -> tuple[Stretch, ...]:
    """Cut the rows of a part into rows to show and stretches that repeat them; together they are all rows, once."""
    first_of: dict[object, int] = {}
    found: list[Stretch] = []
    for number in range(1, rows + 1):
        row = listed[(number - 1) % len(listed)]
        shown = first_of.setdefault((row.parts, row.side), number)
        if shown == number:
            found.append(Stretch(number, number))
        elif found[-1].again:
            found[-1] = Stretch(found[-1].first, number, (*found[-1].again, shown))
        else:
            found.append(Stretch(number, number, (shown,)))
    return tuple(found)


def repeat_line(stretch: Stretch) -> str:
    """Say which rows a stretch works again: "Rows 3–6: work rows 1–2 two times more"."""
    where = f"Rows {stretch.first}–{stretch.last}" if stretch.last > stretch.first else f"Row {stretch.first}"
    said = (f"{_span(run)} {times_more(times)}" for run, times in _runs(stretch.again))
    return f"{where}: work {', then '.join(said)}."


def _runs(again: Sequence[int]) -> Iterator[tuple[tuple[int, int], int]]:
    """Give the runs of rows that follow one another, each with how often it comes in a row."""
    runs: list[tuple[tuple[int, int], int]] = []
    at = 0
    while at < len(again):
        end = at + 1
        while end < len(again) and again[end] == again[end - 1] + 1:
            end += 1
        run = (again[at], again[end - 1])
        if runs and runs[-1][0] == run:
            runs[-1] = (run, runs[-1][1] + 1)
        else:
            runs.append((run, 1))
        at = end
    yield from runs


def _span(run: tuple[int, int]) -> str:
    return f"row {run[0]}" if run[0] == run[1] else f"rows {run[0]}–{run[1]}"
