"""A size by its name: a span with its sources, and the size planned for it."""

from __future__ import annotations

from marshmallow import fields

from counterpane_schema.fields import Number, Slug, Text
from counterpane_schema.forms import Open


class NamedSizeCard(Open):
    """A size's line in a list; a most of null has no bound."""

    name = Slug(required=True)
    also = fields.List(Slug(), required=True)
    says = Text(required=True, lines=True)
    width_cm = Number(required=True, above=True)
    length_cm = Number(required=True, above=True)
    range_cm = fields.Dict(required=True)
    source = Text(required=True, lines=True)
    href = Text(required=True)


class NamedSizeList(Open):
    """All sizes that have a name."""

    items = fields.List(fields.Nested(NamedSizeCard), required=True)


class NamedSizeAnswer(NamedSizeCard):
    """A size with what each source says, and the insides of cots beside it as figures only."""

    figures = fields.List(fields.Dict(), required=True)
    basis = Text(required=True)
    confidence = Text(required=True)
    beside_cots = fields.List(fields.Dict(), required=True)
    about_cots = Text(required=True)
