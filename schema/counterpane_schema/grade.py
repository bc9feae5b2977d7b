"""One recipe in several sizes."""

from __future__ import annotations

from marshmallow import fields, validate

from counterpane_schema.fields import Text, Whole, Word
from counterpane_schema.forms import Open
from counterpane_schema.plan import PlanRequest, Size

MOST_SIZES = 10


class GradeSize(Size):
    """A size of the range; called by its place where it has no name."""

    name = Text(
        most=30, metadata={"description": "What the size is called in the text; the name of its size if not given."}
    )


class GradeRequest(PlanRequest):
    """A plan request in several sizes, with the words to write in."""

    class Meta(PlanRequest.Meta):
        """The sizes stand for the size."""

        exclude = ("size",)

    sizes = fields.List(fields.Nested(GradeSize), required=True, validate=validate.Length(2, MOST_SIZES))
    sample = Whole(
        least=1, most=MOST_SIZES, metadata={"description": "The size, from 1, that the borders are meant for; 1."}
    )
    borders = Word(
        "same", "in-proportion", metadata={"description": "Whether borders stay as they are, or keep their share."}
    )
    terms = Word("us", "uk", metadata={"description": "US terms if not given."})
    title = Text(most=200)


class GradedSize(Open):
    """A size of the range, worked out."""

    name = Text(required=True)
    recipe = fields.Dict(required=True)
    counts = fields.Dict(required=True)
    finished = fields.Dict(required=True)
    width_to_length = fields.Float(required=True)
    borders_percent = fields.Dict(required=True)
    stitches_total = Whole(required=True, least=1)
    findings = fields.List(fields.Dict(), required=True)
    text_findings = fields.List(fields.Dict(), required=True)


class GradeAnswer(Open):
    """Every size, and one pattern of them all with the counts in brackets."""

    names = fields.List(Text(), required=True)
    sizes = fields.List(fields.Nested(GradedSize), required=True)
    text = Text(required=True, lines=True, most=10_000_000)
