"""The ways of building that there are, by name, and the one way into them."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from counterpane.craft.constructions import Plan, PlanRequest, one_piece, sides_picked_up
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.measures import Gauge
from counterpane.craft.stitches import Vocabulary


@dataclass(frozen=True, slots=True)
class Construction:
    """A way of building: a request worked out, a plan measured by other gauges, and the sampler of a plan."""

    arrange: Callable[[PlanRequest, Vocabulary], Attempt]
    remeasured: Callable[[Plan, tuple[Gauge, ...], Vocabulary], Plan]
    sampler: Callable[[Plan, Vocabulary], Plan]


CONSTRUCTIONS: Mapping[str, Construction] = {
    "one-piece": Construction(one_piece.arrange, one_piece.remeasured, one_piece.sampler),
    "sides-picked-up": Construction(sides_picked_up.arrange, sides_picked_up.remeasured, sides_picked_up.sampler),
}


def attempt(request: PlanRequest, vocabulary: Vocabulary) -> Attempt:
    """Work a request out in its way of building; KeyError for one that there is not."""
    return CONSTRUCTIONS[request.construction].arrange(request, vocabulary)


def remeasured(plan: Plan, gauges: tuple[Gauge, ...], vocabulary: Vocabulary) -> Plan:
    """Return the same stitches and rows measured by other gauges: another size, and no counts near it."""
    return CONSTRUCTIONS[plan.request.construction].remeasured(plan, gauges, vocabulary)


def sampler(plan: Plan, vocabulary: Vocabulary) -> Plan:
    """Return the smallest piece that shows every transition of a plan."""
    return CONSTRUCTIONS[plan.request.construction].sampler(plan, vocabulary)
