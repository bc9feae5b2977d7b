"""Whether the program runs and can answer, and the description of the API."""

from __future__ import annotations

from functools import cache

import orjson

from counterpane import __version__
from counterpane.api import examples
from counterpane.api.operations import Answer, Call, operation
from counterpane.api.sending import as_json

_STATE = {"type": "object", "required": ["status"], "properties": {"status": {"type": "string"}}}


@operation("GET", "/healthz", tag="service", answer=_STATE, examples=examples.ALL)
def healthz(call: Call) -> Answer:
    """Say that the process runs."""
    return as_json({"status": "ok", "version": __version__})


@operation("GET", "/readyz", tag="service", answer=_STATE, problems=("busy",), examples=examples.ALL)
def readyz(call: Call) -> Answer:
    """Say that the store can be read and has the form this program wants."""
    return as_json({"status": "ok", "store": call.services.store.version()})


@operation("GET", "/openapi.json", tag="service", answer={"type": "object"}, examples=examples.ALL)
def openapi(call: Call) -> Answer:
    """Get the description of this API, OpenAPI 3.1."""
    return Answer(_document())


@cache
def _document() -> bytes:
    from counterpane.api.document import document  # noqa: PLC0415 - the description describes this operation too

    return orjson.dumps(document())
