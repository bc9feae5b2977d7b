"""A refusal, as RFC 9457 has it, with members of our own."""

from __future__ import annotations

from marshmallow import fields

from counterpane_schema.fields import Either, Text, Whole
from counterpane_schema.forms import Open


class Fault(Open):
    """One thing wrong in the request: a pointer into the body (RFC 6901), or the name of a query parameter."""

    pointer = Text(required=True, least=0)
    where = Text(metadata={"description": "body, query, path or header."}, data_key="in")
    message = Text(required=True, lines=True)
    hint = Text(lines=True)
    rule = Text(metadata={"description": "The slug of the rule that refuses, where one does."})


class Correction(Open):
    """A changed value of the request with which it works."""

    pointer = Text(required=True, least=0)
    value = fields.Raw(required=True)
    why = Text(required=True, lines=True)


class ProblemFinding(Open):
    """What a rule found in the content, with its place in a text or in the request."""

    rule = Text(required=True)
    severity = Text(required=True)
    message = Text(required=True, lines=True, most=1_000_000)
    hint = Text(required=True, least=0, lines=True, most=1_000_000)
    line = Whole(allow_none=True)
    column = Whole(allow_none=True)
    pointer = Text(allow_none=True, least=0)
    corrections = fields.List(Either(Text(lines=True, least=0, most=1_000_000), said="Write a text."))


class Problem(Open):
    """Why a request was refused, and what to do next."""

    type = Text(required=True, metadata={"description": "The address of a page that says how to fix it."})
    title = Text(required=True)
    status = Whole(required=True, least=400, most=599)
    detail = Text(required=True, lines=True, most=10_000)
    hint = Text(required=True, lines=True, most=10_000)
    request_id = Text(required=True)
    errors = fields.List(fields.Nested(Fault))
    findings = fields.List(fields.Nested(ProblemFinding))
    corrections = fields.List(fields.Nested(Correction))
