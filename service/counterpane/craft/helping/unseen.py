"""Faults after which the count is right: what each would show, worked loop by loop and held against the right rows."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Literal

from counterpane.craft.constructions import Plan, Section
from counterpane.craft.counts.writing_out import stitch_by_stitch, write_out
from counterpane.craft.fabric import from_rs
from counterpane.craft.fabric.texture import LARGEST_SAMPLE
from counterpane.craft.helping import WorkedRow
from counterpane.craft.helping.rows import PLAIN, rows_of, stitches_in
from counterpane.craft.helping.under import LETTERS
from counterpane.craft.rows.tree import Node, Side, Work
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.trace import trace

FaultKind = Literal[
    "shifted", "faces-swapped", "worked-twice", "left-out-whole", "crossed-the-other-way", "hole-and-decrease-swapped"
]
Cloth = Literal["stocking stitch", "reverse stocking stitch", "garter", "rib", "seed stitch"]

ROWS_ON = 2
"""Rows that are worked on after a fault; house."""

MOST_STITCHES = 2_000
"""Stitches of a row beyond which no fault is tried; house figure that bounds time."""

_FACES = {"k": "p", "p": "k"}


@dataclass(frozen=True, slots=True)
class Fault:
    """A fault that leaves the right count.

    `stitch` was worked as `instead`, None where the fault is of the whole row. It first shows after row `shows_after`:
    the course under the needle is then `wrong` where `right` was meant, a letter a stitch past the border, as the side
    of the next row shows it. With the courses about it that looks like `turned_to` where `meant` should be, None where
    it is no plain fabric.
    """

    kind: FaultKind
    shows_after: int
    right: str
    wrong: str
    meant: Cloth | None
    turned_to: Cloth | None
    stitch: str | None = None
    instead: str | None = None


def faults(plan: Plan, number: int, vocabulary: Vocabulary) -> tuple[Fault, ...]:
    """Return the faults that a row of the plan invites and a count does not find."""
    section = next(each for each in plan.sections if each.first_row <= number < each.first_row + each.rows)
    rows, at = _about(section, number, vocabulary)
    if rows[0].before * len(rows) > LARGEST_SAMPLE or rows[0].before > MOST_STITCHES:
        return ()
    edge = plan.counts.sides + plan.counts.selvedge
    right = _courses([row.row.parts for row in rows], rows, vocabulary)
    found: list[Fault] = []
    for kind, parts, stitch, instead in _wrongly(rows, at, edge, vocabulary):
        wrong = _courses(parts, rows, vocabulary)
        if right is not None and wrong is not None:
            found += _held(Fault(kind, 0, "", "", None, None, stitch, instead), rows, at, (right, wrong), edge)
    return tuple(found)


def _about(section: Section, number: int, vocabulary: Vocabulary) -> tuple[list[WorkedRow], int]:
    """Return the rows from a beginning of the repeat, at least one before the row, to some after it, and its place."""
    cycle = len(section.cycle)
    in_part = number - section.first_row
    begin = max(0, (in_part - 1) // cycle * cycle)
    rows = rows_of(section, section.first_row + begin, number + ROWS_ON, vocabulary)
    return rows, in_part - begin


Wrong = tuple[FaultKind, list[Sequence[Node]], str | None, str | None]


def _wrongly(rows: Sequence[WorkedRow], at: int, edge: int, vocabulary: Vocabulary) -> Iterator[Wrong]:
    """Give the rows with each fault made in one of them."""
    parts: list[Sequence[Node]] = [row.row.parts for row in rows]
    row, before, after = rows[at], parts[:at], parts[at + 1 :]
    written = write_out(row.row.parts, row.before, vocabulary, row.row.side).parts or ()
    stitches = stitch_by_stitch(written, MOST_STITCHES)
    if after:
        yield "worked-twice", [*before, parts[at], parts[at], *after[:-1]], None, None
        yield "left-out-whole", [*before, *after], None, None
    if stitches is None:
        return
    if stitches_in(row.row.parts) <= PLAIN:
        yield "shifted", [*before, _shifted(stitches, edge), *after], None, None
        yield "faces-swapped", [*before, _swapped_faces(stitches), *after], None, None
    for stitch, other in _crossings(stitches, vocabulary):
        yield "crossed-the-other-way", [*before, _with(stitches, stitch, other), *after], stitch, other
    if swapped := _swapped_pair(stitches, vocabulary):
        yield "hole-and-decrease-swapped", [*before, swapped, *after], None, None


def _singly(stitches: Sequence[Node]) -> list[Node]:
    return [
        replace(node, times=1) if isinstance(node, Work) else node
        for node in stitches
        for _ in range(node.times if isinstance(node, Work) else 1)
    ]


def _shifted(stitches: Sequence[Node], edge: int) -> list[Node]:
    """Return the row with what lies between its borders begun one stitch late."""
    single = _singly(stitches)
    end = len(single) - edge
    middle = single[edge:end]
    return [*single[:edge], *middle[-1:], *middle[:-1], *single[end:]] if middle else single


def _swapped_faces(stitches: Sequence[Node]) -> list[Node]:
    """Return the row with a purl for each knit stitch and the other way round, as if it were one of the other side."""
    return [replace(node, stitch=_FACES[node.stitch]) if isinstance(node, Work) else node for node in stitches]


def _crossings(stitches: Sequence[Node], vocabulary: Vocabulary) -> Iterator[tuple[str, str]]:
    """Give each stitch of a row that crosses others, with the one that crosses them the other way."""
    for key in dict.fromkeys(node.stitch for node in stitches if isinstance(node, Work)):
        stitch = vocabulary[key]
        if stitch.uses == stitch.makes > 1 and stitch.mirror and stitch.mirror != key:
            yield key, stitch.mirror


def _with(stitches: Sequence[Node], stitch: str, other: str) -> list[Node]:
    return [
        replace(node, stitch=other) if isinstance(node, Work) and node.stitch == stitch else node for node in stitches
    ]


def _swapped_pair(stitches: Sequence[Node], vocabulary: Vocabulary) -> list[Node] | None:
    """Return the row with each hole and the decrease beside it in the other order; None where it has no such pair."""
    single, done, at, changed = _singly(stitches), list[Node](), 0, False
    while at < len(single):
        here, following = single[at], single[at + 1] if at + 1 < len(single) else None
        if following is not None and {_makes(here, vocabulary), _makes(following, vocabulary)} == {"hole", "decrease"}:
            done += [following, here]
            changed, at = True, at + 1
        else:
            done.append(here)
        at += 1
    return done if changed else None


def _makes(node: Node, vocabulary: Vocabulary) -> str:
    stitch = vocabulary[node.stitch] if isinstance(node, Work) else None
    if stitch is None or stitch.makes == stitch.uses:
        return ""
    return "hole" if stitch.opens else "decrease" if stitch.makes < stitch.uses else ""


def _courses(
    parts: Sequence[Sequence[Node]], rows: Sequence[WorkedRow], vocabulary: Vocabulary
) -> list[tuple[str, ...]] | None:
    """Return the courses from the right side, a letter a stitch; None where the rows do not leave the planned counts.

    Rows that are fewer than planned are held against the planned ones as far as they go.
    """
    sides: list[Side | None] = [row.row.side for row in rows][: len(parts)]
    traced = trace(parts, rows[0].before, vocabulary, sides)
    if [step.after for step in traced.steps] != [row.after for row in rows][: len(parts)]:
        return None
    courses = from_rs(traced, vocabulary)
    letters = [tuple(LETTERS[look] for look in course) for course in courses]
    stitches = [tuple(each.stitch for each in row.worked) for row in traced.rows]
    # Crossings one way and the other look alike in letters: the stitches themselves tell them apart.
    return (
        [
            (*course, "|", *worked) if "x" in course else course
            for course, worked in zip(letters, stitches, strict=False)
        ]
        if len(letters) == len(parts)
        else None
    )


def _held(
    fault: Fault,
    rows: Sequence[WorkedRow],
    at: int,
    both: tuple[list[tuple[str, ...]], list[tuple[str, ...]]],
    edge: int,
) -> list[Fault]:
    """Return the fault with where it first shows and what it shows; nothing where it never differs."""
    right, wrong = both
    differs = [place for place in range(at, min(len(right), len(wrong))) if right[place] != wrong[place]]
    if not differs:
        return []
    place = differs[0]
    first = max(0, place - 1)
    return [
        replace(
            fault,
            shows_after=rows[place].number,
            right=_seen(right[place], rows[place], edge),
            wrong=_seen(wrong[place], rows[place], edge),
            meant=cloth([_middle(course, edge) for course in right[first : place + 2]]),
            turned_to=cloth([_middle(course, edge) for course in wrong[first : place + 1]]),
        )
    ]


def _seen(course: Sequence[str], row: WorkedRow, edge: int) -> str:
    letters = _middle(course, edge)
    if row.row.side == "WS":
        return letters
    return "".join(_FACES.get(letter, letter) for letter in reversed(letters))


def _middle(course: Sequence[str], edge: int) -> str:
    letters = "".join(course).partition("|")[0]
    return letters[edge : len(letters) - edge] if len(letters) > 2 * edge else letters


def cloth(courses: Sequence[str]) -> Cloth | None:
    """Name the plain fabric of courses from the right side; None for fewer than two, and where it is none of these."""
    if len(courses) < 2 or not set("".join(courses)) <= set(_FACES) or not all(courses):
        return None
    changes = all(_turned(one) == other for one, other in pairwise(courses))
    if all(len(set(course)) == 1 for course in courses):
        faces = {course[0] for course in courses}
        flat: Cloth = "stocking stitch" if faces == {"k"} else "reverse stocking stitch"
        return flat if len(faces) == 1 else "garter" if changes else None
    if len(set(courses)) == 1:
        return "rib"
    single = all(one != other for one, other in pairwise(courses[0]))
    return "seed stitch" if changes and single else None


def _turned(course: str) -> str:
    return "".join(_FACES[letter] for letter in course)
