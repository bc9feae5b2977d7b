"""The history of the library over HTTP."""

from __future__ import annotations

from dataclasses import asdict

import orjson

from counterpane.api import examples
from counterpane.api.operations import Answer, Call, operation
from counterpane_schema.change import Change, ChangeQuery

NDJSON = "application/x-ndjson"
USUAL_LIMIT = 1000


@operation(
    "GET",
    "/v1/changes",
    tag="changes",
    answer=Change,
    media=(NDJSON,),
    query=ChangeQuery,
    role="reader",
    examples=examples.CHANGES,
)
def list_changes(call: Call) -> Answer:
    """List what was written after a number, one JSON object a line; numbers have no gaps.

    Ask again with the last number that was read. Where more lines follow, the header Link says how.
    """
    after, limit = call.query.get("after", 0), call.query.get("limit", USUAL_LIMIT)
    found = call.services.store.changes(after, limit)
    full = len(found) == limit
    headers = (("Link", f'</v1/changes?after={found[-1].seq}&limit={limit}>; rel="next"'),) if full else ()
    return Answer(b"".join(orjson.dumps(asdict(each)) + b"\n" for each in found), media=NDJSON, headers=headers)
