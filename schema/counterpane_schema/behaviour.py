"""What a fabric will do: figures with their basis, by texture, by part and by seam."""

from __future__ import annotations

from marshmallow import fields

from counterpane_schema.fields import Text, Word
from counterpane_schema.forms import Open

BASES = ("published", "borrowed", "common practice", "house", "memory")
LIES = ("curls", "edges may roll", "flat", "draws in", "shortens", "not known")


class Figure(Open):
    """A range with what it rests on; an end that is not known is null."""

    low = fields.Float(required=True, allow_none=True)
    high = fields.Float(required=True, allow_none=True)
    unit = Text(required=True)
    basis = Word(*BASES, required=True)
    source = Text(required=True)


def figure() -> fields.Nested:
    """Return the field of a figure that may not be known."""
    return fields.Nested(Figure, required=True, allow_none=True)


class Curl(Open):
    """Which way edges roll, and the borders that tame them where those lie flat themselves."""

    sides = Word("to the back", "to the front", required=True)
    ends = Word("to the back", "to the front", required=True)
    side_border = fields.Nested(Figure, required=True)
    end_border = fields.Nested(Figure, required=True)


class Behaviour(Open):
    """How a texture behaves by itself; null is not known."""

    lies = Word(*LIES, required=True)
    curl = fields.Nested(Curl, required=True, allow_none=True)
    width = figure()
    rows_to_width = figure()
    stretch = figure()
    message = Text(required=True, most=10_000)


class PartBehaviour(Behaviour):
    """How a part of a plan behaves."""

    part = Text(required=True)
    texture = Text(required=True, allow_none=True)


class PlanBehaviour(Open):
    """What the fabric of a plan will do."""

    parts = fields.List(fields.Nested(PartBehaviour), required=True)
