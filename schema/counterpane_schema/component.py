"""A component as it is sent, answered and listed."""

from __future__ import annotations

from marshmallow import fields, validate

from counterpane_schema.behaviour import Behaviour
from counterpane_schema.choices import KINDS, LICENCES, REVERSIBLE
from counterpane_schema.fields import Sha256, Slug, Text, Told, Whole, Word, YesNo
from counterpane_schema.forms import Closed, Open
from counterpane_schema.kept import STATUSES, KeptContent
from counterpane_schema.notes import MeasuredOpening, SafetyNotes, StricterNote
from counterpane_schema.search import Alikeness, CountAtGauge, Facets, Meeting
from counterpane_schema.texture import SameTexture, Texture

IN_ROWS = ("body", "border", "selvedge")
ROWS = 100_000
SENTENCES = 10_000
WIDEST = 100_000
"""The largest usual value of a parameter: each value up to it is proved."""


class Version(Closed):
    """One set of rows in words."""

    name = Text(required=True, least=0)
    rows = Text(required=True, lines=True, most=ROWS)


class Operation(Closed):
    """How a cast-on or bind-off is worked, for which no row says it."""

    steps = fields.List(Text(lines=True, most=SENTENCES), required=True, validate=validate.Length(1, 100))
    least = Whole(least=1)
    turn = YesNo(allow_none=True)
    faces_row_1 = Text(allow_none=True)
    side = Word("RS", "WS", allow_none=True)
    stretch = Text(allow_none=True)
    look = Word("chain", "bumps", "rope", "cord", "loops", allow_none=True)
    loops_per_stitch = Text(allow_none=True, most=40, metadata={"pattern": r"^[0-9]+(\.[0-9]+)?$"})


class Parameter(Closed):
    """A whole number that the component takes."""

    name = Word("rows", "stitches", required=True)
    least = Whole(required=True, least=1, most=WIDEST)
    default = Whole(required=True, least=1, most=WIDEST)
    step = Whole(least=1)
    most = Whole(least=1, allow_none=True)


class Example(Closed):
    """A worked example: the stitches cast on, and the count after each row."""

    stitches = Whole(required=True, least=1)
    after = fields.List(Whole(least=0), required=True, validate=validate.Length(0, 2_000))
    version = Whole(least=0)


class Provenance(Closed):
    """Where the component comes from, and the licence of its wording."""

    source = Text(required=True)
    licence = Word(*LICENCES, required=True)
    author = Text(required=True)
    where = Text(allow_none=True)
    year = Whole(allow_none=True, least=1000, most=9999)
    printed = Text(allow_none=True, lines=True, most=SENTENCES)
    notice = Text(allow_none=True)
    address = Text(allow_none=True)
    changes = fields.List(Text(), validate=validate.Length(0, 50))


class SlippedEdge(Closed):
    """How the slipped stitch of a selvedge is slipped, and where the yarn is."""

    manner = Word("kwise", "pwise", required=True)
    yarn = Word("front", "back", required=True)


class ComponentContent(KeptContent):
    """A component as a person sends it; what follows from its rows is derived and never sent."""

    slug = Slug(required=True)
    kind = Word(*KINDS, required=True)
    name = Text(required=True)
    summary = Text(required=True, lines=True, most=SENTENCES)
    provenance = fields.Nested(Provenance, required=True)
    safety = fields.Nested(SafetyNotes, required=True)
    also_called = fields.List(Text(), validate=validate.Length(0, 50))
    versions = fields.List(fields.Nested(Version), validate=validate.Length(0, 20))
    operation = fields.Nested(Operation, allow_none=True)
    parameters = fields.List(fields.Nested(Parameter), validate=validate.Length(0, 2))
    reversible = Word(*REVERSIBLE, allow_none=True)
    across_corner = YesNo(allow_none=True)
    slipped_edge = fields.Nested(SlippedEdge, allow_none=True)
    examples = fields.List(fields.Nested(Example), validate=validate.Length(0, 100))
    gauge_notes = Text(least=0, lines=True, most=SENTENCES)
    measured = fields.List(fields.Nested(MeasuredOpening), validate=validate.Length(0, 100))
    yarn_classes = fields.List(Whole(least=0, most=7), validate=validate.Length(0, 8))
    derived = Told()
    same_texture = Told()
    stricter_notes = Told()


class ComponentInWords(Closed):
    """A texture, border or selvedge as its words, with what does not follow from them."""

    text = Text(
        required=True,
        lines=True,
        most=ROWS,
        metadata={"description": "In place of versions: rows as they are printed, with their stated multiple."},
    )
    kind = Word(*IN_ROWS, allow_none=True)
    name = Text(allow_none=True)
    slug = Slug(allow_none=True)
    summary = Text(lines=True, most=SENTENCES, allow_none=True)
    licence = Word(*LICENCES, allow_none=True)
    author = Text(allow_none=True)
    source = Text(allow_none=True)
    where = Text(allow_none=True)
    year = Whole(allow_none=True, least=1000, most=9999)
    printed = Text(allow_none=True, lines=True, most=SENTENCES)
    also_called = fields.List(Text(), validate=validate.Length(0, 50))
    reversible = Word(*REVERSIBLE, allow_none=True)
    across_corner = YesNo(allow_none=True)
    slipped_edge = fields.Nested(SlippedEdge, allow_none=True)
    gauge_notes = Text(least=0, lines=True, most=SENTENCES)
    terms = Word("us", "uk", allow_none=True)


