"""A refusal, as RFC 9457 has it, with members of our own."""

from __future__ import annotations

from marshmallow import fields

from counterpane_schema.fields import Whole
from counterpane_schema.forms import Open


class Fault(Open):
    """One thing wrong in the request: a pointer into the body (RFC 6901), or the name of a query parameter."""

    pointer = fields.String(required=True)
    where = fields.String(metadata={"description": "body, query, path or header."}, data_key="in")
    message = fields.String(required=True)
    hint = fields.String()
    rule = fields.String(metadata={"description": "The slug of the rule that refuses, where one does."})


class Correction(Open):
    """A changed value of the request with which it works."""

    pointer = fields.String(required=True)
    value = fields.Raw(required=True)
    why = fields.String(required=True)


class ProblemFinding(Open):
    """What a rule found in the content, with its place in a text or in the request."""

    rule = fields.String(required=True)
    severity = fields.String(required=True)
    message = fields.String(required=True)
    hint = fields.String(required=True)
    line = Whole(allow_none=True)
    column = Whole(allow_none=True)
    pointer = fields.String(allow_none=True)
    corrections = fields.List(fields.Raw(metadata={"description": "A whole text, or a change of the request."}))


class Problem(Open):
    """Why a request was refused, and what to do next."""

    type = fields.String(required=True, metadata={"description": "The address of a page that says how to fix it."})
    title = fields.String(required=True)
    status = Whole(required=True, least=400, most=599)
    detail = fields.String(required=True)
    hint = fields.String(required=True)
    request_id = fields.String(required=True)
    errors = fields.List(fields.Nested(Fault))
    findings = fields.List(fields.Nested(ProblemFinding))
    corrections = fields.List(fields.Nested(Correction))
    derived = fields.Dict(metadata={"description": "What follows from the rows that were sent."})
