"""A fact with its source: a table of numbers, a rule of thumb, a unit."""

from __future__ import annotations

from marshmallow import fields

from counterpane_schema.fields import Text
from counterpane_schema.forms import Open


class FactCard(Open):
    """A fact's line in a list."""

    name = Text(required=True)
    title = Text(required=True)
    href = Text(required=True)


class FactList(Open):
    """All facts."""

    items = fields.List(fields.Nested(FactCard), required=True)


class FactAnswer(FactCard):
    """A fact as its file has it; its other members are its own."""

    source = fields.Raw(required=True)