class CompanionQuery(Closed):
    """Which companions to list."""

    kind = Word(*KINDS, metadata={"description": "Only companions of this kind; every other kind if not given."})
    count = Whole(least=1, metadata={"description": "Stitches of the component; its smallest count if not given."})
    limit = Whole(least=1, most=200, metadata={"description": "How many items a page holds; 50 if not given."})
    cursor = Text(
        least=0, most=2_000, metadata={"description": "Where the page begins, from `next` of the page before."}
    )


class Multiple(Open):
    """Every count from `least` that leaves `plus` when divided by `of`."""

    of = Whole(required=True, least=0)
    plus = Whole(required=True, least=0)
    least = Whole(required=True, least=0)


class DerivedVersion(Open):
    """What follows from one set of rows."""

    name = Text(required=True, least=0)
    row_repeat = Whole(required=True, least=0)
    first_side = Word("RS", "WS", "round", required=True)
    last_side = Word("RS", "WS", "round", required=True)
    drift = Whole(required=True, allow_none=True)
    multiple = fields.Nested(Multiple, required=True, allow_none=True)
    fixed = Whole(required=True, allow_none=True)
    classes = fields.List(fields.Nested(Multiple), required=True, allow_none=True)
    layout = fields.Dict(required=True, allow_none=True)
    texture = fields.Nested(
        Texture,
        required=True,
        allow_none=True,
        metadata={"description": "Null where the rows cannot be laid out as one repeat in both directions."},
    )


class Derived(Open):
    """What follows from the rows: never typed in, always worked out."""

    multiple = fields.Nested(Multiple, required=True, allow_none=True)
    fixed = Whole(required=True, allow_none=True)
    classes = fields.List(fields.Nested(Multiple), required=True, allow_none=True)
    said = Text(required=True)
    versions = fields.List(fields.Nested(DerivedVersion), required=True)
    behaviour = fields.Nested(Behaviour, allow_none=True)


class ComponentCard(Open):
    """A component's line in a list."""

    slug = Slug(required=True)
    kind = Word(*KINDS, required=True)
    name = Text(required=True)
    summary = Text(required=True, lines=True, most=SENTENCES)
    reversible = Word(*REVERSIBLE, required=True, allow_none=True)
    multiple = fields.Nested(Multiple, required=True, allow_none=True)
    fixed = Whole(required=True, allow_none=True)
    classes = fields.List(fields.Nested(Multiple), required=True, allow_none=True)
    status = Word(*STATUSES, required=True)
    sha256 = Sha256(required=True)
    href = Text(required=True)
    widths = fields.List(
        fields.Nested(CountAtGauge),
        metadata={"description": "With `width_cm`: counts of it within the width, those nearest the middle."},
    )
    alike = fields.Nested(Alikeness, metadata={"description": "With `like`: how much of the texture agrees."})
    goes_with = fields.Nested(Meeting, metadata={"description": "With `goes_with`: where and at which count."})


class ComponentPage(Open):
    """A page of components."""

    items = fields.List(fields.Nested(ComponentCard), required=True)
    next = Text(required=True, allow_none=True)
    total = Whole(least=0, metadata={"description": "With `Prefer: count=exact`: how many the whole list holds."})
    left_out = Text(metadata={"description": "With `openings_under_mm`: what is not in the list, and why."})
    facets = fields.Nested(Facets, metadata={"description": "With `facets`: what the whole list holds, counted."})


class Place(Open):
    """Where a companion fits, and how many stitches are then cast on in all."""

    place = Word("cast-on", "ends", "sides", "selvedge", "band", "bind-off", required=True)
    stitches = Whole(required=True, least=1, metadata={"description": "Stitches of the companion, per side at sides."})
    cast_on = Whole(required=True, least=1)


class Companion(ComponentCard):
    """A component that fits another at a count."""

    places = fields.List(fields.Nested(Place), required=True)


class CompanionPage(Open):
    """A page of companions."""

    component = Slug(required=True)
    count = Whole(required=True, least=1)
    items = fields.List(fields.Nested(Companion), required=True)
    next = Text(required=True, allow_none=True)


class ComponentAnswer(Open):
    """A component as it is kept, with what follows from its rows."""

    slug = Slug(required=True)
    kind = Word(*KINDS, required=True)
    name = Text(required=True)
    summary = Text(required=True, lines=True, most=SENTENCES)
    provenance = fields.Nested(Provenance, required=True)
    safety = fields.Nested(SafetyNotes, required=True)
    derived = fields.Nested(Derived, required=True)
    same_texture = fields.List(
        fields.Nested(SameTexture),
        required=True,
        metadata={
            "description": "Components of the same texture that were kept before this revision; a note, no fault."
        },
    )
    stricter_notes = fields.List(
        fields.Nested(StricterNote),
        metadata={"description": "What a peer says of the same name that is stricter; it counts here too."},
    )
    status = Word(*STATUSES, required=True)
    changed = Text(required=True)
    sha256 = Sha256(required=True)
    etag = Text(required=True)
