"""A recipe: a plan request whose parts are pinned to revisions, kept under a slug."""

from __future__ import annotations

from marshmallow import fields

from counterpane_schema.fields import Sha256, Slug, Text, Told, Whole, Word
from counterpane_schema.forms import Open
from counterpane_schema.kept import STATUSES, KeptContent
from counterpane_schema.plan import PlanRequest, Sharing


class RecipeContent(KeptContent, PlanRequest):
    """A recipe as a person sends it; parts without a hash are pinned to the latest revision."""

    slug = Slug(required=True)
    name = Text(required=True)
    summary = Text(least=0, lines=True, most=10_000)
    sharing = Told()


class RecipeCard(Open):
    """A recipe's line in a list."""

    slug = Slug(required=True)
    name = Text(required=True)
    summary = Text(required=True, least=0, lines=True, most=10_000)
    construction = Text(required=True)
    parts = fields.List(Slug(), required=True)
    status = Word(*STATUSES, required=True)
    sha256 = Sha256(required=True)
    href = Text(required=True)


class RecipePage(Open):
    """A page of recipes."""

    items = fields.List(fields.Nested(RecipeCard), required=True)
    next = Text(required=True, allow_none=True)
    total = Whole(least=0, metadata={"description": "With `Prefer: count=exact`: how many the whole list holds."})


class RecipeAnswer(Open):
    """A recipe as it is kept."""

    slug = Slug(required=True)
    name = Text(required=True)
    construction = Text(required=True)
    parts = fields.Dict(required=True)
    gauge = fields.Raw(required=True)
    size = fields.Dict(required=True)
    sharing = fields.Nested(Sharing)
    status = Word(*STATUSES, required=True)
    changed = Text(required=True)
    sha256 = Sha256(required=True)
    etag = Text(required=True)
