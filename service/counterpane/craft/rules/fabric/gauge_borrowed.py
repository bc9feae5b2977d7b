"""Parts whose own gauge is not known."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from counterpane.craft.constructions import Part, Plan, PlanRequest
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.fabrics import rows_against_smooth
from counterpane.craft.constructions.gauging import body_gauge, gauge_of, said
from counterpane.craft.findings import Finding, rule
from counterpane.craft.measures import shown


@rule(
    "gauge-borrowed",
    family="fabric",
    severity="note",
    bad=(
        '{"parts": {"body": "garter", "bottom": "check-border", "top": "check-border"}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": "garter"}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def gauge_borrowed(attempt: Attempt) -> Iterator[Finding]:
    """A part at a borrowed gauge.

    Each fabric has its own stitches and rows to the centimetre; widths and lengths are summed part by part.
    """
    plan = attempt.plan
    if plan is None:
        return
    borrowed = [
        (name, part) for name, part in _parts(plan) if gauge_of(plan.request, part, attempt.vocabulary).borrowed
    ]
    if borrowed:
        names = ", ".join(name for name, _ in borrowed)
        yield Finding(
            "gauge-borrowed",
            "note",
            f"No gauge is known for: {names}. {_lender(plan.request)} is used there. {_cost(attempt, plan, borrowed)}",
            "Knit a swatch of each fabric, and give a list of gauges that names them with “in”.",
            pointer="/gauge",
        )


def _parts(plan: Plan) -> Iterator[tuple[str, Part]]:
    request = plan.request
    ends = [("bottom", request.bottom), ("sides", request.sides), ("selvedge", request.selvedge), ("top", request.top)]
    several = len(request.body) > 1
    yield from ((f"body {place}" if several else "body", band) for place, band in enumerate(request.body, 1))
    yield from ((name, part) for name, part in ends if part is not None and (name != "selvedge" or _wide(plan)))


def _wide(plan: Plan) -> bool:
    return plan.counts.selvedge > NARROW


NARROW = 2
"""Selvedge stitches up to which their own gauge does not matter; house figure."""


def _lender(request: PlanRequest) -> str:
    gauge = body_gauge(request).gauge
    return f"The gauge of {f'“{gauge.texture}”' if gauge.texture else 'the body'}, {said(gauge)},"


def _cost(attempt: Attempt, plan: Plan, borrowed: list[tuple[str, Part]]) -> str:
    """Say what borrowing may cost in length, where common practice has a figure for the fabric."""
    lengths = {section.name: section.cm_length for section in plan.sections}
    short = Fraction(0)
    for name, part in borrowed:
        ratio = rows_against_smooth(part.component, attempt.vocabulary)
        if ratio is not None and name in ("bottom", "top"):
            short += lengths[name] * (1 - 1 / ratio)
    if not short:
        return "Another fabric may easily be a tenth wider or narrower, longer or shorter."
    return f"The piece may come out {shown(short)} cm shorter for it (common practice, no source)."
