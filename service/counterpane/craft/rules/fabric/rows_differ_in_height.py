"""Side borders whose rows are lower than those of the body."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from counterpane.craft.behaviour.extra_rows import ExtraRows, extra_rows
from counterpane.craft.behaviour.figures import Figure
from counterpane.craft.behaviour.places import band_name, band_section, the_band
from counterpane.craft.behaviour.widths import ratios
from counterpane.craft.constructions import Plan
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.findings import Finding, Severity, rule
from counterpane.craft.measures import half_up, shown


@rule(
    "rows-differ-in-height",
    family="fabric",
    severity="warning",
    bad=(
        '{"parts": {"body": {"component": "waffle", "rows": 251}}, '
        '"gauge": [{"stitches": 22, "rows": 42, "over_cm": 10, "in": "garter"},'
        ' {"stitches": 22, "rows": 30, "over_cm": 10, "in": "waffle"}], '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": {"component": "waffle", "rows": 247}}, '
        '"gauge": [{"stitches": 22, "rows": 30, "over_cm": 10, "in": "garter"},'
        ' {"stitches": 22, "rows": 30, "over_cm": 10, "in": "waffle"}], '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def rows_differ_in_height(attempt: Attempt) -> Iterator[Finding]:
    """Side borders whose rows are lower than those of the body.

    Row for row a garter border is shorter than a smooth body and draws it in; it needs extra rows, worked with a
    turn.
    """
    plan = attempt.plan
    if plan is None or plan.request.sides is None:
        return
    for band, part in enumerate(plan.request.body):
        found = ratios(plan.request, plan.request.sides, part, attempt.vocabulary)
        if found is None or found.rows is None or found.likely_rows < LEAST:
            continue
        if found.swatched:
            yield _by_gauges(plan, band, found.likely_rows)
        elif (more := extra_rows(plan, band, found, attempt.vocabulary)) is not None:
            yield _by_figures(plan, band, found.rows, more)


LEAST = Fraction(21, 20)
"""Rows of the border to one of the body from which the difference shows; house figure."""

MOSTLY_BLOCKED = "very narrow borders are usually just blocked"


def _by_gauges(plan: Plan, band: int, rows: Fraction) -> Finding:
    every = 2 / (rows - 1)
    return _said(
        "warning",
        f"The side borders take about {shown(rows, 2)} rows to one of {_band(plan, band)}: worked row "
        f"for row they are {shown(_long(plan, band) * (1 - 1 / rows))} cm shorter along it and draw it in.",
        f"Work one extra pair of border rows, with a turn, for every {shown(every, 0)} body rows{_evenly(every)}; "
        f"{MOSTLY_BLOCKED}.",
    )


def _by_figures(plan: Plan, band: int, rows: Figure, more: ExtraRows) -> Finding:
    low, high = rows.low or Fraction(1), rows.high or Fraction(1)
    shorter = [shown(_long(plan, band) * (1 - 1 / end)) for end in (low, high)]
    every = " or ".join(str(each) for each in dict.fromkeys(more.every))
    return _said(
        "note",
        f"The side borders take {shown(low, 2)} to {shown(high, 2)} rows to one of {_band(plan, band)} "
        f"({rows.source}): worked row for row they may be {' to '.join(shorter)} cm shorter along it and draw it in.",
        f"Knit a swatch of the border. By the middle of these figures one extra pair of border rows, with a turn, for "
        f"every {every} body rows keeps them level; {MOSTLY_BLOCKED}.",
    )


def _said(severity: Severity, message: str, hint: str) -> Finding:
    return Finding("rows-differ-in-height", severity, message, hint, pointer="/parts/sides")


def _band(plan: Plan, band: int) -> str:
    return the_band(band_name(plan.request, band))


def _long(plan: Plan, band: int) -> Fraction:
    return band_section(plan, band).cm_length


def _evenly(every: Fraction) -> str:
    """Say the even numbers of rows between which the extra rows alternate."""
    rows = int(half_up(every))
    return f", alternately after {rows - 1} and {rows + 1}" if rows % 2 and rows > 1 else ""
