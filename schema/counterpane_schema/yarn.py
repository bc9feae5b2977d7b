"""A yarn over the wire, in a plan request and by itself; and the figures that an answer gives of it.

A request's `yarn` is null, one yarn, or a list with one for each colour. All members may be left out; what is left out
is not known. `fibre` is a list of {"fibre": name, "percent": share of the mass or null}. The thickness is told once, by
`tex`, `metres_per_100g`, `nm` (metres to a gram), or `ball_g` with `ball_m`; where it is told twice the two must agree.
An answer's figure is {"low", "likely", "high", "basis", "source"}, metres or grams to 0.1 half up, and null where it
cannot be known. `basis` is one of "weighed swatch", "earlier piece", "gauge".
"""

from __future__ import annotations

from marshmallow import fields, validate

from counterpane_schema.fields import Either, Number, Slug, Text, Whole, Word, YesNo
from counterpane_schema.forms import Closed, Open
from counterpane_schema.label import Care
from counterpane_schema.safety import Fibre

PARTS = ("cast_on", "bottom", "body", "top", "bind_off")
MOST_YARNS = 24
MOST_ROWS = 200


class FibreShare(Closed):
    """One fibre of a yarn and its share of the mass in percent, null where that is not known."""

    fibre = Text(required=True, most=200)
    percent = Number(allow_none=True, most=100)


class WeighedSwatch(Closed):
    """A swatch that was weighed dry: its whole mass, and all its stitches and rows.

    `in` is the texture it was knitted in, the body's if not given; `scale_g` the smallest step of the scales, 1 g if
    not given; `edges` says whether its cast-on and bind-off were weighed too, which they are if not given.
    """

    mass_g = Number(required=True, above=True)
    stitches = Whole(required=True, least=1, most=10_000)
    rows = Whole(required=True, least=1, most=10_000)
    texture = Slug(data_key="in", attribute="in", allow_none=True)
    scale_g = Number(above=True, allow_none=True)
    edges = YesNo(allow_none=True)


class WeighedPiece(Closed):
    """An earlier piece in the same yarn and texture, by the same hands: its mass and all its stitches."""

    mass_g = Number(required=True, above=True)
    stitches_total = Whole(required=True, least=1)
    texture = Slug(data_key="in", attribute="in", allow_none=True)
    scale_g = Number(above=True, allow_none=True)


class Yarn(Closed):
    """A yarn, as far as it is known.

    `weight` is its class in words ("double knitting", "worsted", "8-ply"). `ball_g` and `ball_m` are what one ball
    holds. `strands` are held together, 1 if not given; all other members are of one strand. `colour` names it in rows
    ("k2 in MC"); `parts` are those it works, and `rows` which rows of every `every` rows in them, for stripes. What no
    yarn claims is worked in the first. `margin_percent` is bought beyond the likely amount, 10 if not given.
    """

    name = Text(allow_none=True)
    weight = Text(allow_none=True)
    colour = Text(allow_none=True, most=80)
    fibre = fields.List(fields.Nested(FibreShare), allow_none=True, validate=validate.Length(0, 100))
    fibres = fields.List(
        fields.Nested(Fibre),
        allow_none=True,
        validate=validate.Length(0, 100),
        metadata={"description": "The same as `fibre`, by the names of the safety inputs; give one of the two."},
    )
    tex = Number(above=True, allow_none=True, most=100_000)
    metres_per_100g = Number(above=True, allow_none=True, most=10**6)
    nm = Number(above=True, allow_none=True, most=10_000)
    ball_g = Number(above=True, allow_none=True, most=10**6)
    ball_m = Number(above=True, allow_none=True, most=10**6)
    strands = Whole(least=1, most=12, allow_none=True)
    parts = fields.List(Word(*PARTS), allow_none=True, validate=validate.Length(1, len(PARTS)))
    rows = fields.List(Whole(least=1, most=MOST_ROWS), allow_none=True, validate=validate.Length(1, MOST_ROWS))
    every = Whole(least=1, most=MOST_ROWS, allow_none=True)
    margin_percent = Number(most=100, allow_none=True)
    superwash = YesNo(allow_none=True, metadata={"description": "Whether its wool is treated against felting."})
    care = fields.Nested(Care, allow_none=True, metadata={"description": "As its ball band tells it."})
    swatch = fields.Nested(WeighedSwatch, allow_none=True)
    earlier = fields.Nested(WeighedPiece, allow_none=True)


