"""Why a proposal stands where it stands: what speaks for and against it, in words, and the order that follows."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Any, Literal

from counterpane.craft.constructions import Plan
from counterpane.craft.measures import shown
from counterpane.craft.pattern import Level
from counterpane.craft.yarn import YarnEstimate
from counterpane.library.plans.plan_told import Told
from counterpane.library.values import BadInput
from counterpane.library.yarn.yarn_largest import stocks_of

Answer = dict[str, Any]
Enough = Literal["yes", "not surely", "no", "not known"]
ORDER: tuple[Enough, ...] = ("yes", "not known", "not surely", "no")
NEAR_CM = Fraction(1)
"""What a size may miss and still be called near; house figure."""
NO_PASS = "Nothing here says that it is safe: what was not assessed is never a pass."


@dataclass(frozen=True, slots=True)
class Weighed:
    """A plan with what is told of it, weighed: its reasons, whether the yarn does, and its place in the order."""

    reasons: tuple[Answer, ...]
    enough: Enough
    place: tuple[int | Fraction, ...]


def weighed(plan: Plan, told: Told, level: Level, asked: Mapping[str, Any]) -> Weighed:
    """Weigh a plan: warnings count first, then yarn, safety, size and notes."""
    enough, of_yarn = _yarn(told.yarn, asked)
    miss = abs(plan.width_cm - plan.request.width_cm) + abs(plan.length_cm - plan.request.length_cm)
    raised = [each for each in told.safety["findings"] if each["severity"] != "note"]
    grave = [each for each in plan.findings if each.severity == "warning"]
    notes = len(plan.findings) - len(grave)
    reasons = [
        {"about": "counts", "said": _counts(plan)},
        {"about": "size", "said": _size(plan, miss)},
        {"about": "yarn", "said": of_yarn},
        {"about": "skills", "said": f"{level.reason}."},
        {"about": "fabric", "said": _fabric(plan)},
        *_avoided(asked),
        {"about": "safety", "said": _safety(told.safety)},
    ]
    return Weighed(tuple(reasons), enough, (len(grave), ORDER.index(enough), len(raised), miss, notes))


def _counts(plan: Plan) -> str:
    body = next(section for section in plan.sections if section.name not in ("bottom", "top"))
    over = body.rows % len(body.cycle)
    rows = f"{body.rows} rows of it are {body.rows // len(body.cycle)} repeats"
    ends = "without rest" if not over else f"and {over} rows of another"
    return f"All parts meet at {plan.counts.cast_on} stitches, {plan.counts.body[0]} of the body; {rows} {ends}."


def _size(plan: Plan, miss: Fraction) -> str:
    near = "near what was asked for" if miss <= NEAR_CM else f"{shown(miss, 1)} cm off what was asked for, both ways"
    return f"{shown(plan.width_cm, 1)} by {shown(plan.length_cm, 1)} cm, {near}."


def _yarn(estimate: YarnEstimate | None, asked: Mapping[str, Any]) -> tuple[Enough, str]:
    """Hold the yarn of a plan against what is at hand; what cannot be reckoned is not known."""
    have = asked.get("have")
    if estimate is None or have is None:
        return "not known", "Whether the yarn does is not known: give the yarn, and how much of it is at hand."
    try:
        (stock,) = stocks_of(have, asked["yarn"])
    except BadInput as fault:
        return "not known", f"Whether the yarn does is not known. {fault} {fault.hint}"
    found = estimate.colours[0].metres if stock.unit == "metres" else estimate.colours[0].grams
    if found is None:
        return (
            "not known",
            f"Whether the yarn does is not known: its {stock.unit} cannot be reckoned from what is told.",
        )
    spare = max(found.likely * (1 + estimate.colours[0].yarn.margin), found.high)
    enough: Enough = "yes" if spare <= stock.amount else "not surely" if found.likely <= stock.amount else "no"
    said = f"{shown(found.low, 0)} to {shown(found.high, 0)} {stock.unit}, likely {shown(found.likely, 0)}"
    verdict = {"yes": "The yarn does", "not surely": "The yarn may not do", "no": "The yarn does not do"}[enough]
    return enough, f"{verdict}: it takes {said}, and {shown(stock.amount, 0)} are at hand."


def _fabric(plan: Plan) -> str:
    said = dict.fromkeys(finding.message for finding in plan.findings if finding.severity == "warning")
    return " ".join(said) or "No rule warns of what its parts do to each other."


def _avoided(asked: Mapping[str, Any]) -> list[Answer]:
    words = asked.get("avoid") or ()
    if not words:
        return []
    said = (
        f"No part of it is noted as having what is to be avoided: {', '.join(words)}. A note is a claim of its author."
    )
    return [{"about": "avoided", "said": said}]


def _safety(safety: Mapping[str, Any]) -> str:
    found = safety["findings"]
    raised = ", ".join(dict.fromkeys(each["rule"] for each in found)) or "none"
    count = len(safety["not_assessed"])
    return f"Safety rules that spoke: {raised}. Not assessed: {count}. {NO_PASS}"
