"""What the class sees of a part when some of its rows are worked, read off the loops of the rows as they are traced."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from counterpane.craft.constructions import Section
from counterpane.craft.fabric import Course, Look, from_rs, ridges
from counterpane.craft.pattern.figures import counted
from counterpane.craft.sizing.lengths import side_of
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.teaching.hands import Hand
from counterpane.craft.trace import Traced, trace

Run = tuple[Look, int]

MOST_RUNS = 60
"""Changes of face in a row that are told one by one; beyond, they are counted. House figure."""

FEWEST_ROWS = 4
"""Rows of a part, at least, of which columns are told; over fewer they are not yet to be seen. House figure."""

FEWEST_FOLDED = 4
"""Runs that are told once with how often they come, at least; house figure."""

LOOKS: dict[Look, str] = {
    "knit": "knit",
    "purl": "purl",
    "open": "yarn over",
    "slipped": "slipped",
    "crossed": "crossed",
    "not known": "not known",
}


@dataclass(frozen=True, slots=True)
class Shown:
    """A part as it was worked: its section, its loops, its courses as the right side shows them, its edge stitches.

    Each row has one course, since no row of a plan turns before its end.
    """

    section: Section
    traced: Traced
    courses: tuple[Course, ...]
    edge: int = 0

    def inside(self, rows: int) -> tuple[Course, ...]:
        """Return its first courses without the edge stitches; as they are where the counts change."""
        courses = self.courses[:rows]
        if self.edge == 0 or len({len(course) for course in courses}) != 1:
            return courses
        return tuple(course[self.edge : -self.edge] for course in courses)


def shown(section: Section, vocabulary: Vocabulary, edge: int = 0) -> Shown:
    """Work all rows of a section loop by loop; `edge` stitches at each end are its selvedge."""
    rows = [section.cycle[number % len(section.cycle)] for number in range(section.rows)]
    sides = [side_of(number + 1, section.first_row_side) for number in range(section.rows)]
    traced = trace([row.parts for row in rows], section.before, vocabulary, sides)
    return Shown(section, traced, from_rs(traced, vocabulary), edge)


def after_row(part: Shown, row: int, hand: Hand) -> tuple[str, ...]:
    """Say what is seen when this row of a part is just worked, before the turn."""
    side = side_of(row, part.section.first_row_side)
    edge = "right edge" if hand == "right" else "left edge"
    return (
        f"The {'right' if side == 'RS' else 'wrong'} side faces you until you turn.",
        f"On the right side, just under the needle, from the {edge}: {faces(part.courses[row - 1])}.",
        *(_whole(part.inside(row)) if row == part.section.rows else ()),
    )


def faces(course: Course) -> str:
    """Say the faces of a row from where a RS row begins, with what repeats in brackets."""
    runs: list[Run] = [(look, len(list(run))) for look, run in groupby(course)]
    if len(runs) > MOST_RUNS:
        return f"{', '.join(_run((look, course.count(look))) for look in dict.fromkeys(course))} in all"
    return ", ".join(_folded(runs))


def _folded(runs: Sequence[Run]) -> Iterator[str]:
    start, wide, times = _most_repeated(runs)
    if times < 2 or wide * times < FEWEST_FOLDED:
        yield from map(_run, runs)
        return
    yield from map(_run, runs[:start])
    yield f"[{', '.join(map(_run, runs[start : start + wide]))}] {times} times"
    yield from map(_run, runs[start + wide * times :])


def _most_repeated(runs: Sequence[Run]) -> tuple[int, int, int]:
    """Return where the longest repetition begins, how many runs repeat in it, and how often."""
    found = [
        (start, wide, _times(runs, start, wide))
        for start in range(len(runs))
        for wide in range(1, (len(runs) - start) // 2 + 1)
    ]
    return max(
        found, key=lambda each: (each[1] * (each[2] if each[2] > 1 else 0), -each[1], -each[0]), default=(0, 0, 0)
    )


def _times(runs: Sequence[Run], start: int, wide: int) -> int:
    first, times = runs[start : start + wide], 1
    while runs[start + wide * times : start + wide * (times + 1)] == first:
        times += 1
    return times


def _run(run: Run) -> str:
    return f"{run[1]} {LOOKS[run[0]]}"


def _whole(courses: Sequence[Course]) -> Iterator[str]:
    """Say what stands in a whole part: ridges across it, and columns of knit stitches."""
    front, _ = ridges(courses)
    if front:
        yield f"{counted(front, 'ridge')} across the right side of this part."
    widths = columns(courses)
    if widths and len(courses) >= FEWEST_ROWS:
        many = counted(len(widths), "column")
        each = f"{'each ' if len(widths) > 1 else ''}{widths[0]} wide" if len(set(widths)) == 1 else _list(widths)
        yield f"Knit stitches stand above one another from the first row of this part to its last in {many}, {each}."


def _list(widths: Sequence[int]) -> str:
    return f"{', '.join(map(str, widths[:-1]))} and {widths[-1]} wide"


def columns(courses: Sequence[Course]) -> tuple[int, ...]:
    """Return the widths of the columns that show knit throughout, from the right edge; none where counts change."""
    if len({len(course) for course in courses}) != 1:
        return ()
    knit = [set(column) == {"knit"} for column in zip(*courses, strict=True)]
    return tuple(len(list(run)) for stands, run in groupby(knit) if stands)
