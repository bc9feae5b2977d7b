"""What a piece shows after each row: which part, which side comes next, the stitches below the needle, repeats, length.

All of it is read off a trace of the rows, the road that counts come from.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from counterpane.craft.constructions import Plan, Section
from counterpane.craft.fabric import Course, from_rs, from_ws
from counterpane.craft.helping.rows import rows_of
from counterpane.craft.helping.under import CAST_ON, LETTERS, Under
from counterpane.craft.rows.tree import Side
from counterpane.craft.sizing.lengths import side_of
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.trace import trace

LOOKED = 24
"""Stitches that one looks at, from the side border on; house."""


@dataclass(frozen=True, slots=True)
class Sight:
    """What the piece shows once a row is worked and turned: `row` is its number, counted from the cast-on.

    `part` names the sections that cannot be told apart there: one goes on as the other ends. `needle` is what lies
    under the needle, past the side border, for who is about to work the next row. `repeats` is how often the `period`
    rows of the part stand whole below the row, and `cm` the length from the cast-on.
    """

    row: int
    part: str
    needle: Under
    repeats: int
    period: int
    cm: Fraction


def sights(plan: Plan, vocabulary: Vocabulary) -> tuple[Sight, ...]:
    """Return what the piece shows after each of its rows."""
    edge = plan.counts.sides + plan.counts.selvedge
    found: list[Sight] = []
    before: Course | None = None
    cm = Fraction(0)
    for part, courses in _parts(plan, vocabulary):
        lengths = [section.cm_length / section.rows for section in part for _ in range(section.rows)]
        sides = [side_of(row, section.first_row_side) for section in part for row in range(1, section.rows + 1)]
        name, period = "+".join(section.name for section in part), _period(courses)
        for at, (course, length, side) in enumerate(zip(courses, lengths, sides, strict=True)):
            cm += length
            facing: Side = "WS" if side == "RS" else "RS"
            below = CAST_ON if not found else _seen(before, facing, edge)
            needle = Under(facing, _seen(course, facing, edge), below)
            found.append(Sight(len(found) + 1, name, needle, at // period, period, cm))
            before = course
    return tuple(found)


def _parts(plan: Plan, vocabulary: Vocabulary) -> Iterator[tuple[list[Section], list[Course | None]]]:
    """Give the sections in working order with their courses, one that looks on as the one below together with it."""
    run: list[Section] = []
    courses: list[Course | None] = []
    for section in (each for each in plan.sections if each.rows):
        more = _courses(section, vocabulary)
        if run and not _goes_on(courses, more):
            yield run, courses
            run, courses = [], []
        run, courses = [*run, section], [*courses, *more]
    yield run, courses


def _goes_on(courses: Sequence[Course | None], more: Sequence[Course | None]) -> bool:
    """Say whether courses repeat and go on so in more of them, so that nothing shows where these begin."""
    period = _period(courses)
    return period < len(courses) and _period([*courses, *more]) == period


def _courses(section: Section, vocabulary: Vocabulary) -> list[Course | None]:
    """Return the course of each row of a section from the right side; None where rows turn before their end."""
    # Of an odd number of rows each comes on both sides, and looks another on the other one.
    many = min(section.rows, len(section.cycle) * (1 + len(section.cycle) % 2))
    rows = rows_of(section, section.first_row, section.first_row + many - 1, vocabulary)
    traced = trace([row.row.parts for row in rows], section.before, vocabulary, [row.row.side for row in rows])
    courses: Sequence[Course | None] = from_rs(traced, vocabulary)
    if len(courses) != len(rows):
        courses = [None] * len(rows)
    return [courses[at % len(courses)] for at in range(section.rows)]


def _seen(course: Course | None, facing: Side, edge: int) -> str:
    """Return the letters of a course as a side shows it, from where a row of that side begins, past the border."""
    if course is None:
        return ""
    looks = course if facing == "RS" else from_ws((course,))[0]
    return "".join(LETTERS[look] for look in looks)[edge if len(looks) > edge else 0 :][:LOOKED]


def _period(courses: Sequence[Course | None]) -> int:
    """Return the least number of rows after which courses look as before, by the longest run that begins them twice."""
    fall = [0]
    for course in courses[1:]:
        length = fall[-1]
        while length and courses[length] != course:
            length = fall[length - 1]
        fall.append(length + (courses[length] == course))
    return len(courses) - fall[-1]
