"""What a finished piece is made of, and what stands on its label."""

from __future__ import annotations

from marshmallow import fields, validate

from counterpane_schema.fields import Number, Text, Whole, Word, YesNo
from counterpane_schema.forms import Closed, Open
from counterpane_schema.safety import MARKETS

STATES = ("plain", "carded", "combed", "mercerised", "unbleached", "staple", "filament", "any")
WASHING = (
    *(f"machine {degrees}" for degrees in (95, 70, 60, 50, 40, 30)),
    *(f"machine {degrees} mild" for degrees in (60, 50, 40, 30)),
    *("machine 40 very mild", "machine 30 very mild", "hand 40", "hand 30", "hand ambient", "none"),
)
NATURAL = ("line", "line shade", "line drip", "line drip shade", "flat", "flat shade", "flat drip", "flat drip shade")
IRONING = ("200", "200 no steam", "150", "150 no steam", "110 no steam", "none")


class DeclaredFibre(Closed):
    """One fibre of a yarn, as its ball band or an analysis tells it."""

    fibre = Text(required=True, most=80, metadata={"description": "The word on the ball band."})
    percent = Number(required=True, most=100)
    state = Word(*STATES, allow_none=True, metadata={"description": "Of use with dry masses alone."})


class Care(Closed):
    """Care in the words of the groups of ISO 3758; what is left out is not known."""

    washing = Word(*WASHING, allow_none=True)
    bleaching = Word("any", "oxygen", "none", allow_none=True)
    tumble_drying = Word("normal", "low", "none", allow_none=True)
    natural_drying = Word(*NATURAL, allow_none=True)
    ironing = Word(*IRONING, allow_none=True)
    dry_cleaning = Word("P", "P mild", "F", "F mild", "none", allow_none=True)
    wet_cleaning = Word("normal", "mild", "very mild", "none", allow_none=True)


class LabelYarn(Closed):
    """One yarn of the piece; what is left out is not known."""

    name = Text(most=200, allow_none=True)
    grams = Number(above=True, allow_none=True, metadata={"description": "Grams of it in the finished piece."})
    fibre = fields.List(fields.Nested(DeclaredFibre), allow_none=True, validate=validate.Length(0, 50))
    part = Text(most=80, allow_none=True, metadata={"description": "Where it is, if not everywhere: body, border."})
    left_out = Word("decoration", "antistatic", allow_none=True)
    superwash = YesNo(allow_none=True, metadata={"description": "Whether its wool is treated against felting."})
    care = fields.Nested(Care, allow_none=True, metadata={"description": "As its ball band tells it."})


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
    safety_information = Text(most=2_000, allow_none=True)
    certificate = Text(most=200, allow_none=True)
    infant_class = Text(most=200, allow_none=True)


class LabelRequest(Closed):
    """The yarns of a finished piece, and where it is to be sold."""

    yarns = fields.List(fields.Nested(LabelYarn), required=True, validate=validate.Length(1, 100))
    mass = Word("as-labelled", "dry", metadata={"description": "dry: percentages of an analysis, before allowances."})
    places = Whole(least=0, most=2, metadata={"description": "Decimals of the percentages; whole ones if not given."})
    markets = fields.List(Word(*MARKETS), allow_none=True, validate=validate.Length(0, 20))
    claims = fields.List(Text(most=200), allow_none=True, validate=validate.Length(0, 20))
    stated = fields.Nested(Stated, allow_none=True)
    washed = fields.Nested(Care, allow_none=True, metadata={"description": "How it is going to be washed."})


class LabelAnswer(Open):
    """A composition, what each market wants, what is wrong, and what is not known."""

    composition = fields.Dict(required=True)
    parts = fields.List(fields.Dict(), required=True)
    left_out = fields.List(fields.Dict(), required=True)
    care = fields.List(fields.Dict(), required=True)
    labels = fields.List(fields.Dict(), required=True)
    findings = fields.List(fields.Dict(), required=True)
    not_known = fields.List(fields.Dict(), required=True)
    safety_inputs = fields.Dict(required=True)
    notes = fields.List(Text(), required=True)
