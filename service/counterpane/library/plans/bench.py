"""What planning needs at hand, whether components come from a library or are those that ship with the program."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from counterpane.craft.constructions import Plan, PlanRequest
from counterpane.craft.stitches import Vocabulary
from counterpane.library.plans.known import Known
from counterpane.library.plans.planning import Heard, answer_of, finder, made_of, with_heard
from counterpane.library.plans.plans import Find, make_plan
from counterpane.library.services import Services

Content = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class Bench:
    """What planning needs at hand: how a component is found, what is heard of it, and what comes with the program."""

    find: Find
    known: Known
    heard: Heard = field(default_factory=dict)

    @property
    def vocabulary(self) -> Vocabulary:
        """The stitches."""
        return self.known.vocabulary

    def made(self, request: Content) -> Plan:
        """Return the plan of a request; raises what planning raises."""
        return made_of(request, self.find, self.known, self.heard)

    def answer(self, request: PlanRequest, content: Content) -> dict[str, Any]:
        """Return the whole answer to a changed request, worked out and proved anew."""
        return answer_of(self.plan(request), content, self.known)

    def plan(self, request: PlanRequest) -> Plan:
        """Return the plan of a changed request; raises CannotBePlanned."""
        return with_heard(make_plan(request, self.vocabulary), self.heard)


def bench_of(services: Services, content: Content) -> Bench:
    """Return the bench of a library, with each part of a request at the revision that is pinned, else at the latest."""
    heard: Heard = {}
    return Bench(finder(services, content, heard), services.known, heard)
