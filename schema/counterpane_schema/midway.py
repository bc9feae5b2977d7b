"""A piece in the middle: a plan request with how far it has come, and what is left of it."""

from __future__ import annotations

from marshmallow import fields

from counterpane_schema.fields import Number, Text, Whole
from counterpane_schema.forms import Closed, Open
from counterpane_schema.plan import PlanRequest


class MeasuredPiece(Closed):
    """What the piece measures flat and unstretched off the needle.

    `width_cm` is across the part on the needle, edges and all; `length_cm` that of `rows` rows of the body, or of all
    that is worked where `rows` is not given.
    """

    width_cm = Number(above=True, most=10_000, allow_none=True)
    length_cm = Number(above=True, most=10_000, allow_none=True)
    rows = Whole(least=1, most=100_000, allow_none=True)


class At(Closed):
    """How far the piece has come.

    `rows_done` counts from the cast-on. `left_g` is the yarn that is left; `used_g` what the piece has taken, weighed
    on scales with steps of `scale_g` (1 g if not given); `reserve_g` what is to stay in hand, the yarn's margin on what
    comes after the body if not given. `colour` names the yarn that is weighed, the first if not given.
    """

    rows_done = Whole(required=True, least=0)
    left_g = Number(allow_none=True, most=10**6)
    used_g = Number(above=True, allow_none=True, most=10**6)
    scale_g = Number(above=True, allow_none=True, most=10**4)
    reserve_g = Number(allow_none=True, most=10**6)
    colour = Text(allow_none=True, most=80)
    measured = fields.Nested(MeasuredPiece, allow_none=True)


class MidwayRequest(PlanRequest):
    """The plan request that the piece was begun by, and how far it has come."""

    at = fields.Nested(At, required=True)


class MidwayAnswer(Open):
    """Where the work stands, what the yarn does for, and the plan at the gauge that came out.

    `yarn` is null where nothing was weighed: `rows_left` has the rows of the body that are "sure" by the high end of
    the figures, "likely" by the likely ones (null: none), and "planned"; `start_next_at_g` is the mass of the yarn at
    which the part after the body begins at the latest. `enough` says "sure", "likely" or "short" of the piece as
    planned, the reserve kept.
    `gauge` and `again`, a whole plan with the cast-on kept, are null where nothing was measured.
    """

    at = fields.Dict(required=True)
    yarn = fields.Dict(required=True, allow_none=True)
    gauge = fields.Dict(required=True, allow_none=True)
    again = fields.Dict(required=True, allow_none=True)
