"""The largest blanket that an amount of yarn makes: sizes as rungs, and the highest that the yarn reaches.

Yarn grows with the rung, so the closed form names a rung and a search by halves around it finds the highest: the cost
grows with the logarithm of the size. Each rung looked at is a plan worked out in full, with its own rounding.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Literal

from counterpane.craft.constructions import Plan, PlanRequest
from counterpane.craft.constructions.fitting import options, width_cm
from counterpane.craft.constructions.gauging import body_gauge
from counterpane.craft.constructions.making import attempt
from counterpane.craft.constructions.settling import settle
from counterpane.craft.counts import Progression
from counterpane.craft.stitches import Vocabulary

Keep = Literal["shape", "width"]
Enough = Callable[[Plan], bool]

LARGEST_CM = 2_000
"""Width and length beyond which nothing is looked at; house figure that bounds time."""


@dataclass(frozen=True, slots=True)
class Ladder:
    """Sizes in order: the request of each rung, what of it grows from rung to rung, and the number of rungs."""

    request_of: Callable[[int], PlanRequest]
    size: Callable[[PlanRequest], Fraction]
    rungs: int


def largest(plan: Plan, enough: Enough, near_cm: Fraction, keep: Keep, vocabulary: Vocabulary) -> Plan | None:
    """Return the largest plan of a recipe for which the yarn is enough; None where it is enough for none.

    With "shape" the ratio of length to width is kept, with "width" the cast-on. `near_cm` is a guess of the width or
    length that varies, from which the search begins: it changes how long that takes and not what comes out.
    """
    ladders = _by_length(plan) if keep == "width" else _by_width(plan, vocabulary)
    found = [_highest(each, plan, enough, near_cm, vocabulary) for each in ladders]
    return max((each for each in found if each is not None), key=_area, default=None)


def _area(plan: Plan) -> Fraction:
    return plan.width_cm * plan.length_cm


def _by_length(plan: Plan) -> list[Ladder]:
    """Return rungs of one row of the body each, at the width of the plan."""
    rows = body_gauge(plan.request).gauge.rows_per_cm
    kept = replace(plan.request, width_cm=plan.width_cm)
    return [Ladder(lambda rung: replace(kept, length_cm=(rung + 1) / rows), _length, int(LARGEST_CM * rows))]


def _by_width(plan: Plan, vocabulary: Vocabulary) -> list[Ladder]:
    """Return the admissible cast-on counts as rungs, one ladder for each progression; the shape is that asked for."""
    settled = settle(plan.request, vocabulary)
    shape = plan.request.length_cm / plan.request.width_cm
    widest = LARGEST_CM / max(Fraction(1), shape)
    most = int(widest * body_gauge(plan.request).gauge.per_cm)

    def ladder(counts: Progression) -> Ladder:
        def request_of(rung: int) -> PlanRequest:
            width = width_cm(settled, counts.least + counts.of * rung)
            return replace(plan.request, width_cm=width, length_cm=shape * width)

        return Ladder(request_of, _width, max(0, most - counts.least) // counts.of + 1 if counts.of else 1)

    return [ladder(option.counts) for option in options(settled)]


def _highest(ladder: Ladder, plan: Plan, enough: Enough, near_cm: Fraction, vocabulary: Vocabulary) -> Plan | None:
    """Return the plan of the highest rung that the yarn reaches."""

    def reaches(rung: int) -> bool:
        request = ladder.request_of(rung)
        made = attempt(request, vocabulary).plan
        # A rung without a plan is too small for its borders, or else beyond what a plan can be.
        return ladder.size(request) < ladder.size(plan.request) if made is None else enough(made)

    low, high = _bracket(ladder.rungs, _rung_below(ladder, near_cm), reaches)
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (middle, high) if reaches(middle) else (low, middle)
    return attempt(ladder.request_of(low), vocabulary).plan if low >= 0 else None


def _width(request: PlanRequest) -> Fraction:
    return request.width_cm


def _length(request: PlanRequest) -> Fraction:
    return request.length_cm


def _bracket(rungs: int, near: int, reaches: Callable[[int], bool]) -> tuple[int, int]:
    """Return a rung that the yarn reaches, -1 for none, and a higher one that it does not, by steps that double."""
    low, high, step = (near, rungs, 1) if reaches(near) else (-1, near, 1)
    while low >= near and low + step < high and reaches(low + step):
        low, step = low + step, 2 * step
    while high <= near and high - step > low and not reaches(high - step):
        high, step = high - step, 2 * step
    return (low, min(high, low + step)) if low >= near else (max(low, high - step), high)


def _rung_below(ladder: Ladder, cm: Fraction) -> int:
    """Return the highest rung of at most this size, 0 where there is none."""
    low, high = 0, ladder.rungs
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (middle, high) if ladder.size(ladder.request_of(middle)) <= cm else (low, middle)
    return low
