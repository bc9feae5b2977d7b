"""A fact with its source: a figure, a table of figures, or a statement."""

from __future__ import annotations

from marshmallow import fields

from counterpane_schema.fields import Text
from counterpane_schema.forms import Open


class FactCard(Open):
    """A fact's line in a list."""

    name = Text(required=True)
    topic = Text(required=True)
    says = Text(required=True, lines=True)
    source = Text(required=True, lines=True)
    href = Text(required=True)


class FactList(Open):
    """All facts."""

    items = fields.List(fields.Nested(FactCard), required=True)


class FactAnswer(FactCard):
    """A fact with all that is known of it; numbers are decimal text."""

    value = fields.Raw(required=True, allow_none=True)
    unit = Text(required=True, allow_none=True)
    jurisdiction = Text(required=True)
    confidence = Text(required=True)
    basis = Text(required=True)
    signed = Text(required=True, allow_none=True)
