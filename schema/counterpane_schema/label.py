"""What a finished piece is made of, and what stands on its label."""

from __future__ import annotations

from marshmallow import fields, validate

from counterpane_schema.fields import Number, Text, Whole, Word
from counterpane_schema.forms import Closed, Open
from counterpane_schema.safety import MARKETS

STATES = ("plain", "carded", "combed", "mercerised", "unbleached", "staple", "filament", "any")
FIELDS = ("maker", "address", "contact", "batch", "origin", "made", "responsible_person", "registered_number")


class FibreShare(Closed):
    """One fibre of a yarn, as its ball band or an analysis tells it."""

    fibre = Text(required=True, most=80, metadata={"description": "The word on the ball band."})
    percent = Number(required=True, most=100)
    state = Word(*STATES, allow_none=True, metadata={"description": "Of use with dry masses alone."})


class LabelYarn(Closed):
    """One yarn of the piece; what is left out is not known."""

    name = Text(most=200, allow_none=True)
    grams = Number(above=True, allow_none=True, metadata={"description": "Grams of it in the finished piece."})
    fibres = fields.List(fields.Nested(FibreShare), allow_none=True, validate=validate.Length(0, 50))
    part = Text(most=80, allow_none=True, metadata={"description": "Where it is, if not everywhere: body, border."})
    left_out = Word("decoration", "antistatic", allow_none=True)


class Stated(Closed):
    """What is told for the label beside fibres and care."""

    maker = Text(most=200, allow_none=True)
    address = Text(most=200, allow_none=True)
    contact = Text(most=200, allow_none=True)
    batch = Text(most=200, allow_none=True)
    origin = Text(most=200, allow_none=True)
    made = Text(most=200, allow_none=True, metadata={"description": "Place and date."})
    responsible_person = Text(most=200, allow_none=True)
    registered_number = Text(most=200, allow_none=True, metadata={"description": "An RN or CA number."})


class LabelRequest(Closed):
    """The yarns of a finished piece, and where it is to be sold."""

    yarns = fields.List(fields.Nested(LabelYarn), required=True, validate=validate.Length(1, 100))
    mass = Word("as-labelled", "dry", metadata={"description": "dry: percentages of an analysis, before allowances."})
    places = Whole(least=0, most=2, metadata={"description": "Decimals of the percentages; whole ones if not given."})
    markets = fields.List(Word(*MARKETS), allow_none=True, validate=validate.Length(0, 20))
    claims = fields.List(Text(most=200), allow_none=True, validate=validate.Length(0, 20))
    stated = fields.Nested(Stated, allow_none=True)


class LabelAnswer(Open):
    """A composition, what each market wants, what is wrong, and what is not known."""

    composition = fields.Dict(required=True)
    parts = fields.List(fields.Dict(), required=True)
    labels = fields.List(fields.Dict(), required=True)
    findings = fields.List(fields.Dict(), required=True)
    not_known = fields.List(fields.Dict(), required=True)
    notes = fields.List(Text(), required=True)
