"""One jotting with what follows from it: a test knit against its plan, a piece beside what safety asked."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from counterpane.library.knitting import knitted, noting, pieces
from counterpane.library.knitting.jottings import Sort
from counterpane.library.services import Services

FOLLOWS: Mapping[Sort, Callable[[Services, noting.Content], noting.Answer]] = {
    "test-knit": knitted.compared,
    "piece": pieces.beside_safety,
}


def shown(services: Services, which: noting.Which) -> noting.Answer:
    """Return a jotting as JSON values, with what follows from it; raise NotFound."""
    told = noting.told_of(services, noting.find(services, which))
    follows = FOLLOWS.get(which.sort)
    return told if follows is None else follows(services, told)
