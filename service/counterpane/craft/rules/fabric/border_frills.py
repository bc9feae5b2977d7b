"""An end border that is wider than the body over the same stitches."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from counterpane.craft.checking.wording import stitches
from counterpane.craft.constructions import Part, Plan, Section
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.fabrics import GARTER_WIDTH, is_garter
from counterpane.craft.constructions.gauging import body_gauge, gauge_of
from counterpane.craft.findings import Finding, rule
from counterpane.craft.measures import shown
from counterpane.craft.sizing.takeup import same_width, spacing


@rule(
    "border-frills",
    family="fabric",
    severity="warning",
    bad=(
        '{"parts": {"body": {"component": "waffle", "rows": 247}}, '
        '"gauge": [{"stitches": 20.5, "rows": 30, "over_cm": 10, "in": "garter"},'
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
def border_frills(attempt: Attempt) -> Iterator[Finding]:
    """An end border wider than the body.

    Over the same stitches garter is wider than a smoother body, so that its edge frills.
    """
    plan = attempt.plan
    if plan is None:
        return
    ends = [("bottom", plan.request.bottom, plan.sections[0]), ("top", plan.request.top, plan.sections[-1])]
    frills = [_frill(attempt, plan, name, part, section) for name, part, section in ends if part]
    found = [frill for frill in frills if frill is not None]
    if found:
        yield _said(found, plan)


FRILL_CM = Fraction(1, 2)
"""Centimetres by which a border may be wider than the body without a word; house figure."""


@dataclass(frozen=True, slots=True)
class _Frill:
    """A border wider than the body: by how much, whether estimated, and the stitches that would measure the same."""

    name: str
    cm: Fraction
    wide_cm: Fraction
    fewer: int
    inner: int
    estimated: bool


def _frill(attempt: Attempt, plan: Plan, name: str, part: Part, section: Section) -> _Frill | None:
    own = gauge_of(plan.request, part, attempt.vocabulary)
    body, inner = body_gauge(plan.request).gauge, plan.counts.body[0]
    garter = is_garter(part.component, attempt.vocabulary)
    smooth = not is_garter(plan.request.body[0].component, attempt.vocabulary)
    if own.borrowed and garter and smooth:
        cm = body.width(inner) * (GARTER_WIDTH - 1)
        fewer = inner - same_width(inner, GARTER_WIDTH, Fraction(1))
        return _Frill(name, cm, plan.width_cm + cm, fewer, inner, True)
    cm = section.cm_width - plan.width_cm
    if own.borrowed or cm < FRILL_CM:
        return None
    return _Frill(name, cm, section.cm_width, inner - same_width(inner, body.per_cm, own.gauge.per_cm), inner, False)


def _said(found: list[_Frill], plan: Plan) -> Finding:
    first = found[0]
    names = " and ".join(frill.name for frill in found)
    guess = " on the same needle (common practice, no source)" if first.estimated else ""
    return Finding(
        "border-frills",
        "warning",
        f"The border ({names}) comes out about {shown(first.wide_cm)} cm wide{guess} against {shown(plan.width_cm)} cm "
        f"in the body: its edge frills by {shown(first.cm)} cm.",
        f"Take a needle about half a millimetre smaller for it, or {_fewer(first)}.",
        pointer=f"/parts/{first.name}",
    )


def _fewer(frill: _Frill) -> str:
    many = f"work it over {stitches(frill.fewer)} fewer between the side borders"
    if not 0 < frill.fewer < frill.inner - frill.fewer:
        return many
    first, low, high = spacing(frill.fewer, frill.inner - frill.fewer)
    between = f"{low} or {high}" if low < high else str(low)
    evenly = f"after the first {first} stitches, then after every {between}"
    return f"{many}, with as many increases where the body begins, {evenly}"
