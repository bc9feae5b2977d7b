"""What comes of a request: a plan, or the obstacles that stand against one. The rules judge it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeVar

from counterpane.craft.constructions import Plan, PlanRequest
from counterpane.craft.constructions.obstacles import Obstacle
from counterpane.craft.stitches import Vocabulary

Met = TypeVar("Met")


@dataclass(frozen=True, slots=True)
class Attempt:
    """A request with the plan made of it; without a plan there is at least one obstacle."""

    request: PlanRequest
    vocabulary: Vocabulary
    plan: Plan | None
    obstacles: tuple[Obstacle, ...] = ()

    def met(self, sort: type[Met]) -> tuple[Met, ...]:
        """Return the obstacles of one sort."""
        return tuple(obstacle for obstacle in self.obstacles if isinstance(obstacle, sort))
