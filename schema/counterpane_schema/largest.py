"""The largest blanket of a recipe that the yarn at hand makes: a plan request with `have`, and the answer."""

from __future__ import annotations

from marshmallow import fields

from counterpane_schema.fields import Whole, Word, YesNo
from counterpane_schema.forms import Open
from counterpane_schema.plan import PlanRequest
from counterpane_schema.yarn import YarnAnswer, have


class LargestRequest(PlanRequest):
    """A plan request with its yarn, and what is at hand of it; the size gives the shape, or the width that is kept."""

    have = have(required=True)
    keep = Word("shape", "width", metadata={"description": "What stays as asked for; the shape if not given."})


class LargestAnswer(Open):
    """The largest blanket: `size` can be sent on as the size of a plan request."""

    size = fields.Dict(required=True)
    cast_on = Whole(required=True, least=1)
    rows = Whole(required=True, least=1)
    yarn = fields.Nested(YarnAnswer, required=True)
    limited = YesNo(required=True, metadata={"description": "The yarn does for more than any size that is looked at."})
    without_margin = fields.Dict(required=True, allow_none=True)
    plan = fields.Dict(required=True)
