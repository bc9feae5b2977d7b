"""Side borders whose rows are lower than those of the body."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.fabrics import is_garter, rows_against_smooth
from counterpane.craft.constructions.gauging import gauge_of
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
    found = _ratio(attempt)
    if found is None or found[0] < LEAST:
        return
    ratio, severity = found
    every = 2 / (ratio - 1)
    body = sum((section.cm_length for section in plan.sections if section.name.startswith("body")), Fraction(0))
    guess = " (common practice, no source)" if severity == "note" else ""
    yield Finding(
        "rows-differ-in-height",
        severity,
        f"The side borders take about {shown(ratio, 2)} rows to one of the body{guess}: worked row for row they are "
        f"{shown(body * (1 - 1 / ratio))} cm shorter along the body and draw it in.",
        f"Work one extra pair of border rows, with a turn, for every {shown(every, 0)} body rows{_evenly(every)}; "
        "very narrow borders are usually just blocked.",
        pointer="/parts/sides",
    )


LEAST = Fraction(21, 20)
"""Rows of the border to one of the body from which the difference shows; house figure."""


def _ratio(attempt: Attempt) -> tuple[Fraction, Severity] | None:
    """Return the rows of the side border to one of the body: of known gauges, or of common practice with a note."""
    request, vocabulary = attempt.request, attempt.vocabulary
    if request.sides is None:
        return None
    sides, body = gauge_of(request, request.sides, vocabulary), gauge_of(request, request.body[0], vocabulary)
    if not sides.borrowed:
        return sides.gauge.rows_per_cm / body.gauge.rows_per_cm, "warning"
    usual = rows_against_smooth(request.sides.component, vocabulary)
    own = rows_against_smooth(request.body[0].component, vocabulary) or Fraction(1)
    return None if usual is None or is_garter(request.body[0].component, vocabulary) else (usual / own, "note")


def _evenly(every: Fraction) -> str:
    """Say the even numbers of rows between which the extra rows alternate."""
    rows = int(half_up(every))
    return f", alternately after {rows - 1} and {rows + 1}" if rows % 2 and rows > 1 else ""
