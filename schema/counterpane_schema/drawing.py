"""A plan as a picture."""

from __future__ import annotations

from counterpane_schema.fields import Text, Word
from counterpane_schema.plan import PlanRequest

VIEWS = ("chart", "fabric", "schematic")


class DrawingRequest(PlanRequest):
    """A plan request, with the view that is to be drawn of it."""

    view = Word(
        *VIEWS,
        required=True,
        metadata={
            "description": "`chart`: the rows of each section as symbols; `fabric`: the stitches as they look; "
            "`schematic`: parts and measures, to scale."
        },
    )
    side = Word("RS", "WS", metadata={"description": "The side of the fabric that is seen; RS if not given."})
    hand = Word(
        "right",
        "left",
        metadata={"description": "`left` mirrors chart and fabric for left-handers who work mirrored."},
    )
    terms = Word("us", "uk", metadata={"description": "US terms if not given."})
    units = Word("both", "cm", "in", metadata={"description": "What lengths are said in; both if not given."})
    title = Text(most=200)
