"""A border too narrow for a body that rolls."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import ceil

from counterpane.craft.constructions import Part, Plan
from counterpane.craft.constructions.amending import working
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.fabrics import ROLLS, surplus
from counterpane.craft.constructions.gauging import gauge_of
from counterpane.craft.findings import Correction, Finding, rule
from counterpane.craft.measures import shown


@rule(
    "border-narrow-for-curl",
    family="fabric",
    severity="warning",
    bad=(
        '{"parts": {"body": "stocking-stitch",'
        ' "sides": {"component": "seed-stitch-border", "stitches": 5}, "bottom": "seed-stitch-border",'
        ' "top": "seed-stitch-border"}, '
        '"gauge": [{"stitches": 22, "rows": 30, "over_cm": 10, "in": "seed-stitch"},'
        ' {"stitches": 22, "rows": 30, "over_cm": 10, "in": "stocking-stitch"}], '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": "stocking-stitch",'
        ' "sides": {"component": "seed-stitch-border", "stitches": 9}, "bottom": "seed-stitch-border",'
        ' "top": "seed-stitch-border"}, '
        '"gauge": [{"stitches": 22, "rows": 30, "over_cm": 10, "in": "seed-stitch"},'
        ' {"stitches": 22, "rows": 30, "over_cm": 10, "in": "stocking-stitch"}], '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def border_narrow_for_curl(attempt: Attempt) -> Iterator[Finding]:
    """A border too narrow to hold a rolling body.

    Stocking stitch rolls to the back at its sides and to the front at its ends; a narrow frame rolls with it.
    """
    plan = attempt.plan
    if plan is None:
        return
    share = max(surplus(band.component, attempt.vocabulary) for band in plan.request.body)
    if share < ROLLS:
        return
    enough_cm, enough_rows = (PLAIN_CM, PLAIN_ROWS) if share == 1 else (SIDES_CM, END_ROWS)
    yield from _of_sides(attempt, plan, enough_cm)
    yield from _of_ends(attempt, plan, enough_rows)


PLAIN_CM, PLAIN_ROWS = Fraction(4), 10
"""Least side border and least end border beside plain stocking stitch; common practice, no source."""

SIDES_CM, END_ROWS = Fraction(5, 2), 6
"""The low end beside other fabrics that roll; common practice, no source."""


def _of_sides(attempt: Attempt, plan: Plan, enough: Fraction) -> Iterator[Finding]:
    part = plan.request.sides
    if part is None:
        yield _finding("/parts/sides", "There is no side border: the sides of this body roll to the back.", (), enough)
        return
    gauge = gauge_of(plan.request, part, attempt.vocabulary).gauge
    width = gauge.width(plan.counts.sides)
    if width < enough:
        least = ceil(enough * gauge.per_cm)
        why = f"about {shown(enough)} cm"
        tried = [Correction("/parts/sides/stitches", count, why) for count in range(least, least + 4)]
        changes = working(attempt, tried, 1)
        message = f"Side borders of {plan.counts.sides} stitches, {shown(width)} cm, hardly hold a body that rolls."
        yield _finding("/parts/sides", message, changes, enough)


def _of_ends(attempt: Attempt, plan: Plan, enough: int) -> Iterator[Finding]:
    ends: list[tuple[str, Part | None]] = [("bottom", plan.request.bottom), ("top", plan.request.top)]
    rows = {section.name: section.rows for section in plan.sections}
    for name, part in ends:
        if part is not None and rows[name] < enough:
            tried = [Correction(f"/parts/{name}/rows", more, "the usual least") for more in range(enough, enough + 4)]
            changes = working(attempt, tried, 1)
            message = f"A {name} border of {rows[name]} rows hardly holds a body that rolls."
            yield _finding(f"/parts/{name}", message, changes, enough)


def _finding(pointer: str, message: str, changes: tuple[Correction, ...], enough: Fraction | int) -> Finding:
    least = f"{shown(enough)} cm" if isinstance(enough, Fraction) else f"{enough} rows"
    hint = f"Take at least {least}; it may still flip, so block the piece or choose a body that lies flat."
    return Finding("border-narrow-for-curl", "warning", message, hint, pointer=pointer, changes=changes)
