"""What the rows and the gauge of a plan tell of openings and strands: estimates, never measurements."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from counterpane.craft.component import Measure
from counterpane.craft.component.strands import longest_strand, widest_opening
from counterpane.craft.constructions import Part, Plan, Section
from counterpane.craft.measures import Gauge, half_up
from counterpane.craft.openings import Span, opening_mm, strand_mm
from counterpane.craft.rows.tree import BindOff, CastOn, Group, IntoOne, Node, OpenRepeat, Turn, Work
from counterpane.craft.safety import in_figures
from counterpane.craft.safety.limits import ENTRAPMENT_MM, FINGERTIP_MM

CLEARS_NOTHING = "An estimate clears nothing: measure the washed piece, openings with a rod."
"""What stands behind each estimate."""

PICKED_UP = frozenset({"pick up and knit", "pick up and purl"})
"""Stitches drawn from an edge, beside which gaps open."""


@dataclass(frozen=True, slots=True)
class Estimate:
    """So many stitches side by side in a section, the millimetres they come to, and the gauge that tells so."""

    section: str
    stitches: int
    span: Span
    gauge: Gauge


@dataclass(frozen=True, slots=True)
class PlanFabric:
    """The openings and strands of a plan by section, and whether it has openwork and gaps; None where not known."""

    openings: tuple[Estimate, ...]
    strands: tuple[Estimate, ...]
    openwork: bool | None
    gaps: bool | None


def fabric_of(plan: Plan) -> PlanFabric:
    """Estimate the openings and strands of each section at its own gauge."""
    openings, strands = [], []
    for section in plan.every_section:
        gauge = _gauge_of(section, plan)
        rows = [row.parts for row in section.cycle[: section.rows]]
        if run := widest_opening(rows, section.before):
            openings.append(Estimate(section.name, run, opening_mm(run, gauge), gauge))
        if run := longest_strand(rows, section.before):
            strands.append(Estimate(section.name, run, strand_mm(run, gauge), gauge))
    return PlanFabric(tuple(openings), tuple(strands), _openwork(plan, bool(openings)), _gaps(plan) or None)


def estimates_json(fabric: PlanFabric) -> dict[str, Any]:
    """Return the estimates as JSON values, millimetres half up to 0.1, each with what it means in words."""
    return {
        "openings": [_shown(each) | {"message": _opening_words(each)} for each in fabric.openings],
        "strands": [_shown(each) | {"message": _strand_words(each)} for each in fabric.strands],
    }


def parts_of(plan: Plan) -> Iterator[tuple[str, Part]]:
    """Give each part of a plan with its name, in working order."""
    request = plan.request
    before = (("cast_on", request.cast_on), ("bottom", request.bottom), ("sides", request.sides or request.picked))
    body = [("body", part) for part in request.body]
    after = (("top", request.top), ("bind_off", request.bind_off))
    for name, part in (*before, ("selvedge", request.selvedge), *body, *after):
        if part is not None:
            yield name, part


def _gauge_of(section: Section, plan: Plan) -> Gauge:
    gauges = plan.request.gauges
    return next((gauge for gauge in gauges if gauge.texture == section.gauge_in), gauges[0])


def _openwork(plan: Plan, in_rows: bool) -> bool | None:
    """Tell from the rows, and from the notes of parts that are worked without rows, whether there is openwork."""
    notes = {part.component.safety.openings for _, part in parts_of(plan) if part.component.operation is not None}
    if in_rows or any(isinstance(note, Measure) for note in notes):
        return True
    return None if "not known" in notes else False


def _gaps(plan: Plan) -> bool:
    slips = any(part.component.slipped_edge is not None for _, part in parts_of(plan))
    rows = (row for section in plan.every_section for row in section.cycle[: section.rows])
    return slips or any(_leaves_gap(part) for row in rows for part in row.parts)


def _leaves_gap(node: Node) -> bool:
    match node:
        case Turn() | BindOff() | CastOn():
            return True
        case Work(stitch):
            return stitch in PICKED_UP
        case Group(parts) | IntoOne(parts) | OpenRepeat(parts, last=None):
            return any(_leaves_gap(part) for part in parts)
        case OpenRepeat(parts, last=last):
            return any(_leaves_gap(part) for part in (*parts, *(last or ())))
        case _:
            return False


def _shown(estimate: Estimate) -> dict[str, Any]:
    low, high = estimate.span.low, estimate.span.high
    return {
        "section": estimate.section,
        "stitches": estimate.stitches,
        "low_mm": None if low is None else _tenths(low),
        "high_mm": _tenths(high),
    }


def _tenths(length: Fraction) -> float:
    return float(half_up(length, Fraction(1, 10)))


def _opening_words(estimate: Estimate) -> str:
    verdicts = "; ".join(
        f"against {in_figures(limit)} mm: {estimate.span.against(limit)}" for limit in (FINGERTIP_MM, ENTRAPMENT_MM)
    )
    return (
        f"Estimated from the gauge: at most about {_tenth(estimate.span.high)} mm. The yarn's diameter is not known, "
        f"so the low end is not either ({verdicts}). {CLEARS_NOTHING}"
    )


def _strand_words(estimate: Estimate) -> str:
    low = _tenth(estimate.span.low or Fraction(0))
    slipped = "1 slipped stitch" if estimate.stitches == 1 else f"{estimate.stitches} slipped stitches"
    return f"Estimated from the gauge: {low} to {_tenth(estimate.span.high)} mm past {slipped}. {CLEARS_NOTHING}"


def _tenth(length: Fraction) -> str:
    return in_figures(half_up(length, Fraction(1, 10)))
