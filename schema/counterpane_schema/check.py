"""A text of rows to be checked, and what was found."""

from __future__ import annotations

from marshmallow import fields

from counterpane_schema.component import Multiple
from counterpane_schema.fields import MOST_WHOLE, Text, Whole, Word
from counterpane_schema.forms import Closed, Open

MOST_BYTES = 1_000_000
SEVERITIES = ("error", "warning", "note")


class CheckRequest(Closed):
    """Rows in words, with the cast-on and the terms where the text does not say them."""

    text = Text(
        required=True,
        least=0,
        most=None,
        lines=True,
        metadata={"description": "Rows as a handbook prints them, at most 1,000,000 bytes of UTF-8."},
    )
    cast_on = Whole(least=1, allow_none=True, metadata={"description": "Stitches cast on; beats the text's own."})
    terms = Word("us", "uk", allow_none=True, metadata={"description": "Inferred from the text if not given."})


class CheckFinding(Open):
    """One thing that a rule has to say about a line of the text."""

    rule = Text(required=True)
    severity = Word(*SEVERITIES, required=True)
    line = Whole(required=True, allow_none=True, least=1)
    column = Whole(required=True, allow_none=True, least=1)
    message = Text(required=True, lines=True, most=MOST_BYTES)
    hint = Text(required=True, lines=True, least=0, most=MOST_BYTES)
    corrections = fields.List(Text(lines=True, least=0, most=MOST_BYTES), required=True)


class CheckedRow(Open):
    """A row in working order, with the stitches before and after it."""

    label = Text(required=True, least=0)
    section = Text(required=True, allow_none=True)
    side = Word("RS", "WS", "round", required=True, allow_none=True)
    line = Whole(required=True, least=1)
    before = Whole(required=True, allow_none=True, least=0)
    after = Whole(required=True, allow_none=True, least=0)


class SizeAnswer(Open):
    """The rows and findings of one size of a text that is written for several."""

    cast_on = Whole(required=True, allow_none=True)
    rows = fields.List(fields.Nested(CheckedRow), required=True)
    findings = fields.List(fields.Nested(CheckFinding), required=True)


class CheckAnswer(Open):
    """What follows from the text."""

    cast_on = Whole(required=True, allow_none=True, least=1, most=MOST_WHOLE)
    terms = Word("us", "uk", required=True)
    multiple = fields.Nested(Multiple, required=True, allow_none=True)
    fixed = Whole(required=True, allow_none=True)
    classes = fields.List(fields.Nested(Multiple), required=True, allow_none=True)
    rows = fields.List(fields.Nested(CheckedRow), required=True)
    drift = Whole(required=True, allow_none=True)
    sizes = fields.List(fields.Nested(SizeAnswer), required=True, allow_none=True)
    findings = fields.List(fields.Nested(CheckFinding), required=True)
