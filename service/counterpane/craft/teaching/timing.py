"""How long the work of a lesson takes, by the pace model, and how it falls into sessions.

Showing, waiting and helping come on top; how long they take is not known and not in any figure.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Literal

from counterpane.craft.teaching import NO_TIME, Minutes, Session, Step
from counterpane.craft.yarn.pace import MINUTES, OF_PRACTICE, worked_hours

Learners = Literal["beginners", "practised"]

FACTORS: Mapping[Learners, int] = {"beginners": 2, "practised": 1}
"""How many times as long a class takes as practised knitters; beginners about twice as long, from memory."""

BEGINNERS: Mapping[Learners, str] = {
    "beginners": "; beginners are taken to need twice as long, from memory",
    "practised": "; beginners take about twice as long, from memory",
}


def pace(learners: Learners) -> str:
    """Say what the minutes rest on."""
    return (
        f"An estimate: {OF_PRACTICE}{BEGINNERS[learners]}. Showing, waiting and helping come on top; how long they "
        "take is not known."
    )


def minutes_of(stitches: int, rows: int, *, slower: bool, factor: int) -> Minutes:
    """Return the minutes of so many stitches and turns; `slower` for lace and cables, `factor` for who works them."""
    quick, slow = worked_hours(0, stitches, rows) if slower else worked_hours(stitches, 0, rows)
    return Minutes(quick * MINUTES * factor, slow * MINUTES * factor)


def sessions(steps: Sequence[Step], minutes: int) -> tuple[Session, ...]:
    """Divide steps into sessions of so many minutes by their slow end; no step is cut in two."""
    return tuple(
        Session(number, (group[0].number, group[-1].number), _sum(group), _sum(group).slow > minutes)
        for number, group in enumerate(_groups(steps, minutes), start=1)
    )


def _groups(steps: Sequence[Step], minutes: int) -> Iterator[list[Step]]:
    group: list[Step] = []
    for step in steps:
        if group and _sum(group).slow + step.minutes.slow > minutes:
            yield group
            group = []
        group.append(step)
    if group:
        yield group


def _sum(steps: Sequence[Step]) -> Minutes:
    return sum((step.minutes for step in steps), NO_TIME)
