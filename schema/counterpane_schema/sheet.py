"""An editor's sheet: the queries of a text, with what was answered and decided."""

from __future__ import annotations

from marshmallow import fields

from counterpane_schema.check import MOST_BYTES, SEVERITIES, CheckRequest
from counterpane_schema.fields import Sha256, Slug, Text, Told, Whole, Word, YesNo
from counterpane_schema.forms import Closed, Open

STATES = ("open", "answered", "to change", "still there", "back", "kept", "settled")
DECISIONS = ("change", "keep", "done")


def words(description: str = "", *, nullable: bool = False) -> Text:
    """Return a field for words in lines, which may be empty."""
    metadata = {"description": description} if description else {}
    return Text(lines=True, least=0, most=MOST_BYTES, allow_none=nullable, metadata=metadata)


class SheetQuery(Closed):
    """One question to the designer: what a person writes, then where it stands, then the words of the rule."""

    number = Whole(least=0, metadata={"description": "Never given to another query; 0 gets the next one."})
    state = Word(*STATES, metadata={"description": "Worked out at each check."})
    question = words("One sentence to the designer. Put it into other words as you like: it stays.")
    answer = words("What the designer says.")
    decision = Word(
        *DECISIONS,
        allow_none=True,
        metadata={"description": "The editor's: change the text; keep it, as it is meant so; or done."},
    )
    note = words("The editor's own words.")
    rule = Slug(allow_none=True, metadata={"description": "Null for a question of the editor's own."})
    severity = Word(*SEVERITIES, allow_none=True)
    section = words(nullable=True)
    row = words("The number or name of the row.", nullable=True)
    line = Whole(least=1, allow_none=True)
    column = Whole(least=1, allow_none=True)
    printed = words("The line as printed where it was seen last.")
    words = words("The words at that place.")
    sizes = fields.List(Whole(least=1), metadata={"description": "The sizes it is about; empty for all."})
    accepted = YesNo(metadata={"description": "Whether a line of the text accepts the finding."})
    finding = Text(lines=True, least=0, most=MOST_BYTES)
    hint = Text(lines=True, least=0, most=MOST_BYTES)
    suggestions = fields.List(Text(lines=True, least=0, most=MOST_BYTES))
    acceptance = Told(metadata={"description": "The line that accepts a kept finding in the text."})


class SheetContent(Closed):
    """A sheet as it is sent; one that was answered may be sent back as it is, or changed."""

    text = words("What the text is called.", nullable=True)
    checked = Sha256(allow_none=True, metadata={"description": "The SHA-256 of the text last checked."})
    cast_on = Whole(least=1, allow_none=True)
    terms = Word("us", "uk", allow_none=True)
    style = words("The house style: its slug.", nullable=True)
    queries = fields.List(fields.Nested(SheetQuery))


class SheetRequest(CheckRequest):
    """A text, and the sheet of an earlier check; the other members beat those of the sheet."""

    sheet = fields.Nested(SheetContent, allow_none=True)
    style = Slug(allow_none=True, metadata={"description": "A house style that the text is held against as well."})


class SheetAnswer(Open):
    """The sheet after the check."""

    text = words(nullable=True)
    checked = Sha256(required=True)
    cast_on = Whole(required=True, allow_none=True, least=1)
    terms = Word("us", "uk", required=True, allow_none=True)
    style = words(nullable=True)
    queries = fields.List(fields.Nested(SheetQuery), required=True)
