"""Operations described in OpenAPI 3.1: paths, forms, headers, and each refusal with its sorts of problem."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping, Sequence
from typing import Any

from apispec import APISpec
from apispec.ext.marshmallow import MarshmallowPlugin
from apispec.ext.marshmallow.openapi import OpenAPIConverter
from marshmallow import Schema, fields

from counterpane import __version__
from counterpane.api.examples import SHA256 as SOME_HASH
from counterpane.api.limiting import UNCOUNTED
from counterpane.api.operations import JSON, NUMBER, Operation, Shape
from counterpane.api.problems import MEDIA_TYPE
from counterpane.api.sorts import SORTS
from counterpane_schema.fields import SHA256, SLUG, Either, Number, Told
from counterpane_schema.meanings import meaning
from counterpane_schema.problem import Problem

ABOUT = """Reusable components of knitted baby blankets whose stitch multiples are derived from their rows; recipes that
are proved to fit; written patterns; safety notes. General information, not an approval of anything."""
ALWAYS = ("bad-request", "not-acceptable", "internal")
PATTERNS = {"slug": SLUG, "sha256": SHA256, "name": SLUG, "number": NUMBER}
KEY = r"^[!-~]{1,255}$"
TAG_HEADER = {"ETag": {"description": "The hash of the revision, in quotes.", "schema": {"type": "string"}}}
LIMIT_HEADERS = {
    "RateLimit-Policy": "Where requests are counted: how many (`q`) a caller may send in how many seconds (`w`), as "
    '`"requests";q=1200;w=60`.',
    "RateLimit": "Where requests are counted: how many are left (`r`), and in how many seconds they begin again (`t`), "
    'as `"requests";r=1187;t=42`.',
    "Retry-After": "The seconds after which a request is answered again.",
}
"""The first two as in the draft of the IETF, draft-ietf-httpapi-ratelimit-headers, from memory."""
_REFERENCE = re.compile(r"#/components/schemas/(\w+)")
_PATH_PARAMETER = re.compile(r"<(\w+)>")


def document_of(operations: Sequence[Operation]) -> dict[str, Any]:
    """Return the document of the operations."""
    plugin = MarshmallowPlugin(schema_name_resolver=_name)
    spec = APISpec("Counterpane", __version__, "3.1.0", [plugin], info={"description": " ".join(ABOUT.split())})
    converter = plugin.converter
    assert isinstance(converter, OpenAPIConverter)
    for function in (_either, _told, _number):
        converter.add_attribute_function(function)  # type: ignore[no-untyped-call]
    spec.components.security_scheme("token", {"type": "http", "scheme": "bearer", "description": "A token of a role."})
    for name, words in LIMIT_HEADERS.items():
        form = "integer" if name == "Retry-After" else "string"
        spec.components.header(name, {"description": words, "schema": {"type": form}})
    for operation in operations:
        path = _PATH_PARAMETER.sub(r"{\1}", operation.path)
        spec.path(path, operations={operation.method.lower(): _operation(operation, converter)})
    made = spec.to_dict()
    schemas = made["components"]["schemas"]
    _add_pairs(schemas, converter)
    for form in _sent(made["paths"], schemas):
        for name, described in schemas[form].get("properties", {}).items():
            if (said := meaning(form, name)) is not None:
                described.setdefault("description", said)
    return made


def _sent(described: Any, schemas: Mapping[str, Any]) -> set[str]:
    """Return the forms that requests are made of."""
    bodies = [each["requestBody"] for path in described.values() for each in path.values() if "requestBody" in each]
    found: set[str] = set()
    while bodies:
        new = set(_REFERENCE.findall(json.dumps(bodies))) - found
        found |= new
        bodies = [schemas[form] for form in new]
    return found


def _add_pairs(schemas: dict[str, Any], converter: OpenAPIConverter) -> None:
    """Say of which pairs of members exactly one must be there."""
    for key in converter.refs:
        pairs, unless = getattr(key[0], "either_or", ()), getattr(key[0], "unless", "")
        if pairs:
            choices: list[dict[str, Any]] = [{"oneOf": [{"required": [name]} for name in pair]} for pair in pairs]
            if unless:
                both = [{"not": {"required": list(pair)}} for pair in pairs]
                choices = [{"anyOf": [{"required": [unless]}, {"allOf": choices}]}, *both]
            schemas[_name(key[0])] |= {"allOf": choices}


def _name(schema: type[Schema] | Schema | str) -> str:
    named = schema if isinstance(schema, type) else type(schema)
    return str(schema) if isinstance(schema, str) else named.__name__


def _either(converter: Any, field: fields.Field[Any], **_: Any) -> dict[str, Any]:
    """Describe a field of several forms by its alternatives."""
    if not isinstance(field, Either):
        return {}
    forms = [converter.field2property(each) for each in field.alternatives]
    return {"anyOf": forms + ([{"type": "null"}] if field.allow_none else [])}


def _told(converter: Any, field: fields.Field[Any], **_: Any) -> dict[str, Any]:
    return {"description": "Told in answers; left aside when it is sent back."} if isinstance(field, Told) else {}


def _number(converter: Any, field: fields.Field[Any], **_: Any) -> dict[str, Any]:
    """Describe the bounds of a number, of which the plug-in makes decimals that have no JSON form."""
    if not isinstance(field, Number):
        return {}
    bounds = {"minimum": field.least, "maximum": field.most}
    return bounds | ({"exclusiveMinimum": field.least} if field.above else {})


def _operation(operation: Operation, converter: OpenAPIConverter) -> dict[str, Any]:
    responses = _answers(operation) | _refusals(operation)
    described: dict[str, Any] = {
        "operationId": operation.name,
        "tags": [operation.tag],
        "summary": operation.summary.rstrip("."),
        "description": operation.description or operation.summary,
        "parameters": [*_path(operation), *_query(operation, converter), *_headers(operation)],
        "responses": responses if operation.path in UNCOUNTED else _counted(responses),
    }
    if operation.body:
        described["requestBody"] = {"required": True, "content": {JSON: _content(operation)}}
    if operation.signed or operation.role not in (None, "reader"):
        described["security"] = [{"token": []}]
    return described


def _content(operation: Operation) -> dict[str, Any]:
    examples = {f"example-{number}": {"value": each.body} for number, each in enumerate(operation.examples, 1)}
    schema = {"anyOf": [operation.body, operation.or_body]} if operation.or_body else operation.body
    return {"schema": schema, "examples": examples}


def _path(operation: Operation) -> list[dict[str, Any]]:
    example = operation.examples[0].path if operation.examples else {}
    return [
        {"name": name, "in": "path", "required": True, "schema": {"type": "string", "pattern": PATTERNS[name]}}
        | ({"example": example[name]} if example.get(name, SOME_HASH) != SOME_HASH else {})
        for name in _PATH_PARAMETER.findall(operation.path)
    ]


def _query(operation: Operation, converter: OpenAPIConverter) -> list[dict[str, Any]]:
    if not operation.query:
        return []
    example = operation.examples[0].query if operation.examples else {}
    parameters: list[dict[str, Any]] = converter.schema2parameters(operation.query(), location="query")
    return [each | ({"example": example[each["name"]]} if each["name"] in example else {}) for each in parameters]


def _headers(operation: Operation) -> list[dict[str, Any]]:
    found: list[dict[str, Any]] = []
    if operation.current:
        words = "The tag of the revision that is changed, as ETag and `etag` give it."
        schema = {"type": "string", "minLength": 1}
        needed = {"name": "If-Match", "in": "header", "required": not operation.creates}
        found.append(needed | {"description": words, "schema": schema})
    if operation.creates:
        words = "In the place of If-Match: only make what is not there."
        only = {"name": "If-None-Match", "in": "header", "required": False, "description": words}
        found.append(only | {"schema": {"type": "string", "enum": ["*"]}})
    if operation.counts:
        words = "`count=exact` counts the whole list, as `total`; it takes longer the more there is."
        found.append(
            {"name": "Prefer", "in": "header", "required": False, "description": words} | {"schema": {"type": "string"}}
        )
    if operation.once:
        words = (
            "A name of your own for this request, such as 30 random letters. Sent again with the very same bytes "
            "within a day it writes nothing, and the answer is that of the first time; of what may have gone on since, "
            "such as a submission, it is told as it is by then."
        )
        schema = {"type": "string", "pattern": KEY}
        found.append(
            {"name": "Idempotency-Key", "in": "header", "required": False, "description": words} | {"schema": schema}
        )
    if operation.tagged and operation.method == "GET":
        words = "A tag that is at hand; the answer is 304 where it is still the latest."
        schema = {"type": "string"}
        found.append(
            {"name": "If-None-Match", "in": "header", "required": False, "description": words, "schema": schema}
        )
    return found


def _answers(operation: Operation) -> dict[str, Any]:
    content = {media: {"schema": _shape(operation.answer, media)} for media in operation.media}
    answer: dict[str, Any] = {"description": operation.summary, "content": content}
    if operation.tagged:
        answer["headers"] = dict(TAG_HEADER)
    if operation.status == 201:
        location = {"description": "The address of what was made.", "schema": {"type": "string"}}
        answer["headers"] = (TAG_HEADER if operation.tagged else {}) | {"Location": location}
    if operation.once:
        again = {"description": "`true` where an earlier try wrote it.", "schema": {"type": "string"}}
        answer["headers"] = answer.get("headers", {}) | {"Idempotency-Replayed": again}
    answers = {str(operation.status): answer}
    if operation.creates:
        location = {"description": "The address of what was made.", "schema": {"type": "string"}}
        made = {"description": "It was not there, and was made.", "content": content}
        answers["201"] = made | {"headers": TAG_HEADER | {"Location": location}}
    if operation.tagged and operation.method == "GET":
        answers["304"] = {"description": "What is at hand is still the latest.", "headers": dict(TAG_HEADER)}
    return answers


def _counted(answers: dict[str, Any]) -> dict[str, Any]:
    """Describe the headers of a server that counts requests, where an answer is good or says that they are too many."""
    headers = {name: {"$ref": f"#/components/headers/{name}"} for name in LIMIT_HEADERS if name != "Retry-After"}
    for status, answer in answers.items():
        if status < "400":
            answer["headers"] = answer.get("headers", {}) | headers
    waiting = {"Retry-After": {"$ref": "#/components/headers/Retry-After"}}
    answers["429"]["headers"] = headers | waiting
    return answers


def _shape(answer: Shape | None, media: str) -> Any:
    return answer if media == JSON and answer else {"type": "string"}


def _refusals(operation: Operation) -> dict[str, Any]:
    """Describe each status of a refusal with the sorts of problem it may be."""
    names = [*ALWAYS, *operation.problems]
    if operation.body:
        names += ["broken-json", "too-large", "unsupported-media-type"]
    names.append("not-as-described")
    if operation.query and "cursor" in operation.query().fields:
        names.append("cursor-not-valid")
    if "<" in operation.path:
        names += ["not-found", "withdrawn"] if operation.role else ["not-found"]
    if operation.role:
        names += ["token-needed", "not-allowed", "busy"]
    if operation.once:
        names += ["bad-request", "key-reused"]
    if operation.current:
        names += ["tag-needed", "stale"]
    if operation.path not in UNCOUNTED:
        names.append("too-many-requests")
    statuses: dict[int, list[str]] = {}
    for name in dict.fromkeys(names):
        statuses.setdefault(SORTS[name].status, []).append(name)
    return {str(status): _refusal(statuses[status]) for status in sorted(statuses)}


def _refusal(names: list[str]) -> dict[str, Any]:
    words = "; ".join(f"`{name}`: {SORTS[name].title}" for name in names)
    return {"description": words, "content": {MEDIA_TYPE: {"schema": Problem}}}
