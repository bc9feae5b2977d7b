"""A plan as a picture."""

from __future__ import annotations

from counterpane_schema.fields import Text, Word
from counterpane_schema.plan import PlanRequest

VIEWS = ("chart", "schematic")


class DrawingRequest(PlanRequest):
    """A plan request, with the view that is to be drawn of it."""

    view = Word(
        *VIEWS,
        required=True,
        metadata={
            "description": "`chart`: the rows of each section as symbols; `schematic`: parts and measures, to scale."
        },
    )
    terms = Word("us", "uk", metadata={"description": "US terms if not given."})
    title = Text(most=200)
