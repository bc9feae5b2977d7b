"""What should be on the needle after a row, and where a count went wrong."""

from __future__ import annotations

from marshmallow import fields

from counterpane_schema.fields import Whole, Word
from counterpane_schema.forms import Closed, Open
from counterpane_schema.plan import Gauge, PlanRequest

MOST = 1_000_000
"""The largest row and count that are asked about; house."""


class AtRow(Closed):
    """The row that was just worked, and what was counted after it."""

    row = Whole(
        required=True, least=1, most=MOST, metadata={"description": "The row that was worked last, from the cast-on."}
    )
    stitches = Whole(least=0, most=MOST, allow_none=True, metadata={"description": "What was counted after it."})
    sure = Whole(
        least=0,
        most=MOST,
        allow_none=True,
        metadata={"description": "The last row after which the count was surely right; the cast-on if not given."},
    )


class OnNeedleRequest(PlanRequest):
    """The plan request that the piece was begun by, and the row that was just worked."""

    at = fields.Nested(AtRow, required=True)
    to = fields.Nested(
        Gauge, allow_none=True, metadata={"description": "The gauge that the piece comes out at, where it is another."}
    )
    terms = Word("us", "uk", metadata={"description": "US terms if not given."})


class OnNeedleAnswer(Open):
    """The row in words with its counts, how far the piece is, and where the count went wrong.

    `count_in` says what is on the needle from the edge where the row ended: stitches `before` the repeats, in `each`,
    how many `times`, and `after` them; null where the row has not one repeat. `wrong` is null where no count is told or
    it is right; its `suspects` stand the likeliest first, each with the rows it may be in, what it looks like, how it
    is put right in place, and the way back: stitches `undone` one by one, those to knit `again`, the row `onto_row`
    whose stitches the needle takes up, and minutes at the pace of the request, else of practised knitters.
    `gauge` is what a regauge answers to the gauge `to`: its `same_counts` are the size if one knits on, its `same_size`
    the counts that keep the size; null where none is told. `looks_wrong` are faults after which the count is right:
    when each shows, what it looks like, and the way back then.
    """

    terms = Word("us", "uk", required=True)
    row = fields.Dict(required=True)
    progress = fields.Dict(required=True)
    count_in = fields.Dict(required=True, allow_none=True)
    gauge = fields.Dict(required=True, allow_none=True)
    looks_wrong = fields.List(fields.Dict(), required=True)
    wrong = fields.Dict(required=True, allow_none=True)
