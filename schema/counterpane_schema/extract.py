"""A pattern of several sizes in one of them."""

from __future__ import annotations

from marshmallow import fields

from counterpane_schema.check import MOST_BYTES
from counterpane_schema.fields import Either, Text, Whole
from counterpane_schema.forms import Closed, Open

LONGEST_SIZE = 60


class ExtractRequest(Closed):
    """A text of several sizes, and the one that is wanted."""

    text = Text(
        required=True,
        least=0,
        most=None,
        lines=True,
        metadata={"description": "The pattern, at most 1,000,000 bytes of UTF-8."},
    )
    size = Either(
        Whole(least=1),
        Text(most=LONGEST_SIZE),
        said="Write the number of the size, its cast-on, or its name.",
        required=True,
        metadata={"description": "The number of the size from 1, else its cast-on, else its name."},
    )


class ExtractLeft(Open):
    """Where a list stands that has more or fewer entries than there are sizes."""

    line = Whole(required=True, least=1)
    column = Whole(required=True, least=1)


class ExtractAnswer(Open):
    """The text with the numbers of one size alone, everything else as it was."""

    text = Text(required=True, lines=True, least=0, most=MOST_BYTES)
    size = Whole(required=True, least=1, metadata={"description": "The number of the size, from 1."})
    names = fields.List(
        Text(least=0, most=LONGEST_SIZE), required=True, metadata={"description": "All sizes; empty if unnamed."}
    )
    left = fields.List(fields.Nested(ExtractLeft), required=True, metadata={"description": "Lists left as printed."})
