"""The matrix of bodies against borders, edges, cast-ons and bind-offs."""

from __future__ import annotations

from marshmallow import fields

from counterpane_schema.component import Multiple
from counterpane_schema.fields import Slug, Text, Whole, Word, YesNo
from counterpane_schema.forms import Closed, Open

STATES = ("fits", "some", "change", "no")
PLACES = ("ends", "sides", "selvedge", "cast-on", "bind-off")
OTHERS = ("border", "selvedge", "cast-on", "bind-off")
MOST_BESIDE = 10_000


class MatrixQuery(Closed):
    """Which cells of the matrix to work out."""

    count = Whole(least=1, metadata={"description": "Stitches of the body; every count it takes if not given."})
    beside = Whole(
        least=0,
        most=MOST_BESIDE,
        metadata={"description": "Stitches on each side over which ends run and the body does not; 6 if not given."},
    )
    body = Slug(metadata={"description": "One body; all of them if not given."})
    part = Slug(metadata={"description": "One border, selvedge, cast-on or bind-off; all of them if not given."})
    kind = Word(*OTHERS, metadata={"description": "Only parts of this kind."})


class MatrixPart(Open):
    """A part of the matrix, with the counts it takes in words."""

    slug = Slug(required=True)
    name = Text(required=True)
    said = Text(required=True)
    href = Text(required=True)


class MatrixBody(MatrixPart):
    """A body, which is a row of the matrix."""

    nearest = fields.List(
        Whole(least=1),
        required=True,
        allow_none=True,
        metadata={"description": "The counts nearest the one asked for, where the body does not take that."},
    )


class MatrixOther(MatrixPart):
    """Another part in a place, which is a column of the matrix; a border has two places."""

    kind = Word(*OTHERS, required=True)
    place = Word(*PLACES, required=True)
    stitches = Whole(
        required=True, allow_none=True, least=1, metadata={"description": "Stitches on each side of an edge."}
    )


class MatrixCorrection(Open):
    """What makes two parts meet: another count of the body, or edge stitches more or fewer in the other part."""

    what = Word("counts", "count", "stitches", required=True)
    value = Whole(required=True, allow_none=True)
    said = Text(required=True)


class MatrixRemark(Open):
    """What is to be said though the counts meet, under the slug of its rule."""

    rule = Slug(required=True)
    message = Text(required=True)
    hint = Text(required=True)


class MatrixCell(Open):
    """How one body and one other part meet; the counts are those of the body at which they do."""

    state = Word(*STATES, required=True)
    multiple = fields.Nested(Multiple, required=True, allow_none=True)
    fixed = Whole(required=True, allow_none=True)
    classes = fields.List(fields.Nested(Multiple), required=True, allow_none=True)
    reason = Text(required=True)
    corrections = fields.List(fields.Nested(MatrixCorrection), required=True)
    remarks = fields.List(fields.Nested(MatrixRemark), required=True)


class MatrixMore(Open):
    """Whether there are more bodies or other parts than one matrix holds."""

    bodies = YesNo(required=True)
    others = YesNo(required=True)


class MatrixAnswer(Open):
    """The matrix: a row for each body, a cell for each other part in each of its places."""

    count = Whole(required=True, allow_none=True)
    beside = Whole(required=True, least=0)
    states = fields.Dict(keys=Word(*STATES), values=Text(), required=True)
    bodies = fields.List(fields.Nested(MatrixBody), required=True)
    others = fields.List(fields.Nested(MatrixOther), required=True)
    rows = fields.List(fields.List(fields.Nested(MatrixCell)), required=True)
    more = fields.Nested(MatrixMore, required=True)
