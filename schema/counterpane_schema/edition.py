"""Editions of a kept recipe, their errata, and what a corrected component touches."""

from __future__ import annotations

from marshmallow import fields, validate

from counterpane_schema.fields import Day, Sha256, Slug, Text, Whole, Word, YesNo, answer_form
from counterpane_schema.forms import Closed, Open
from counterpane_schema.grade import MOST_SIZES, GradeSize

REASONS = ("correction", "safety")
TERMS = ("us", "uk")
LONGEST = 10_000_000
"""Characters of a text that the library writes; house."""


class EditionContent(Closed):
    """What is published; all of it may be left out."""

    date = Day()
    revision = Sha256()
    reason = Word(*REASONS, metadata={"description": "Why it follows the one before; `correction` if not given."})
    note = Text(
        least=0, lines=True, most=10_000, metadata={"description": "What the designer adds to the erratum, in words."}
    )
    sizes = fields.List(
        fields.Nested(GradeSize),
        validate=validate.Length(2, MOST_SIZES),
        metadata={"description": "The sizes of a graded pattern; the size of the recipe alone if not given."},
    )
    sample = Whole(least=1, most=MOST_SIZES)
    borders = Word("same", "in-proportion")


class EditionQuery(Closed):
    """How the pattern of an edition is to be had."""

    terms = Word(*TERMS, metadata={"description": "US terms if not given."})
    size = Text(
        most=30, metadata={"description": "The size by its name, where it has several; the first if not given."}
    )
    paper = Word("a4", "letter", metadata={"description": "For HTML and PDF; A4 if not given."})
    form = answer_form("json", "text", "markdown", "html", "pdf")


class ErratumQuery(Closed):
    """From which edition an erratum leads."""

    since = Whole(
        least=1, most=10**9 - 1, metadata={"description": "The edition in hand; the one before if not given."}
    )
    terms = Word(*TERMS, metadata={"description": "US terms if not given."})


class TouchedQuery(Closed):
    """Which of what a component touches to show."""

    terms = Word(*TERMS, metadata={"description": "The terms of the drafts; US if not given."})
    limit = Whole(least=1, most=50, metadata={"description": "How many recipes are looked over; 10 if not given."})
    cursor = Text(
        least=0, most=2_000, metadata={"description": "Where the page begins, from `next` of the page before."}
    )


class ErratumChange(Open):
    """One entry: where it stands, both texts, the sizes hit, and what to do for who is past that row."""

    sort = Word("caution", "cast-on", "order", "row", "repeat", "bind-off", "told", required=True)
    safety = YesNo(required=True)
    section = Text(required=True, least=0, lines=True, most=LONGEST)
    row = Text(required=True, least=0, lines=True, most=LONGEST)
    old = Text(required=True, allow_none=True, least=0, lines=True, most=LONGEST)
    new = Text(required=True, allow_none=True, least=0, lines=True, most=LONGEST)
    old_stitches = Whole(required=True, allow_none=True)
    new_stitches = Whole(required=True, allow_none=True)
    sizes = fields.List(Text(), required=True)
    piece = Text(required=True)
    past_row = Whole(required=True, allow_none=True, least=0)
    rip_back_to = Whole(required=True, allow_none=True, least=0)
    may_stay = YesNo(required=True)
    advice = Text(required=True, most=LONGEST)


class ErratumDraft(Open):
    """What differs between two writings of a pattern, safety first; none of it is typed by anybody but the note."""

    terms = Word(*TERMS, required=True)
    safety = YesNo(required=True)
    note = Text(required=True, least=0, lines=True, most=LONGEST)
    first_row = Whole(required=True, allow_none=True, least=1)
    sizes_added = fields.List(Text(least=0), required=True)
    sizes_left_out = fields.List(Text(least=0), required=True)
    changes = fields.List(fields.Nested(ErratumChange), required=True)


class ErratumAnswer(ErratumDraft):
    """The erratum that leads from one edition of a recipe to a later one."""

    recipe = Slug(required=True)
    since = Whole(data_key="from", attribute="from", required=True, least=1)
    to = Whole(required=True, least=2)


class EditionPattern(Open):
    """What is kept of the pattern in one of the terms and one size: the SHA-256 of its data."""

    terms = Word(*TERMS, required=True)
    size = Text(required=True, least=0)
    sha256 = Sha256(required=True)


class EditionCard(Open):
    """An edition's line in a list."""

    recipe = Slug(required=True)
    number = Whole(required=True, least=1)
    date = Day(required=True)
    reason = Word(*REASONS, required=True)
    revision = Sha256(required=True)
    sha256 = Sha256(required=True)
    href = Text(required=True)


class EditionList(Open):
    """All editions of one recipe, the first one first."""

    recipe = Slug(required=True)
    items = fields.List(fields.Nested(EditionCard), required=True)


class EditionAnswer(EditionCard):
    """An edition as it is kept."""

    note = Text(required=True, least=0, lines=True, most=10_000)
    pins = fields.Dict(required=True)
    previous = Sha256(required=True, allow_none=True)
    patterns = fields.List(fields.Nested(EditionPattern), required=True)
    erratum = fields.Dict(required=True, allow_none=True)
    published = Text(required=True)
    etag = Text(required=True)


class EditionWritten(Open):
    """The pattern of an edition as data, the same as a text, and where to ask whether it was corrected."""

    pattern = fields.Dict(required=True)
    text = Text(required=True, lines=True, most=LONGEST)
    asks = Text(required=True)


class TouchedItem(Open):
    """A recipe, or its latest edition, that pins an older revision: the erratum that would follow, or why none can."""

    recipe = Slug(required=True)
    revision = Sha256(required=True)
    edition = Whole(required=True, allow_none=True, least=1)
    pinned = Sha256(required=True)
    safety_notes_changed = YesNo(required=True)
    fits = YesNo(required=True)
    findings = fields.List(fields.Dict(), required=True)
    erratum = fields.Nested(ErratumDraft, required=True, allow_none=True)


class TouchedPage(Open):
    """A page of what a component touches."""

    component = Slug(required=True)
    latest = Sha256(required=True)
    items = fields.List(fields.Nested(TouchedItem), required=True)
    next = Text(required=True, allow_none=True)
