"""One recipe in several sizes, and one pattern of them all."""

from __future__ import annotations

from typing import Any

from marshmallow import fields, validate

from counterpane_schema.fields import Text, Whole, Word
from counterpane_schema.forms import Open
from counterpane_schema.plan import Counts, PlanFinding, PlanRequest, Size

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

    sizes = fields.List(fields.Nested(GradeSize), required=True, validate=validate.Length(1, MOST_SIZES))
    sample = Whole(
        least=1, most=MOST_SIZES, metadata={"description": "The size, from 1, that the borders are meant for; 1."}
    )
    borders = Word(
        "same", "in-proportion", metadata={"description": "Whether borders stay as they are, or keep their share."}
    )
    terms = Word("us", "uk", metadata={"description": "US terms if not given."})
    title = Text(most=200)


def each_size(least: int = 0) -> fields.List[Any]:
    """Return the member of a whole number for each size, in the order of `names`."""
    return fields.List(Whole(least=least), required=True)


class GradedEdge(Open):
    """The cast-on or bind-off of all sizes; `line` is null where more than its numbers differs."""

    name = Text(required=True)
    line = Text(required=True, allow_none=True, lines=True)
    stitches = each_size(1)


class GradedRow(Open):
    """A row of all sizes in words, its numbers in brackets; the side and the stitches it leaves in each size."""

    label = Text(required=True)
    text = Text(required=True, lines=True, most=100_000)
    side = fields.List(Word("RS", "WS"), required=True)
    after = each_size()


class GradedRepeat(Open):
    """Work the rows `first` to `last` of the section `times` times more."""

    first = Whole(required=True, least=1)
    last = Whole(required=True, least=1)
    times = Whole(required=True, least=1)


class GradedSection(Open):
    """A part of all sizes: how many rows of it are worked, which they are of the piece, and the rows once."""

    name = Text(required=True)
    texture = Text(required=True)
    worked = each_size(1)
    first_row = each_size(1)
    last_row = each_size(1)
    before = each_size(1)
    after = each_size(1)
    rows = fields.List(fields.Nested(GradedRow), required=True)
    repeats = fields.List(
        fields.List(fields.Nested(GradedRepeat)),
        required=True,
        metadata={"description": "For each size, how its rows are repeated."},
    )


class GradedPattern(Open):
    """The pattern of all sizes as data; a list of numbers has one for each size, in the order of `names`."""

    title = Text(required=True, allow_none=True)
    terms = Word("us", "uk", required=True)
    cast_on = fields.Nested(GradedEdge, required=True)
    sections = fields.List(fields.Nested(GradedSection), required=True)
    bind_off = fields.Nested(GradedEdge, required=True)


class FinishedSize(Open):
    """The finished size of one of the sizes, and the rows it takes."""

    width_cm = fields.Float(required=True)
    length_cm = fields.Float(required=True)
    rows = Whole(required=True, least=1)


class BordersPercent(Open):
    """What share of the stitches across, and of the length, the borders are."""

    across = fields.Float(required=True)
    along = fields.Float(required=True)


class GradedSize(Open):
    """A size of the range, worked out."""

    name = Text(required=True)
    recipe = fields.Dict(required=True)
    counts = fields.Nested(Counts, required=True)
    finished = fields.Nested(FinishedSize, required=True)
    width_to_length = fields.Float(required=True)
    borders_percent = fields.Nested(BordersPercent, required=True)
    stitches_total = Whole(required=True, least=1)
    findings = fields.List(fields.Nested(PlanFinding), required=True)
    text_findings = fields.List(
        fields.Dict(), required=True, metadata={"description": "What a check says of the text in this size."}
    )


class GradeAnswer(Open):
    """Every size, and one pattern of them all with the counts in brackets."""

    names = fields.List(Text(), required=True)
    sizes = fields.List(fields.Nested(GradedSize), required=True)
    pattern = fields.Nested(GradedPattern, required=True)
    text = Text(required=True, lines=True, most=10_000_000)
