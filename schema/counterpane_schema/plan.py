"""A recipe at a gauge and a size, and the plan that is worked out from it."""

from __future__ import annotations

from marshmallow import fields, validate

from counterpane_schema.behaviour import PlanBehaviour
from counterpane_schema.choices import LICENCES
from counterpane_schema.fields import Either, Number, Sha256, Slug, Text, Whole, Word, YesNo
from counterpane_schema.forms import Closed, Open
from counterpane_schema.label import LabelAnswer
from counterpane_schema.safety import SafetyInputs
from counterpane_schema.yarn import YarnAnswer, yarns

ROWS = 100_000
"""The licences under which words are kept, by their SPDX identifiers, the freest first."""
MOST_COUNTED = 1_000_000
"""House: the most stitches or rows of one swatch, and centimetres or inches of it."""


class NamedPart(Closed):
    """A stored component with its parameters."""

    component = Slug(required=True)
    revision = Sha256(metadata={"description": "The hash of the revision meant; the latest if not given."})
    rows = Whole(least=1, allow_none=True)
    stitches = Whole(least=1, allow_none=True)
    left = Text(lines=True, most=ROWS, allow_none=True)


class WrittenPart(Closed):
    """A part given in words."""

    text = Text(required=True, lines=True, most=ROWS)
    rows = Whole(least=1, allow_none=True)
    stitches = Whole(least=1, allow_none=True)
    left = Text(lines=True, most=ROWS, allow_none=True)


def part(**kwargs: bool) -> Either:
    """Return the field of a part that may be stored or given in words."""
    said = 'Write the slug of a component, {"component": "…"} or {"text": "…"}.'
    return Either(Slug(), fields.Nested(NamedPart), fields.Nested(WrittenPart), said=said, **kwargs)


def stored(**kwargs: bool) -> Either:
    """Return the field of a part that is a stored component."""
    said = 'Write the slug of a component, or {"component": "…"}.'
    return Either(Slug(), fields.Nested(NamedPart), said=said, **kwargs)


def body() -> Either:
    """Return the field of the body: one part, or bands from the bottom up."""
    said = "Write one part, or a list of parts from the bottom up."
    bands = fields.List(part(), validate=validate.Length(1, 200))
    return Either(Slug(), fields.Nested(NamedPart), fields.Nested(WrittenPart), bands, said=said, required=True)


class Parts(Closed):
    """The parts of a one-piece blanket; those left out are the usual ones, which the answer names."""

    cast_on = stored(allow_none=True)
    bottom = part(allow_none=True)
    sides = part(allow_none=True)
    selvedge = part(allow_none=True)
    body = body()
    top = part(allow_none=True)
    bind_off = stored(allow_none=True)


def counted(what: str) -> str:
    """Say what to write for a count of a swatch."""
    return f"Write the {what} that were counted on the swatch: above 0, and not more than {MOST_COUNTED:,}."


class Counted(Closed):
    """Stitches and rows counted over a length, in centimetres or inches."""

    stitches = Number(required=True, above=True, most=MOST_COUNTED, said=counted("stitches"))
    rows = Number(required=True, above=True, most=MOST_COUNTED, said=counted("rows"))
    over_cm = Number(above=True, most=MOST_COUNTED)
    over_in = Number(above=True, most=MOST_COUNTED)

    either_or = (("over_cm", "over_in"),)


class Gauge(Counted):
    """A swatch as it was counted, after the wash that the piece will have."""

    texture = Slug(
        data_key="in", attribute="in", allow_none=True, metadata={"description": "The texture it was knitted in."}
    )
    count_error = Number(most=100, metadata={"description": "Stitches or rows a count may be off by; 0.25 if unsaid."})
    window_error_cm = Number(most=100, metadata={"description": "What the length may be off by; 0.1 if unsaid."})
    swatches = Whole(
        least=1, most=100, metadata={"description": "How many swatches the counts and the length are sums of; 1."}
    )
    washed = YesNo(allow_none=True, metadata={"description": "Whether it was counted after a wash."})
    needle_mm = Number(
        above=True, most=50, allow_none=True, metadata={"description": "The needle it was knitted on, in millimetres."}
    )
    before = fields.Nested(
        Counted, allow_none=True, metadata={"description": "What the same swatch counted before its wash."}
    )


