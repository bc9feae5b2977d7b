"""A border too narrow for a body that rolls."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import ceil

from counterpane.craft.behaviour import Curl, behaviour_of
from counterpane.craft.constructions import Part, Plan
from counterpane.craft.constructions.amending import working
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.gauging import gauge_of
from counterpane.craft.findings import Correction, Finding, rule
from counterpane.craft.measures import shown
from counterpane.craft.stitches import Vocabulary


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

    Stocking stitch rolls to the back at its sides and to the front at its ends; a narrow frame rolls with it, and so
    does one that rolls itself. At the sides every band of the body counts, at an end the band that meets it.
    """
    plan = attempt.plan
    if plan is None:
        return
    bands = [behaviour_of(band.component, attempt.vocabulary).curl for band in plan.request.body]
    if rolling := [curl for curl in bands if curl is not None]:
        yield from _of_sides(attempt, plan, max(rolling, key=lambda curl: curl.side_border.low or Fraction(0)))
    for name, part, curl in (("bottom", plan.request.bottom, bands[0]), ("top", plan.request.top, bands[-1])):
        if curl is not None:
            yield from _of_end(attempt, plan, name, part, curl)


def _of_sides(attempt: Attempt, plan: Plan, curl: Curl) -> Iterator[Finding]:
    part, enough = plan.request.sides or plan.request.picked, curl.side_border.low or Fraction(0)
    least = f"{shown(enough)} cm"
    if part is None:
        yield _finding("/parts/sides", f"There is no side border: the sides of this body roll {curl.sides}.", (), least)
    elif _rolls(part, attempt.vocabulary):
        yield _finding("/parts/sides", f"The side borders roll themselves, and the body rolls {curl.sides}.", (), least)
    elif plan.picked:
        yield from _of_picked(attempt, part, enough)
    else:
        gauge = gauge_of(plan.request, part, attempt.vocabulary).gauge
        width = gauge.width(plan.counts.sides)
        if width < enough:
            fewest = ceil(enough * gauge.per_cm)
            tried = [
                Correction("/parts/sides/stitches", count, f"about {least}") for count in range(fewest, fewest + 4)
            ]
            message = f"Side borders of {plan.counts.sides} stitches, {shown(width)} cm, hardly hold a body that rolls."
            yield _finding("/parts/sides", message, working(attempt, tried, 1), least)


def _of_picked(attempt: Attempt, part: Part, enough: Fraction) -> Iterator[Finding]:
    """Say the same of side borders that are worked outwards, whose rows make their width."""
    gauge, rows = gauge_of(attempt.request, part, attempt.vocabulary).gauge, part.rows or 0
    if gauge.length(rows) < enough:
        least, fewest = f"{shown(enough)} cm", ceil(enough * gauge.rows_per_cm)
        tried = [Correction("/parts/sides/rows", count, f"about {least}") for count in range(fewest, fewest + 4)]
        message = f"Side borders of {rows} rows, {shown(gauge.length(rows))} cm, hardly hold a body that rolls."
        yield _finding("/parts/sides", message, working(attempt, tried, 1), least)


def _of_end(attempt: Attempt, plan: Plan, name: str, part: Part | None, curl: Curl) -> Iterator[Finding]:
    enough = ceil(curl.end_border.low or 0)
    least, pointer = f"{enough} rows", f"/parts/{name}"
    rows = {section.name: section.rows for section in plan.sections}
    if part is None:
        yield _finding(pointer, f"There is no {name} border: this end of the body rolls {curl.ends}.", (), least)
    elif _rolls(part, attempt.vocabulary):
        yield _finding(pointer, f"The {name} border rolls itself, and the body rolls {curl.ends}.", (), least)
    elif rows[name] < enough:
        tried = [Correction(f"{pointer}/rows", more, "the usual minimum") for more in range(enough, enough + 4)]
        message = f"A {name} border of {rows[name]} rows hardly holds a body that rolls."
        yield _finding(pointer, message, working(attempt, tried, 1), least)


def _rolls(part: Part, vocabulary: Vocabulary) -> bool:
    return behaviour_of(part.component, vocabulary).curl is not None


def _finding(pointer: str, message: str, changes: tuple[Correction, ...], least: str) -> Finding:
    hint = (
        f"Take at least {least} of a border that lies flat; it may still flip, so block the piece or choose a body "
        "that lies flat."
    )
    return Finding("border-narrow-for-curl", "warning", message, hint, pointer=pointer, changes=changes)
