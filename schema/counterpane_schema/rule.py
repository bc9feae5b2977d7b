"""A rule: what it looks for and why, with a bad example and the same made good."""

from __future__ import annotations

from marshmallow import fields

from counterpane_schema.fields import Text
from counterpane_schema.forms import Open


class RuleCard(Open):
    """A rule's line in a list."""

    slug = Text(required=True)
    family = Text(required=True)
    severity = Text(required=True)
    title = Text(required=True)
    href = Text(required=True)
    page = Text(required=True)


class RuleList(Open):
    """All rules."""

    items = fields.List(fields.Nested(RuleCard), required=True)


class RuleAnswer(RuleCard):
    """A rule with all that is known of it."""

    reason = Text(required=True, least=0, lines=True, most=10_000)
    bad = Text(required=True, least=0, lines=True, most=10_000)
    good = Text(required=True, least=0, lines=True, most=10_000)
    source = Text(required=True)
    reference = Text(required=True, allow_none=True)
    basis = Text(required=True, allow_none=True)
    jurisdiction = Text(required=True, allow_none=True)
    scope = Text(required=True, allow_none=True)
    needs = fields.List(Text(), required=True)
    accepting = fields.List(Text(), required=True)