def gauges() -> Either:
    """Return the field of one gauge, or of one for each texture."""
    several = fields.List(fields.Nested(Gauge), validate=validate.Length(1, 200))
    said = "Write one gauge, or a list with one for each texture."
    return Either(fields.Nested(Gauge), several, said=said, required=True)


class Size(Closed):
    """The wanted size, in centimetres or inches, or by its name; a side given beside a name beats it."""

    named = Slug(metadata={"description": "A size by its name, as GET /v1/sizes lists them."})
    width_cm = Number(above=True)
    width_in = Number(above=True)
    length_cm = Number(above=True)
    length_in = Number(above=True)

    either_or = (("width_cm", "width_in"), ("length_cm", "length_in"))
    unless = "named"


class Pace(Closed):
    """How quickly somebody knits plain."""

    stitches_a_minute = Number(required=True, above=True, most=120)


class PlanRequest(Closed):
    """A recipe at a gauge and a size."""

    construction = Word("one-piece", "sides-picked-up")
    parts = fields.Nested(Parts, required=True)
    gauge = gauges()
    size = fields.Nested(Size, required=True)
    corner = Word("ends", "sides", metadata={"description": "Whether end borders run full width or sides run through."})
    yarn = yarns(allow_none=True)
    pace = fields.Nested(Pace, allow_none=True)
    for_ = fields.Nested(SafetyInputs, data_key="for", attribute="for", allow_none=True)
    designer = Text(most=200, allow_none=True, metadata={"description": "Who designed it, as the pattern prints it."})
    licence = Word(
        *LICENCES,
        allow_none=True,
        metadata={"description": "The licence under which it is to be shared; whichever its parts allow if not given."},
    )


class Counts(Open):
    """Stitches of the whole and of its parts; bands give lists."""

    cast_on = Whole(required=True, least=1)
    sides = Whole(required=True, least=0)
    selvedge = Whole(required=True, least=0)
    body = fields.Raw(required=True)
    repeats = fields.Raw(required=True)


class Credit(Open):
    """What must be said of a part by whoever shares the pattern."""

    component = Slug(required=True)
    title = Text(required=True)
    creator = Text(required=True)
    notice = Text(required=True, allow_none=True)
    source = Text(required=True)
    address = Text(required=True, allow_none=True)
    licence = Text(required=True)
    licence_address = Text(required=True, allow_none=True)
    changes = fields.List(Text(), required=True)
    text = Text(required=True, most=10_000)


class Sharing(Open):
    """Under which licence a pattern may be shared, and what its parts ask for."""

    licence = Text(required=True, allow_none=True)
    may = fields.List(Text(), required=True)
    because = fields.List(Slug(), required=True)
    statement = Text(required=True, most=10_000)
    credits = fields.List(fields.Nested(Credit), required=True)
    findings = fields.List(fields.Dict(), required=True)


class PlanFinding(Open):
    """What a rule says of a plan, with a pointer into the request."""

    rule = Text(required=True)
    severity = Word("error", "warning", "note", required=True)
    pointer = Text(allow_none=True, least=0)
    message = Text(required=True, lines=True, most=10_000)
    hint = Text(required=True, least=0, lines=True, most=10_000)


class PlanAnswer(Open):
    """A recipe worked out."""

    recipe = fields.Dict(required=True)
    counts = fields.Nested(Counts, required=True)
    finished = fields.Dict(required=True)
    size = fields.Dict(required=True)
    beside_cots = fields.List(fields.Dict(), required=True)
    swatches = fields.List(fields.Dict(), required=True)
    no_swatch = fields.List(
        fields.Dict(),
        required=True,
        metadata={"description": "Fabrics of which no swatch can be made, why, and what to do instead."},
    )
    sections = fields.List(fields.Dict(), required=True)
    picked = fields.List(
        fields.Dict(),
        required=True,
        metadata={"description": "What is picked up along each edge; empty if nothing is."},
    )
    nearest = fields.List(fields.Dict(), required=True)
    stitches_total = Whole(required=True, least=1)
    yarn = fields.Nested(YarnAnswer, required=True, allow_none=True)
    needles = fields.Dict(required=True)
    behaviour = fields.Nested(PlanBehaviour, required=True)
    label = fields.Nested(LabelAnswer, required=True, allow_none=True)
    findings = fields.List(fields.Nested(PlanFinding), required=True)
    safety = fields.Dict(required=True)
    sharing = fields.Nested(Sharing, required=True)
