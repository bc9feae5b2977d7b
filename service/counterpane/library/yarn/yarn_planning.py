"""Plans that begin with yarn: the largest blanket of what is at hand, and a piece in the middle."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from counterpane.craft.constructions import CannotBePlanned, Plan, PlanRequest
from counterpane.craft.findings import Finding
from counterpane.craft.yarn import estimate
from counterpane.craft.yarn.midway import Piece
from counterpane.library.plans.bench import Bench
from counterpane.library.plans.planning import answer_of
from counterpane.library.yarn.yarn_largest import keep_of, largest_json, largest_of
from counterpane.library.yarn.yarn_midway import gauge_json, piece_of, place_json, scale_midway, true_request, yarn_left
from counterpane.library.yarn.yarn_told import with_ends
from counterpane.library.yarn.yarns import yarn_json

Content = Mapping[str, Any]
LARGEST = ("have", "keep")
"""Members of a request for the largest blanket that a plan request does not have."""

MIDWAY = ("at",)
"""Members of a request in the middle of a piece that a plan request does not have."""


def plan_largest(content: Content, bench: Bench) -> dict[str, Any]:
    """Return the largest blanket of the yarn at hand as JSON values, with its whole plan.

    Raises what planning raises, BadInput for yarn that cannot be reckoned, CannotBePlanned where it does for no size.
    """
    request = _without(content, LARGEST)
    plan = bench.made(request)
    found = largest_of(plan, request.get("yarn"), content["have"], keep_of(content.get("keep")), bench.vocabulary)
    told = largest_json(found)
    plan_told = bench.answer(found.plan.request, request | {"size": told["size"]})
    return told | {"yarn": plan_told["yarn"], "plan": plan_told}


def plan_midway(content: Content, bench: Bench) -> dict[str, Any]:
    """Return what is left of a piece in the middle as JSON values: rows by the yarn, and the plan at its true gauge.

    Raises what planning raises, and BadInput for what does not belong to the piece.
    """
    request, at = _without(content, MIDWAY), content["at"]
    plan = bench.made(request)
    piece = piece_of(plan, request.get("yarn"), at, bench.vocabulary)
    true = true_request(piece, at)
    return {
        "at": place_json(piece),
        "yarn": yarn_left(piece, at),
        "gauge": None if true is None else {"planned": gauge_json(plan.request), "true": gauge_json(true)},
        "again": None if true is None else _again(piece, true, content, bench),
    }


def _again(piece: Piece, true: PlanRequest, content: Content, bench: Bench) -> dict[str, Any]:
    """Return the plan at the gauge that came out, its yarn by what the piece has taken where that was weighed."""
    plan = bench.plan(true)
    _refuse_another_count(piece.plan, plan)
    answer = answer_of(plan, content, bench.known)
    weighed = content["at"].get("used_g") is not None and content.get("yarn") is not None
    if not weighed:
        return answer
    scales = {piece.place: scale_midway(piece, content["at"])}
    found = estimate(plan, piece.yarns, bench.vocabulary, scales)
    return answer | {"yarn": yarn_json(with_ends(found, content.get("yarn"), bench.known.facts))}


def _refuse_another_count(begun: Plan, again: Plan) -> None:
    """Refuse a plan that would need another cast-on, which is on the needle already; none is known to."""
    if again.counts.cast_on != begun.counts.cast_on:
        message = "At this gauge the plan would need another cast-on."
        raise CannotBePlanned((Finding("plan-not-proved", "error", message, "Measure again.", pointer="/at/measured"),))


def _without(content: Content, names: tuple[str, ...]) -> dict[str, Any]:
    return {name: value for name, value in content.items() if name not in names}
