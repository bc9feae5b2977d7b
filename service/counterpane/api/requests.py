"""From an HTTP request to a `Call`: who asks, what form is wanted, whether the tag matches, what was sent.

Refusals come in this order: 401, 403, 406, 404, 428, 412, then the body: 415, 413, 400, 422.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from flask import Request
from marshmallow import Schema, ValidationError, fields
from werkzeug.datastructures import MultiDict

from counterpane.api import tags
from counterpane.api.callers import holder_in
from counterpane.api.operations import JSON, USUAL_BYTES, Call, Operation
from counterpane.api.parsing import BrokenJson, parse
from counterpane.api.problems import Problem
from counterpane.library.errors import Gone, NotFound, Stale
from counterpane.library.keeping.once import once_of
from counterpane.library.ports import Holder, Once
from counterpane.library.review import tokens
from counterpane.library.services import Services
from counterpane_schema.faults import Fault, faults_of
from counterpane_schema.forms import Closed

_KEY = re.compile(r"[!-~]{1,255}")
_WHOLE = re.compile(r"-?[0-9]{1,40}(\.0{1,40})?")
_ANYTHING = ("", "*/*", JSON)
MOST_FAULTS = 100
"""Faults that one problem lists."""


def call_of(operation: Operation, services: Services, request: Request, path: Mapping[str, str]) -> Call:
    """Return the request as the operation's view sees it; raise Problem or a domain error where it is refused."""
    holder = _holder(operation, services, request)
    call = Call(services, path, _media(operation, request), holder)
    call.count = operation.counts and _counting(request)
    if operation.creates and _only_new(request):
        call.makes = True
        _refuse_there(operation, call)
    elif operation.current:
        call.expected = _expected(operation.current(call), request)
    if operation.query:
        call.query = load(operation.query(), _query(operation.query, request.args), "query")
    elif request.environ.get("QUERY_STRING") and request.args:
        call.query = load(Closed(), dict(request.args), "query")
    if operation.body:
        sent, data = _json(operation, request)
        call.once = _once(operation, call, request, data)
        call.body = load(_form(operation.body, operation.or_body, sent)(), sent, "body")
    return call


def _holder(operation: Operation, services: Services, request: Request) -> Holder | None:
    role = operation.role
    if role is None or (role == "reader" and services.open_reading and not operation.signed):
        return None
    holder = holder_in(services, request.environ)
    tokens.require(holder, role)
    return holder


def _media(operation: Operation, request: Request) -> str:
    wanted = request.environ.get("HTTP_ACCEPT", "")
    if wanted in _ANYTHING and operation.media[0] == JSON:
        return JSON
    found = request.accept_mimetypes.best_match(operation.media) if wanted else operation.media[0]
    if found is None:
        raise Problem("not-acceptable", f"This operation answers with {' or '.join(operation.media)}.")
    return found


def _counting(request: Request) -> bool:
    """Say whether the header Prefer asks for an exact count; any other preference is passed over (RFC 7240)."""
    preferences = (each.partition(";")[0] for line in request.headers.getlist("Prefer") for each in line.split(","))
    pairs = (each.partition("=") for each in preferences)
    return any(name.strip().lower() == "count" and value.strip().strip('"') == "exact" for name, _, value in pairs)


def _only_new(request: Request) -> bool:
    """Say whether something is to be made, and nothing that is there changed."""
    return request.headers.get("If-None-Match", "").strip() == tags.ANY and "If-Match" not in request.headers


def _refuse_there(operation: Operation, call: Call) -> None:
    """Raise Stale where there is one already, and Gone where there was."""
    try:
        current = operation.current(call) if operation.current else ""
    except Gone:
        raise
    except NotFound:
        return
    raise Stale("There is one already, and If-None-Match: * only makes what is not there.", current)


def _expected(current: str, request: Request) -> str | None:
    header = request.headers.get("If-Match", "")
    if not header.strip():
        raise Problem("tag-needed", "The header If-Match is missing.")
    if not tags.matched(header, current):
        raise Stale("The tag in If-Match is not that of the latest revision.", current)
    return None if header.strip() == tags.ANY else current


def _once(operation: Operation, call: Call, request: Request, data: bytes) -> Once | None:
    """Return what makes a write one however often it is sent; a key that is no name is refused, and not passed over."""
    header = request.headers.get("Idempotency-Key")
    if header is None or not operation.once:
        return None
    name = header.strip().removeprefix('"').removesuffix('"')
    if not _KEY.fullmatch(name):
        raise Problem("bad-request", "The header Idempotency-Key must be 1 to 255 visible ASCII characters.")
    sender = call.holder.sha256 if call.holder else ""
    return once_of(name, sender, f"{operation.method} {request.path}", data, call.services.now())


def _json(operation: Operation, request: Request) -> tuple[Any, bytes]:
    """Return what was sent, as values and as bytes."""
    if request.headers.get("Content-Encoding", "identity").lower() != "identity":
        raise Problem("unsupported-media-type", "Compressed bodies are not taken.")
    if request.mimetype != JSON or request.mimetype_params.get("charset", "utf-8").lower() != "utf-8":
        raise Problem("unsupported-media-type", f"The body must be {JSON} in UTF-8.", headers={"Accept": JSON})
    data = request.get_data(cache=False)
    if len(data) > operation.most_bytes:
        raise Problem("too-large", f"The body has more than {operation.most_bytes} bytes.")
    try:
        return parse(data), data
    except BrokenJson as fault:
        name = "too-large" if len(data) > USUAL_BYTES else "broken-json"
        raise Problem(name, str(fault)) from None


def _form(body: type[Schema], or_body: type[Schema] | None, sent: Any) -> type[Schema]:
    """Return the form whose needed members are all there, the first where that is none."""
    forms = (body, or_body) if or_body and isinstance(sent, dict) else ()
    return next((form for form in forms if _needed(form) <= set(sent)), body)


def _needed(form: type[Schema]) -> set[str]:
    return {name for name, each in form().fields.items() if each.required}


def _query(schema: type[Schema], args: MultiDict[str, str]) -> dict[str, Any]:
    """Return the parameters, whole numbers as such; raise Problem for one that stands twice."""
    found: dict[str, Any] = {}
    for name, values in args.lists():
        if len(values) > 1:
            raise _invalid("query", [{"pointer": f"/{name}", "in": "query", "message": "It stands twice."}])
        found[name] = values[0]
    declared = schema().fields
    for name, value in found.items():
        if isinstance(declared.get(name), fields.Integer) and _WHOLE.fullmatch(value):
            found[name] = int(value.partition(".")[0])
    return found


def load(schema: Schema, data: Any, where: str) -> Any:
    """Return the data as the schema has it; raise Problem with a pointer to each fault."""
    try:
        return schema.load(data)
    except ValidationError:
        faults = faults_of(schema, data)[:MOST_FAULTS]
    raise _invalid(where, [_member(each, where) for each in faults])


def _member(fault: Fault, where: str) -> dict[str, str]:
    hint = {"hint": fault.hint} if fault.hint else {}
    return {"pointer": fault.pointer, "in": where, "message": fault.message} | hint


def _invalid(where: str, faults: list[dict[str, Any]]) -> Problem:
    place = faults[0]["pointer"] or f"the {where}"
    return Problem("not-as-described", f"{place}: {faults[0]['message']}", errors=faults)
