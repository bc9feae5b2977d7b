"""Pictures of plans over HTTP."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.operations import Answer, Call, operation
from counterpane.library.patterns.drawings import drawing
from counterpane_schema.drawing import DrawingRequest

SVG = "image/svg+xml"


@operation(
    "POST",
    "/v1/drawings",
    tag="patterns",
    answer=None,
    media=(SVG,),
    body=DrawingRequest,
    problems=("not-usable", "cannot-be-planned", "licence-refuses"),
    examples=examples.DRAWING,
)
def draw(call: Call) -> Answer:
    """Draw a plan.

    Takes a plan request with the view to draw. The answer is one SVG picture at one scale, with a title and a
    description in words; the same request gives the same bytes. Nothing is stored.
    """
    return Answer(drawing(call.services, call.body).encode(), media=SVG)
