"""What was put right since an edition, for whoever took a copy of it and comes to ask."""

from __future__ import annotations

from marshmallow import fields

from counterpane_schema.fields import Day, Sha256, Slug, Text, Whole, Word, YesNo, answer_form
from counterpane_schema.forms import Closed, Open


class CorrectionsQuery(Closed):
    """How the corrections of an edition are to be had."""

    terms = Word("us", "uk", metadata={"description": "The terms of the erratum; US if not given."})
    form = answer_form("json", "text", "atom")


class CorrectionMade(Open):
    """Something that was put right, or held back, since an edition."""

    sort = Word("edition", "standing", "report", "answer", required=True)
    safety = YesNo(required=True)
    at = Text(required=True)
    said = Text(required=True, lines=True, most=10_000)
    href = Text(required=True)


class CorrectionsAnswer(Open):
    """What was corrected since an edition, safety first; `erratum` leads from it to the latest."""

    recipe = Slug(required=True)
    edition = Whole(required=True, least=1)
    date = Day(required=True)
    sha256 = Sha256(required=True)
    latest = Whole(required=True, least=1)
    corrected = YesNo(required=True)
    safety = YesNo(required=True)
    about = Text(required=True)
    items = fields.List(fields.Nested(CorrectionMade), required=True)
    erratum = fields.Dict(required=True, allow_none=True)
