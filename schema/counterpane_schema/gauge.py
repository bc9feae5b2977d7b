"""Swatches as they were counted, and what they say."""

from __future__ import annotations

from marshmallow import fields, validate

from counterpane_schema.fields import Number, Slug, Text
from counterpane_schema.forms import Closed, Open
from counterpane_schema.plan import Gauge, PlanFinding, Size


class GaugeRequest(Closed):
    """Swatches of one or several textures; those of one texture are taken together."""

    swatches = fields.List(fields.Nested(Gauge), required=True, validate=validate.Length(1, 200))
    size = fields.Nested(
        Size, allow_none=True, metadata={"description": "A size of which the answer says what reading leaves open."}
    )
    within_cm = Number(above=True, metadata={"description": "The tolerance that a window is named for; 1 if unsaid."})


class TextureGauge(Open):
    """What the swatches of a texture give together."""

    texture = Slug(data_key="in", attribute="in", allow_none=True)
    gauge = fields.Dict(required=True)
    per_10_cm = fields.Dict(required=True)
    per_4_in = fields.Dict(required=True)
    rows_to_a_stitch = Number(required=True)
    off_percent = fields.Dict(required=True)
    wash = fields.Dict(required=True, allow_none=True)
    apart = fields.Dict(required=True, allow_none=True)
    size = fields.Dict(required=True, allow_none=True)


class GaugeAnswer(Open):
    """What swatches say, and what they leave open."""

    gauges = fields.List(fields.Nested(TextureGauge), required=True)
    basis = Text(required=True)
    findings = fields.List(fields.Nested(PlanFinding), required=True)
