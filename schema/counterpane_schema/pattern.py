"""A plan in words."""

from __future__ import annotations

from marshmallow import fields

from counterpane_schema.fields import Text, Word, answer_form
from counterpane_schema.forms import Open
from counterpane_schema.plan import PlanRequest


class PatternRequest(PlanRequest):
    """A plan request, with the words the pattern is to be written in."""

    terms = Word("us", "uk", metadata={"description": "US terms if not given."})
    words = Word("short", "full", metadata={"description": "Abbreviated, or in full words; abbreviated if not given."})
    language = Text(
        most=8,
        metadata={
            "description": "The code of a language, such as de; English if not given. What is not translated stands in "
            "English, marked; the English text decides."
        },
    )
    title = Text(most=200)
    units = Word("both", "cm", "in", metadata={"description": "What lengths are said in; both if not given."})
    sheet = Word(
        "knitter",
        "designer",
        metadata={"description": "The pattern to knit from, or the designer's sheet; the pattern if not given."},
    )
    paper = Word("a4", "letter", metadata={"description": "For HTML and PDF; A4 if not given."})
    form = answer_form("json", "text", "markdown", "html", "pdf")


class PatternAnswer(Open):
    """The written pattern or the designer's sheet as data, and the same as a text."""

    pattern = fields.Dict()
    sheet = fields.Dict()
    text = Text(required=True, lines=True, most=10_000_000)
