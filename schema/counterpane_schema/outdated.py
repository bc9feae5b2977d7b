"""Where a component is used, and what of a recipe has successors."""

from __future__ import annotations

from marshmallow import fields

from counterpane_schema.fields import Sha256, Slug, Text, Whole, Word, YesNo
from counterpane_schema.forms import Open
from counterpane_schema.kept import STATUSES


class UserAnswer(Open):
    """A recipe that uses a component, and the revision that it pins."""

    recipe = Slug(required=True)
    revision = Sha256(required=True)
    status = Word(*STATUSES, required=True)
    pinned = Sha256(required=True)
    outdated = YesNo(required=True)
    href = Text(required=True)


class UsedInAnswer(Open):
    """How many recipes use a component, and the first 200 of them; `whole` is false where there may be more."""

    component = Slug(required=True)
    latest = Sha256(required=True)
    recipes = Whole(required=True, least=0)
    whole = YesNo(required=True)
    items = fields.List(fields.Nested(UserAnswer), required=True)


class SuccessorStates(Open):
    """Where the two revisions stand."""

    pinned = Word(*STATUSES, required=True, allow_none=True)
    latest = Word(*STATUSES, required=True)


class SuccessorAnswer(Open):
    """A part that has a successor; `behind` are the revisions between, null where it is not of its chain."""

    component = Slug(required=True)
    pinned = Sha256(required=True)
    latest = Sha256(required=True)
    behind = Whole(required=True, allow_none=True)
    status = fields.Nested(SuccessorStates, required=True)


class FigureChange(Open):
    """A figure of the plan that an upgrade changes."""

    pointer = Text(required=True)
    old = fields.Raw(required=True, allow_none=True)
    new = fields.Raw(required=True, allow_none=True)


class OutdatedAnswer(Open):
    """Which parts of a recipe have successors, and what taking them all would change."""

    recipe = Slug(required=True)
    revision = Sha256(required=True)
    parts = fields.List(fields.Nested(SuccessorAnswer), required=True)
    fits = YesNo(required=True)
    changes = fields.List(fields.Nested(FigureChange), required=True)
    findings = fields.List(fields.Dict(), required=True)
