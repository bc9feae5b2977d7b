"""The audit log over HTTP."""

from __future__ import annotations

import orjson

from counterpane.api import examples
from counterpane.api.changes import NDJSON, USUAL_LIMIT
from counterpane.api.operations import Answer, Call, operation
from counterpane.library.keeping.audit import line_json
from counterpane_schema.audit import AuditLine, AuditQuery


@operation(
    "GET",
    "/v1/audit",
    tag="reviewing",
    answer=AuditLine,
    media=(NDJSON,),
    query=AuditQuery,
    role="keeper",
    examples=examples.CHANGES,
)
def list_audit(call: Call) -> Answer:
    """List who did what, one JSON object a line; for keepers.

    `sha256` is that of the canonical JSON (RFC 8785) of the line without `sha256` and `name`; `previous` is that of the
    line before. A name that was erased is null, and the lines hold all the same.
    """
    after, limit = call.query.get("after", 0), call.query.get("limit", USUAL_LIMIT)
    store, names = call.services.store, call.services.store.names()
    found = store.audit(after, limit)
    more = (("Link", f'</v1/audit?after={found[-1].seq}&limit={limit}>; rel="next"'),) if len(found) == limit else ()
    lines = b"".join(orjson.dumps(line_json(each, names)) + b"\n" for each in found)
    return Answer(lines, media=NDJSON, headers=more)
