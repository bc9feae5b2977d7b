"""A swatch of each fabric of a plan."""

from __future__ import annotations

from marshmallow import fields

from counterpane_schema.fields import Number, Slug, Text, Whole, Word, YesNo
from counterpane_schema.forms import Open
from counterpane_schema.plan import PlanRequest


class SwatchRequest(PlanRequest):
    """A plan request, with the words the swatches are to be written in."""

    terms = Word("us", "uk", metadata={"description": "US terms if not given."})


class Swatch(Open):
    """What to cast on and to work, and what the swatch is then asked."""

    texture = Slug(data_key="in", attribute="in", required=True, allow_none=True)
    name = Text(required=True)
    places = fields.List(Text(), required=True)
    cast_on = Whole(required=True, least=1)
    repeats = Whole(required=True, least=0)
    rows = Whole(required=True, least=1)
    width_cm = Number(required=True)
    length_cm = Number(required=True)
    narrow = YesNo(required=True)
    gauge_borrowed = YesNo(required=True)
    stitches_total = Whole(required=True, least=1)
    text = Text(required=True, lines=True, most=1_000_000)
    steps = fields.List(Text(most=100_000), required=True)


class NoSwatch(Open):
    """A fabric of which no swatch can be made, why, and what to do instead."""

    texture = Slug(data_key="in", attribute="in", required=True, allow_none=True)
    name = Text(required=True)
    places = fields.List(Text(), required=True)
    steps = fields.List(Text(most=100_000), required=True)


class SwatchAnswer(Open):
    """The swatches of a plan, in order of working."""

    terms = Word("us", "uk", required=True)
    swatches = fields.List(fields.Nested(Swatch), required=True)
    no_swatch = fields.List(fields.Nested(NoSwatch), required=True)
    basis = Text(required=True)
