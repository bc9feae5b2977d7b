"""The ways of building that there are, by name, and the one way into them."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from counterpane.craft.constructions import PlanRequest, one_piece
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.stitches import Vocabulary

CONSTRUCTIONS: Mapping[str, Callable[[PlanRequest, Vocabulary], Attempt]] = {"one-piece": one_piece.arrange}


def attempt(request: PlanRequest, vocabulary: Vocabulary) -> Attempt:
    """Work a request out in its way of building; KeyError for one that there is not."""
    return CONSTRUCTIONS[request.construction](request, vocabulary)
