"""The endless texture of rows that repeat, as it is derived; and which textures are alike."""

from __future__ import annotations

from marshmallow import fields

from counterpane_schema.fields import Sha256, Slug, Text, Whole, Word, YesNo
from counterpane_schema.forms import Closed, Open

REVERSIBLE = ("yes", "both-good", "no")
MOVES = (
    "turned over a side edge",
    "turned over the top edge",
    "upside down",
    "mirrored left to right",
    "mirrored top to bottom",
    "turned over and mirrored",
    "turned over, mirrored and upside down",
)


class SmallestCell(Open):
    """The smallest cell, which may be skew: the texture comes again `rows` up and `shift` to the left."""

    rows = Whole(required=True, least=1)
    shift = Whole(required=True, least=0)
    stitches = Whole(required=True, least=1)


class Ridges(Open):
    """Ridges of one repeat on the right and on the wrong side."""

    right = Whole(required=True, least=0)
    wrong = Whole(required=True, least=0)


class Openings(Open):
    """Openings of one repeat with so many yarn-overs side by side."""

    yarn_overs = Whole(required=True, least=1)
    count = Whole(required=True, least=1)


class Texture(Open):
    """One repeat in both directions as the right side shows it, edges left out."""

    rows = Whole(required=True, least=1, metadata={"description": "Rows of the smallest upright cell."})
    stitches = Whole(required=True, least=1, metadata={"description": "Stitches of the smallest upright cell."})
    smallest = fields.Nested(SmallestCell, required=True)
    cell = fields.List(
        fields.List(Text()),
        required=True,
        allow_none=True,
        metadata={"description": "Rows from the bottom up, each from its right edge on; null where it is large."},
    )
    symmetries = fields.List(
        Word(*MOVES), required=True, metadata={"description": "What leaves the texture the same, up to a shift."}
    )
    reversible = Word(
        *REVERSIBLE,
        required=True,
        allow_none=True,
        metadata={"description": "As the stitches show it: both-good is the mirror image; null is not known."},
    )
    canonical = Sha256(
        required=True,
        metadata={"description": "The same for textures that differ by shifts, mirrors and turns alone."},
    )
    shows = fields.Dict(
        keys=Word("knit", "purl", "open", "slipped", "crossed", "not known"),
        values=Whole(least=1),
        required=True,
        metadata={"description": "Stitches of each look."},
    )
    ridges = fields.Nested(Ridges, required=True)
    openings = fields.List(fields.Nested(Openings), required=True)
    strand = Whole(
        required=True,
        allow_none=True,
        least=0,
        metadata={"description": "Stitches that the yarn passes at most, slipped side by side; null without an end."},
    )
    rows_slipped = Whole(
        required=True,
        allow_none=True,
        least=0,
        metadata={"description": "Rows over which one loop is slipped at most; null without an end."},
    )
    twisted = Whole(required=True, least=0)
    crossed = Whole(required=True, least=0)


class SameTexture(Open):
    """A component whose texture is the same up to shifts, mirrors and turns."""

    slug = Slug(required=True)
    href = Text(required=True)


class AlikeQuery(Closed):
    """How alike textures must be to be listed."""

    percent = Whole(
        least=1, most=100, metadata={"description": "Of a hundred stitches so many agree at least; 90 if not given."}
    )
    limit = Whole(least=1, most=200, metadata={"description": "How many items are listed at most; 50 if not given."})


class Alike(Open):
    """A component whose texture is alike, laid over this one as well as it can be."""

    slug = Slug(required=True)
    kind = Word("border", "body", required=True)
    name = Text(required=True)
    version = Whole(required=True, least=0, metadata={"description": "Which of its versions, from 0."})
    same = YesNo(required=True, metadata={"description": "Whether it is the same stitches up to shifts and moves."})
    percent = Whole(
        required=True, least=0, most=100, metadata={"description": "Of a hundred stitches so many agree, cut off."}
    )
    matching = Whole(required=True, least=0)
    of = Whole(required=True, least=1, metadata={"description": "Stitches of the common cell."})
    how = Word("as it is", *MOVES, required=True)
    said = Text(required=True)
    href = Text(required=True)


class AlikeList(Open):
    """The components with textures like that of another, the likest first."""

    component = Slug(required=True)
    items = fields.List(fields.Nested(Alike), required=True)
    compared = Whole(required=True, least=0, metadata={"description": "Textures that it was held against."})
    not_compared = Whole(
        required=True, least=0, metadata={"description": "Textures left out, since a common repeat is too large."}
    )
