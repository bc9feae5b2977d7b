"""An end border that is wider than the body over the same stitches."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from counterpane.craft.behaviour.places import Place, ends_of
from counterpane.craft.behaviour.widths import Ratios, ratios
from counterpane.craft.checking.wording import stitches
from counterpane.craft.constructions import Plan
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.gauging import gauge_of
from counterpane.craft.findings import Finding, rule
from counterpane.craft.measures import half_up, shown
from counterpane.craft.sizing.takeup import spacing


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
    frills = [_frill(place) for place in ends_of(plan, attempt.vocabulary)]
    found = [frill for frill in frills if frill is not None]
    if found:
        yield _said(found, plan)


FRILL_CM = Fraction(1, 2)
"""Centimetres by which a border may be wider than the body without a word; house figure."""


@dataclass(frozen=True, slots=True)
class _Frill:
    """A border wider than the body: its end, by how much at least and at most, its width, and the stitches to drop."""

    name: str
    cm: tuple[Fraction, Fraction]
    wide_cm: tuple[Fraction, Fraction]
    fewer: int
    inner: int
    guess: str


def _frill(place: Place) -> _Frill | None:
    """Return the frill of a border: by the gauges where both are given, else by the figures of its texture."""
    plan = place.plan
    found = _against_body(place)
    if found is None:
        return None
    section = plan.sections[0 if place.end == "bottom" else -1]
    if found.swatched:
        cm = section.cm_width - plan.width_cm
        ends, wide, guess = (cm, cm), (section.cm_width, section.cm_width), ""
    elif found.width is not None and found.width.low is not None and found.width.high is not None:
        low, high = ((end - 1) * _inner_cm(place) for end in (found.width.low, found.width.high))
        ends, wide = (low, high), (plan.width_cm + low, plan.width_cm + high)
        guess = f" on the same needle ({found.width.source})"
    else:
        return None
    fewer = place.inner - int(half_up(place.inner / found.likely_width))
    return _Frill(place.end, ends, wide, fewer, place.inner, guess) if ends[0] >= FRILL_CM else None


def _against_body(place: Place) -> Ratios | None:
    border, body = place.border, place.plan.request.body[place.band]
    return None if border is None else ratios(place.plan.request, border, body, place.vocabulary)


def _inner_cm(place: Place) -> Fraction:
    plan = place.plan
    return gauge_of(plan.request, plan.request.body[place.band], place.vocabulary).gauge.width(place.inner)


def _said(found: list[_Frill], plan: Plan) -> Finding:
    first = found[0]
    names = " and ".join(frill.name for frill in found)
    return Finding(
        "border-frills",
        "warning",
        f"The border ({names}) comes out about {_ends(first.wide_cm)} cm wide{first.guess} against "
        f"{shown(plan.width_cm)} cm in the body: its edge frills by {_ends(first.cm)} cm.",
        f"Take a needle about half a millimetre smaller for it, or {_fewer(first)}.",
        pointer=f"/parts/{first.name}",
    )


def _ends(cm: tuple[Fraction, Fraction]) -> str:
    return " to ".join(dict.fromkeys(shown(end) for end in cm))


def _fewer(frill: _Frill) -> str:
    many = f"work it over {stitches(frill.fewer)} fewer between the side borders"
    decreases = frill.name == "top"
    plain = frill.inner - frill.fewer * (2 if decreases else 1)
    if not 0 < frill.fewer < plain:
        return many
    first, low, high = spacing(frill.fewer, plain)
    between = f"{low} or {high}" if low < high else str(low)
    evenly = f"after the first {stitches(first)}, then after every {between}"
    change = "decreases where the border begins" if decreases else "increases where the body begins"
    return f"{many}, with as many {change}, {evenly}"
