"""Parts whose own gauge is not known."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from counterpane.craft.behaviour.places import Place, ends_of
from counterpane.craft.behaviour.widths import ratios
from counterpane.craft.constructions import Part, Plan, PlanRequest
from counterpane.craft.constructions.attempts import Attempt
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
    ends = [
        ("bottom", request.bottom),
        ("sides", request.sides or request.picked),
        ("selvedge", request.selvedge),
        ("top", request.top),
    ]
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
    """Say what borrowing may cost in length, where there is a figure for the rows of the fabric."""
    ends = {place.end: place for place in ends_of(plan, attempt.vocabulary)}
    found = [_shorter(ends[name]) for name, _ in borrowed if name in ends]
    known = [shorter for shorter in found if shorter is not None]
    if not known:
        return "Another fabric may easily be a tenth wider or narrower, longer or shorter."
    low, high = (sum((shorter[end] for shorter in known), Fraction(0)) for end in (0, 1))
    return f"The piece may come out {shown(low)} to {shown(high)} cm shorter for it (figures from memory)."


def _shorter(place: Place) -> tuple[Fraction, Fraction] | None:
    """Return by how much at least and at most an end border is shorter than planned; None where it is not known."""
    plan, border = place.plan, place.border
    found = ratios(plan.request, border, plan.request.body[place.band], place.vocabulary) if border else None
    rows = None if found is None or found.swatched else found.rows
    if rows is None or rows.low is None or rows.high is None or rows.low <= 1:
        return None
    planned = plan.sections[0 if place.end == "bottom" else -1].cm_length
    return planned * (1 - 1 / rows.low), planned * (1 - 1 / rows.high)
