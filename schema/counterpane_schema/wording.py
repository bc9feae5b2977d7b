"""A text of rows to be said in other words, and how it is then said."""

from __future__ import annotations

from marshmallow import fields

from counterpane_schema.check import CheckFinding
from counterpane_schema.fields import Text, Whole, Word, YesNo
from counterpane_schema.forms import Closed, Open


class WordingRequest(Closed):
    """Rows in words, and how they are to be said."""

    text = Text(
        required=True,
        least=0,
        most=None,
        lines=True,
        metadata={"description": "Rows as a handbook prints them, at most 1,000,000 bytes of UTF-8."},
    )
    terms = Word("us", "uk", allow_none=True, metadata={"description": "Those of the text if not given."})
    words = Word("short", "full", metadata={"description": "Abbreviated if not given."})
    form = Word(
        "lines",
        "table",
        "markdown",
        data_key="as",
        attribute="as",
        metadata={"description": "The text itself if not given; else a table of its rows."},
    )
    count = Whole(
        least=1,
        allow_none=True,
        metadata={"description": "Stitches to begin with; the repeats are then written out in `text` too."},
    )
    stitch_by_stitch = YesNo(metadata={"description": "Write short rows out without groups."})


class SaidRow(Open):
    """A row in working order in words, and as it is worked at its count."""

    label = Text(required=True, least=0)
    section = Text(required=True, allow_none=True)
    side = Word("RS", "WS", "round", required=True, allow_none=True)
    line = Whole(required=True, least=1)
    words = Text(required=True, lines=True, least=0, most=None)
    kept = Text(required=True, allow_none=True, metadata={"description": "Why the words are those that are printed."})
    written_out = Text(required=True, allow_none=True, lines=True, least=0, most=None)
    before = Whole(required=True, allow_none=True, least=0)
    after = Whole(required=True, allow_none=True, least=0)
    repeats = fields.List(Whole(least=0), required=True)


class WordingAnswer(Open):
    """The rows in words, the whole text, and what could not be read or worked."""

    terms = Word("us", "uk", required=True)
    rows = fields.List(fields.Nested(SaidRow), required=True)
    text = Text(required=True, lines=True, least=0, most=None)
    findings = fields.List(fields.Nested(CheckFinding), required=True)
