"""How components are searched: what may be asked, what an answer tells beside each card, and facets."""

from __future__ import annotations

from marshmallow import fields

from counterpane_schema.choices import DIFFICULTIES, KINDS, LICENCES, REVERSIBLE
from counterpane_schema.fields import GaugeText, Sha256, Slug, Span, Text, Whole, Word, YesNo
from counterpane_schema.forms import Open
from counterpane_schema.kept import KeptQuery

MOST_BESIDE = 10_000


class ComponentQuery(KeptQuery):
    """Which components to list. What is not known of a component answers no question."""

    kind = Word(*KINDS, metadata={"description": "Only components of this kind."})
    admits = Whole(least=1, metadata={"description": "Only components that admit this many stitches."})
    width_cm = Span(
        metadata={"description": "Only those that admit a count so many cm wide at `gauge`, such as 60..80."}
    )
    gauge = GaugeText(metadata={"description": "For `width_cm`: stitches to 10 cm, such as 21 or 21x28."})
    row_repeat = Span(whole=True, metadata={"description": "Only those that repeat after so many rows, such as 2..8."})
    reversible = Word(*REVERSIBLE, metadata={"description": "Only components of which this is recorded."})
    lies_flat = Word("likely", metadata={"description": "Only fabrics that lie flat by the house model of faces."})
    texture = Sha256(metadata={"description": "Only components of this canonical texture."})
    openings_under_mm = Whole(
        least=1,
        most=1_000,
        metadata={"description": "Only components whose openings were measured, all under this; no estimate answers."},
    )
    yarn_class = Whole(
        least=0, most=7, metadata={"description": "Only those whose author worked them in yarn of this class."}
    )
    difficulty = Word(*DIFFICULTIES, metadata={"description": "Only those of this level, estimated by our own rule."})
    licence = Word(*LICENCES, metadata={"description": "Only those whose words have this licence."})
    source = Text(most=200, metadata={"description": "Only those of this source, by its slug."})
    year = Span(whole=True, metadata={"description": "Only those whose source is of these years, such as 1840..1890."})
    like = Slug(metadata={"description": "Only those with a texture like that of this one, the likest first."})
    like_percent = Whole(
        least=1, most=100, metadata={"description": "For `like`: stitches of a hundred that agree; 60 if not given."}
    )
    goes_with = Slug(
        metadata={"description": "Only those whose counts meet those of this one: bodies for a border, else others."}
    )
    beside = Whole(
        least=0,
        most=MOST_BESIDE,
        metadata={"description": "For `goes_with`: stitches on each side over which ends run; 6 if not given."},
    )
    facets = Word("yes", metadata={"description": "Whether what the list holds is counted beside it."})


class CountAtGauge(Open):
    """A count that is admitted, and its width at the gauge."""

    stitches = Whole(required=True, least=1)
    width_cm = fields.Float(required=True)


class Alikeness(Open):
    """How much of a texture agrees with that of another, in words too."""

    percent = Whole(required=True, least=0, most=100)
    said = Text(required=True)


class Meeting(Open):
    """Where a component meets another, and the smallest count of this one at which it does; null for any."""

    component = Slug(required=True)
    place = Word("ends", "sides", "selvedge", "cast-on", "bind-off", required=True)
    stitches = Whole(required=True, allow_none=True, least=1)


class FacetWord(Open):
    """One word of a facet, and how many components have it."""

    word = Text(required=True)
    count = Whole(required=True, least=1)


class Facet(Open):
    """One question about components: how many answer it by each word, and of how many it is not known."""

    name = Text(required=True)
    words = fields.List(fields.Nested(FacetWord), required=True)
    more_words = Whole(required=True, least=0)
    not_known = Whole(required=True, least=0)


class Facets(Open):
    """What a list holds, counted. A component with several words of a facet counts under each."""

    counted = Whole(required=True, least=0)
    whole = YesNo(required=True, metadata={"description": "False where more was found than is counted."})
    facets = fields.List(fields.Nested(Facet), required=True)
