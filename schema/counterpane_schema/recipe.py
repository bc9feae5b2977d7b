"""A recipe: a plan request whose parts are pinned to revisions, kept under a slug."""

from __future__ import annotations

from typing import Any

from marshmallow import fields, post_load

from counterpane_schema.component import STATUSES, TOLD
from counterpane_schema.fields import Sha256, Slug, Text, Told, Whole, Word
from counterpane_schema.forms import Closed, Open
from counterpane_schema.plan import PlanRequest


class RecipeContent(PlanRequest):
    """A recipe as a person sends it; parts without a hash are pinned to the latest revision."""

    slug = Slug(required=True)
    name = Text(required=True)
    summary = Text(least=0, lines=True, most=10_000)
    status = Told()
    changed = Told()
    sha256 = Told()
    etag = Told()

    @post_load
    def leave_told(self, data: dict[str, Any], **_: Any) -> dict[str, Any]:
        """Leave aside what only the library tells."""
        return {name: value for name, value in data.items() if name not in TOLD}


class RecipeQuery(Closed):
    """Which recipes to list."""

    q = Text(
        least=0, most=200, metadata={"description": "Only recipes that hold all these words; those in names first."}
    )
    status = Word(*STATUSES, metadata={"description": "Only recipes of this state."})
    limit = Whole(least=1, most=200, metadata={"description": "How many items a page holds; 50 if not given."})
    cursor = Text(
        least=0, most=2_000, metadata={"description": "Where the page begins, from `next` of the page before."}
    )


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


class RecipeAnswer(Open):
    """A recipe as it is kept."""

    slug = Slug(required=True)
    name = Text(required=True)
    construction = Text(required=True)
    parts = fields.Dict(required=True)
    gauge = fields.Raw(required=True)
    size = fields.Dict(required=True)
    status = Word(*STATUSES, required=True)
    changed = Text(required=True)
    sha256 = Sha256(required=True)
    etag = Text(required=True)
