"""A lesson put together from the sampler of a plan."""

from __future__ import annotations

from dataclasses import dataclass

from counterpane.craft.constructions import Plan
from counterpane.craft.pattern import Cautions
from counterpane.craft.pattern.figures import counted
from counterpane.craft.teaching import Kit, Lesson, TooLong
from counterpane.craft.teaching.hands import hand_notes
from counterpane.craft.teaching.script import Telling, steps_of, total_minutes
from counterpane.craft.teaching.timing import pace, sessions

MOST_ROWS = 1_000
"""Rows of a sampler that are told in one lesson; house figure."""
MOST_STITCHES = 20_000
"""Stitches of a sampler that are worked one by one for a lesson; house figure."""


def refuse_too_long(small: Plan) -> None:
    """Raise TooLong for a sampler of more rows or stitches than one lesson shows."""
    rows = sum(section.rows for section in small.every_section)
    stitches = sum(section.rows * max(section.before, section.after) for section in small.every_section)
    if rows > MOST_ROWS or stitches > MOST_STITCHES:
        raise TooLong(
            f"Its sampler takes {counted(rows, 'row')} and about {counted(stitches, 'stitch', 'stitches')}; a lesson "
            f"tells {MOST_ROWS:,} rows and {MOST_STITCHES:,} stitches at most."
        )


@dataclass(frozen=True, slots=True)
class Around:
    """What stands round the steps of a lesson: title, minutes of a session, kit, cautions, what every class hears."""

    title: str
    session: int
    kit: Kit
    cautions: Cautions
    always: tuple[str, ...]


def lesson_of(plan: Plan, small: Plan, telling: Telling, around: Around) -> Lesson:
    """Return the lesson on the sampler `small` of a plan."""
    steps = steps_of(small, telling)
    return Lesson(
        title=around.title,
        terms=telling.terms,
        hand=telling.hand,
        summary=_summary(plan, small),
        steps=steps,
        minutes=total_minutes(steps),
        pace=pace(telling.learners),
        session_minutes=around.session,
        sessions=sessions(steps, around.session),
        kit=around.kit,
        hands=hand_notes(telling.hand),
        always=around.always,
        cautions=around.cautions,
    )


def _summary(plan: Plan, small: Plan) -> tuple[str, ...]:
    rows = counted(sum(section.rows for section in small.every_section), "row")
    whole = sum(section.rows for section in plan.every_section)
    return (
        f"The class works the sampler: {counted(small.counts.cast_on, 'stitch', 'stitches')} and {rows}. It shows "
        f"every change of the blanket, which has {counted(plan.counts.cast_on, 'stitch', 'stitches')} and "
        f"{counted(whole, 'row')}.",
        "Each part counts its rows from 1 again. The sampler is too small to measure a gauge on.",
    )
