"""The chain of revisions of whatever is kept."""

from __future__ import annotations

from marshmallow import fields

from counterpane_schema.fields import Sha256, Slug, Text, Whole, Word
from counterpane_schema.forms import Open
from counterpane_schema.kept import STATUSES


class Revision(Open):
    """One revision; it never changes."""

    number = Whole(required=True, least=1)
    sha256 = Sha256(required=True)
    at = Text(required=True)
    status = Word(*STATUSES, required=True)
    by = Text(required=True, least=0)
    parent = Sha256(required=True, allow_none=True)
    href = Text(required=True)
    object = Text(required=True)


class RevisionList(Open):
    """All revisions of one slug, oldest first."""

    slug = Slug(required=True)
    items = fields.List(fields.Nested(Revision), required=True)
