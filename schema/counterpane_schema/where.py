"""Which row a piece is on."""

from __future__ import annotations

from marshmallow import fields

from counterpane_schema.fields import Text, Whole, Word
from counterpane_schema.forms import Closed, Open
from counterpane_schema.plan import PlanRequest

LONGEST = 200
"""Characters of an answer; house."""


def _answer(what: str) -> Text:
    return Text(most=LONGEST, allow_none=True, metadata={"description": what})


class Seen(Closed):
    """What was answered, each question by its name; "not-sure" is an answer too."""

    part = _answer("The part that the row below the needle is in, as it was listed.")
    needle = _answer(
        "The side that faces the knitter who is about to work the next row, the stitches right below the needle from "
        "where that row begins, and those one course further down: RS: k2 p2 / p4. Each may be left out."
    )
    repeats = _answer("How many whole repeats stand in the part below the row on the needle: a whole number.")
    length_cm = _answer("Centimetres from the cast-on edge to the needle: 31 or 31.5.")


class WhereRequest(PlanRequest):
    """The plan request that the piece was begun by, and what was answered so far."""

    seen = fields.Nested(Seen, allow_none=True, metadata={"description": "What was answered so far; nothing at first."})
    terms = Word("us", "uk", metadata={"description": "US terms if not given."})


class WhereAnswer(Open):
    """The next question, or the rows that are left.

    `question` is null where one row is left, none is, or those left cannot be told apart by another question: `told`
    says which, and what to do. Its `answers` say how many rows each would `left`; they are null where a number is asked
    for, which lies `between`. `at_worst` is the most rows that an answer leaves. A candidate has the row that was
    `worked` last and the one that comes `next`.
    """

    terms = Word("us", "uk", required=True)
    rows = Whole(required=True)
    left = Whole(required=True)
    between = fields.List(fields.Integer(), required=True, allow_none=True)
    question = fields.Dict(required=True, allow_none=True)
    candidates = fields.List(fields.Dict(), required=True)
    told = fields.List(fields.String(), required=True)
    basis = fields.String(required=True)
