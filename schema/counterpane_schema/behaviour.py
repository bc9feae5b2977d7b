"""What a fabric will do: figures with their basis, by texture, by part and by seam."""

from __future__ import annotations

from marshmallow import fields

from counterpane_schema.fields import Text, Whole, Word
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


class ChangingRow(Open):
    """A row of the plan rewritten so that it changes the count, `before` and `after` its own counts."""

    section = Text(required=True)
    row = Whole(required=True, least=1, metadata={"description": "Counted within the section."})
    side = Word("RS", "WS", "round", required=True)
    text = Text(required=True, most=100_000)
    before = Whole(required=True, least=1)
    after = Whole(required=True, least=1)


class TakeUp(Open):
    """By how many stitches an end border should have fewer than the body, below 0 for more."""

    stitches = fields.Nested(Figure, required=True)
    chosen = fields.Integer(required=True, allow_none=True)
    row = fields.Nested(ChangingRow, required=True, allow_none=True)


class PairOfRows(Open):
    """The words of one extra pair of rows, at the start of a row of this side."""

    edge = Word("right", "left", required=True)
    before = Word("RS", "WS", "round", required=True)
    text = Text(required=True, most=100_000)


class ExtraRows(Open):
    """Pairs of turned rows that a side border takes more than the body; `before_rows` are those at the right edge."""

    pairs = fields.Nested(Figure, required=True)
    chosen = Whole(required=True, least=1)
    before_rows = fields.List(Whole(least=1), required=True)
    every = fields.List(Whole(least=1), required=True)
    instructions = fields.List(fields.Nested(PairOfRows), required=True)


class Seam(Open):
    """Where two fabrics meet: by how many centimetres the part is the wider, or the longer, there."""

    part = Text(required=True)
    body = Text(required=True)
    lies = Word("across", "along", required=True)
    excess = figure()
    take_up = fields.Nested(TakeUp, required=True, allow_none=True)
    extra_rows = fields.Nested(ExtraRows, required=True, allow_none=True)
    message = Text(required=True, most=10_000)


class OpeningSize(Open):
    """How large the openings of a section are estimated to be; an estimate is never a pass."""

    section = Text(required=True)
    yarn_overs = Whole(required=True, least=1)
    size = fields.Nested(Figure, required=True)
    message = Text(required=True, most=10_000)


class MassOfPart(Open):
    """The mass per area of a part; null is not known."""

    part = Text(required=True)
    texture = Text(required=True, allow_none=True)
    mass = figure()
    message = Text(required=True, most=10_000)


class PlanBehaviour(Open):
    """What the fabric of a plan will do."""

    parts = fields.List(fields.Nested(PartBehaviour), required=True)
    seams = fields.List(fields.Nested(Seam), required=True)
    openings = fields.List(fields.Nested(OpeningSize), required=True)
    mass = fields.List(
        fields.Nested(MassOfPart),
        required=True,
        allow_none=True,
        metadata={"description": "Null where the yarn is not known, or differs by part."},
    )
