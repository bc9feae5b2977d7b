"""A recipe at another gauge."""

from __future__ import annotations

from marshmallow import fields

from counterpane_schema.forms import Open
from counterpane_schema.plan import PlanRequest, gauges


class RegaugeRequest(PlanRequest):
    """A plan request at its own gauge, and the gauge to take it to."""

    to = gauges()


class RegaugeAnswer(Open):
    """The same size from other counts, the same counts at another size, and the change of shape."""

    before = fields.Dict(required=True)
    same_size = fields.Dict(required=True)
    same_counts = fields.Dict(required=True)
    shape = fields.Dict(required=True)