def yarns(**kwargs: bool) -> Either:
    """Return the field of one yarn, or of a list with one for each colour."""
    several = fields.List(fields.Nested(Yarn), validate=validate.Length(1, MOST_YARNS))
    said = "Write one yarn, or a list with one for each colour."
    return Either(fields.Nested(Yarn), several, said=said, **kwargs)


class YarnFigure(Open):
    """A figure with its ends, what it rests on and where that comes from."""

    low = fields.Float(required=True)
    likely = fields.Float(required=True)
    high = fields.Float(required=True)
    basis = Text(required=True)
    source = Text(required=True)


class YarnAnswer(Open):
    """The yarn of a plan by colour, and of all colours together; null where it cannot be known."""

    colours = fields.List(fields.Dict(), required=True)
    metres = fields.Nested(YarnFigure, required=True, allow_none=True)
    grams = fields.Nested(YarnFigure, required=True, allow_none=True)
    ends = Whole(required=True, least=0)
    weaving = fields.List(Text(lines=True, most=10_000), required=True)
    notes = fields.List(Text(lines=True, most=10_000), required=True)


class HaveGrams(Closed):
    """What is at hand of one yarn, in grams."""

    grams = Number(required=True, above=True, most=10**9)


class HaveMetres(Closed):
    """What is at hand of one yarn, in metres."""

    metres = Number(required=True, above=True, most=10**9)


class HaveBalls(Closed):
    """What is at hand of one yarn, in balls; what one holds stands with the yarn."""

    balls = Number(required=True, above=True, most=10**6)


def one_amount(**kwargs: bool) -> Either:
    """Return the field of an amount of one yarn."""
    said = "Give one of grams, metres and balls."
    return Either(fields.Nested(HaveGrams), fields.Nested(HaveMetres), fields.Nested(HaveBalls), said=said, **kwargs)


def have(**kwargs: bool) -> Either:
    """Return the field of what is at hand of one yarn, or of each in their order."""
    one = (fields.Nested(HaveGrams), fields.Nested(HaveMetres), fields.Nested(HaveBalls))
    said = "Give one of grams, metres and balls, or a list with one entry for each yarn."
    return Either(*one, fields.List(one_amount(), validate=validate.Length(1, MOST_YARNS)), said=said, **kwargs)


class SubstitutionRequest(Closed):
    """One yarn and another in its place, each as far as it is known, and an amount of the first to turn over."""

    from_ = fields.Nested(Yarn, required=True, data_key="from", attribute="from")
    to = fields.Nested(Yarn, required=True)
    amount = one_amount(allow_none=True)


class SubstitutionAnswer(Open):
    """How two yarns compare, all strands of each together.

    `tex`, `metres_per_100g` and `thicker_percent` are least and most, null for an end that a class leaves open; they
    are alike where the thickness is one figure. `verdict` is "alike", "not alike" or "not known". `strands` is the
    number of strands of `to` that comes nearest. Nothing here is a gauge: only a swatch tells that.
    """

    from_ = fields.Dict(required=True, data_key="from", attribute="from")
    to = fields.Dict(required=True)
    thicker_percent = fields.List(fields.Float(allow_none=True), required=True)
    verdict = Word("alike", "not alike", "not known", required=True)
    strands = fields.Dict(required=True, allow_none=True)
    amount = fields.Dict(required=True, allow_none=True)
    basis = Text(required=True)
    notes = fields.List(Text(), required=True)
