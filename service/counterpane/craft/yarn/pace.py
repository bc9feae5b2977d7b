"""Hours of knitting by a pace: stitches a minute, slower in lace and cables, and the turns at the ends of rows."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from counterpane.craft.constructions import Plan, Section
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.yarn.tally import CAST_ON, tally_rows

PRACTISED = Fraction(15), Fraction(25)
"""Stitches a minute of practised plain knitting, from memory; beginners take about twice as long."""

SLOWER = Fraction(7, 10)
"""Share of the plain pace in lace and cables, from memory."""

TURNING_S = Fraction(3), Fraction(5)
"""Seconds to turn at the end of a row, from memory."""

TURNS = "3 to 5 seconds a turn, and 0.7 of the pace in lace and cables, from memory"
"""What is said of turning and of slower parts, whatever the pace."""

OF_PRACTICE = f"15 to 25 stitches a minute of practised plain knitting, {TURNS}"
"""What is said of the pace of practised knitters."""

MINUTES, SECONDS = 60, 3600  # Of an hour, by definition.

FASTEST = 120
"""Stitches a minute beyond which a pace is refused: the record of one minute is 118 (M. Tegels, 2006, second-hand)."""


@dataclass(frozen=True, slots=True)
class Hours:
    """Hours at the quicker and at the slower end, and the parts in which the pace is slower."""

    quick: Fraction
    slow: Fraction
    slow_parts: tuple[str, ...]


def hours_at(stitches: int, a_minute: Fraction) -> Fraction:
    """Return the hours of so many stitches at a pace; exact."""
    return stitches / (MINUTES * a_minute)


def worked_hours(plain: int, slower: int, rows: int, pace: Fraction | None = None) -> tuple[Fraction, Fraction]:
    """Return the hours of plain and of slower stitches with their turns, at the quicker and at the slower end; exact.

    `pace` is one's own in plain knitting, None that of practised knitters.
    """
    quick, slow = (
        hours_at(plain, rate) + hours_at(slower, rate * SLOWER) + rows * turn / SECONDS
        for rate, turn in ((pace or PRACTISED[1], TURNING_S[0]), (pace or PRACTISED[0], TURNING_S[1]))
    )
    return quick, slow


@dataclass(frozen=True, slots=True)
class Work:
    """What there is to work of a plan: plain stitches, slower ones, rows, and the parts that are slower."""

    plain: int
    slower: int
    rows: int
    slow_parts: tuple[str, ...]


def work_of(plan: Plan, vocabulary: Vocabulary) -> Work:
    """Return what there is to work of a plan."""
    slow_parts = tuple(section.name for section in plan.every_section if is_slow(section, vocabulary))
    slower = sum(section.stitches for section in plan.every_section if section.name in slow_parts)
    rows = sum(section.rows for section in plan.every_section)
    return Work(plan.stitches_total - slower, slower, rows, slow_parts)


def hours(plan: Plan, vocabulary: Vocabulary, pace: Fraction | None = None) -> Hours:
    """Return the hours of a plan at a pace of one's own in plain knitting, or at that of practised knitters."""
    work = work_of(plan, vocabulary)
    quick, slow = worked_hours(work.plain, work.slower, work.rows, pace)
    return Hours(quick, slow, work.slow_parts)


def is_slow(section: Section, vocabulary: Vocabulary) -> bool:
    """Say whether any stitch of a section is a yarn-over, or crosses others."""
    tallies = tally_rows((row.parts for row in section.cycle), section.before, vocabulary)
    worked = {key for each in tallies for key, _ in each.stitches if key != CAST_ON}
    return any(vocabulary[key].opens or min(vocabulary[key].uses, vocabulary[key].makes) > 1 for key in worked)
