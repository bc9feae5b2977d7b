"""Whether the program runs and can answer, and the description of the API."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import cache

import orjson

from counterpane import __version__
from counterpane.api import examples
from counterpane.api.describing import document_of
from counterpane.api.operations import Answer, Call, Operation, operation
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


def openapi_of(operations: Callable[[], Sequence[Operation]]) -> Operation:
    """Return the operation that describes all operations, itself among them."""

    @cache
    def described() -> bytes:
        return orjson.dumps(document_of(operations()))

    @operation("GET", "/openapi.json", tag="service", answer={"type": "object"}, examples=examples.ALL)
    def openapi(_: Call) -> Answer:
        """Get the description of this API, OpenAPI 3.1."""
        return Answer(described())

    return openapi
