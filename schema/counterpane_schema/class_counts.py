"""One sheet of counts for a class."""

from __future__ import annotations

from marshmallow import fields, validate

from counterpane_schema.fields import Text
from counterpane_schema.forms import Closed, Open
from counterpane_schema.plan import PlanRequest, gauges

MOST_KNITTERS = 10


class Knitter(Closed):
    """Somebody in the class: a letter or a first name, which is not kept, and the gauge."""

    label = Text(most=40, allow_none=True, metadata={"description": "A to J if not given; it is not kept."})
    gauge = gauges()


class ClassRequest(PlanRequest):
    """A plan request without a gauge, and those of the class."""

    class Meta(PlanRequest.Meta):
        """The gauges of the knitters stand for the gauge."""

        exclude = ("gauge",)

    knitters = fields.List(fields.Nested(Knitter), required=True, validate=validate.Length(1, MOST_KNITTERS))


class ClassAnswer(Open):
    """A row for each knitter, in their order; without a plan the counts are null and findings say why."""

    knitters = fields.List(fields.Dict(), required=True)
