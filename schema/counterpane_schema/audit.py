"""The audit log on the wire."""

from __future__ import annotations

from marshmallow import fields

from counterpane_schema.fields import Sha256, Text, Whole
from counterpane_schema.forms import Closed, Open


class AuditQuery(Closed):
    """Which lines to give."""

    after = Whole(least=0, metadata={"description": "The last number that was read; 0 if not given."})
    limit = Whole(least=1, most=1000, metadata={"description": "How many lines at most; 1000 if not given."})


class AuditLine(Open):
    """One line: who did what to what, the hash of the line before, and its own over all the rest but the name."""

    seq = Whole(required=True, least=1)
    at = Text(required=True)
    by = Text(required=True)
    act = Text(required=True)
    subject = Text(required=True)
    detail = fields.Dict(required=True)
    previous = Sha256(required=True)
    sha256 = Sha256(required=True)
    name = Text(required=True, allow_none=True)
