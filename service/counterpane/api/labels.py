"""Labels over HTTP."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.operations import Answer, Call, operation
from counterpane.api.sending import as_json
from counterpane.library.yarn import labels
from counterpane_schema.label import LabelAnswer, LabelRequest


@operation(
    "POST",
    "/v1/labels",
    tag="labels",
    answer=LabelAnswer,
    body=LabelRequest,
    examples=examples.LABEL,
)
def label(call: Call) -> Answer:
    """Work out the label of a finished piece.

    From the fibres and grams of its yarns: the composition by mass with legal names and percentages whose sum is 100,
    the words of each market, what it wants beside, and what is not known with whom to ask. General information and no
    legal advice. Nothing is stored.
    """
    return as_json(labels.label(call.body, call.services.facts))
