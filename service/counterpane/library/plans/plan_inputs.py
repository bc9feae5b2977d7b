"""What a plan tells of safety inputs: sizes, gauge, openwork, gaps, fibres, and what a flat piece has not.

A plan never makes a rule silent by an estimate: a float or a mass that was worked out is used only where even its low
end speaks, and does not count as known.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction
from typing import Any

from counterpane.craft.constructions import Plan
from counterpane.craft.measures import half_up
from counterpane.craft.safety import Fibre, SafetyInputs
from counterpane.craft.safety.house import LOOSE_NOTICE_MM, NOT_LIGHT_GSM
from counterpane.craft.yarn import Spread, Yarn, YarnEstimate
from counterpane.library.plans.plan_fabric import PlanFabric

FLAT = ("one-piece", "sides-picked-up")
"""The constructions whose plans are one flat layer of knitting, without filling, pockets or added weight."""

MEASURE_MASS = "An estimate clears nothing: weigh the washed, dry piece."


def add_plan(inputs: SafetyInputs, plan: Plan, fabric: PlanFabric, yarn: YarnEstimate | None = None) -> SafetyInputs:
    """Add what a plan tells to safety inputs; where both tell, the stricter counts.

    Where neither an age nor a use is told nothing was said of anybody, and what the piece has not is left open too.
    """
    longest = max((low for each in fabric.strands if (low := each.span.low) is not None), default=Fraction(0))
    floats = longest if inputs.float_mm is None and longest > LOOSE_NOTICE_MM else None
    grams = _heavy(plan, yarn) if inputs.mass_g is None else None
    gauges = [10 * gauge.per_cm for gauge in plan.request.gauges]
    somebody = inputs.age_band is not None or inputs.use is not None
    known = _structure(inputs, plan) if somebody else inputs
    return replace(
        known,
        openwork=inputs.openwork or fabric.openwork,
        gaps=inputs.gaps or fabric.gaps,
        gauge_sts_10cm=min([*gauges, *filter(None, [inputs.gauge_sts_10cm])]),
        width_cm=inputs.width_cm or plan.width_cm,
        length_cm=inputs.length_cm or plan.length_cm,
        fibres=inputs.fibres if inputs.fibres is not None else _fibres(yarn),
        float_mm=inputs.float_mm if floats is None else floats,
        mass_g=inputs.mass_g if grams is None else grams,
        estimated=tuple(name for name, found in (("float_mm", floats), ("mass_g", grams)) if found is not None),
    )


def derived_names(given: SafetyInputs, known: SafetyInputs) -> list[str]:
    """Return the names of inputs that the plan told and nobody gave, estimates left out."""
    names = [name for name in SafetyInputs.__dataclass_fields__ if name != "estimated"]
    return [
        name
        for name in names
        if getattr(given, name) is None and getattr(known, name) is not None and name not in known.estimated
    ]


def mass_json(plan: Plan, yarn: YarnEstimate | None) -> list[dict[str, Any]]:
    """Return the mass per square metre as it is estimated from the yarn, none where grams are not known."""
    grams = None if yarn is None else yarn.grams
    if grams is None:
        return []
    low, likely, high = (half_up(each) for each in _per_square_metre(plan, grams))
    message = f"Estimated from the yarn: {low} to {high} g per square metre. {MEASURE_MASS}"
    return [
        {"section": "whole", "low_gsm": int(low), "likely_gsm": int(likely), "high_gsm": int(high), "message": message}
    ]


def _per_square_metre(plan: Plan, grams: Spread) -> tuple[Fraction, Fraction, Fraction]:
    square_metres = plan.width_cm * plan.length_cm / 10_000
    return grams.low / square_metres, grams.likely / square_metres, grams.high / square_metres


def _heavy(plan: Plan, yarn: YarnEstimate | None) -> Fraction | None:
    """Return the low end of the grams where even that is not lightweight."""
    grams = None if yarn is None else yarn.grams
    if grams is None or _per_square_metre(plan, grams)[0] < NOT_LIGHT_GSM:
        return None
    return grams.low


def _structure(inputs: SafetyInputs, plan: Plan) -> SafetyInputs:
    if plan.request.construction not in FLAT:
        return inputs
    return replace(
        inputs,
        filled=inputs.filled or False,
        weighted=inputs.weighted or False,
        enclosed_part=inputs.enclosed_part or False,
        features=inputs.features or (),
    )


def _fibres(yarn: YarnEstimate | None) -> tuple[Fibre, ...] | None:
    """Return the fibres of all yarns; the shares only where every yarn is made alike. None where one is not told."""
    made = [_told(each.yarn) for each in yarn.colours] if yarn is not None else []
    if not made or not all(made):
        return None
    if all(each == made[0] for each in made):
        return made[0]
    return tuple(Fibre(name) for name in dict.fromkeys(fibre.name for fibre in _all(made)))


def _told(yarn: Yarn) -> tuple[Fibre, ...]:
    return tuple(Fibre(fibre.name, fibre.percent) for fibre in yarn.fibre)


def _all(made: Iterable[tuple[Fibre, ...]]) -> Iterable[Fibre]:
    return (fibre for each in made for fibre in each)
