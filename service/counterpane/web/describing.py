"""From an OpenAPI document to what the API page shows: operations with their members and examples one can copy."""

from __future__ import annotations

import json
import re
import shlex
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any
from urllib.parse import urlencode

_PROBLEM = re.compile(r"`([a-z0-9-]+)`: ")
ADDRESS = "http://127.0.0.1:8321"


@dataclass(frozen=True, slots=True)
class Member:
    """A parameter or a member of a body: its name, what it may be, whether it must be there, what it is for."""

    name: str
    form: str
    required: bool
    about: str


@dataclass(frozen=True, slots=True)
class Shown:
    """An operation as the page shows it."""

    name: str
    method: str
    path: str
    tag: str
    summary: str
    description: str
    token: bool
    parameters: tuple[Member, ...]
    members: tuple[Member, ...]
    answers: tuple[tuple[str, str], ...]
    examples: tuple[str, ...]


def operations_of(document: Mapping[str, Any]) -> Iterator[Shown]:
    """Give the operations in the order of the document."""
    for path, methods in document["paths"].items():
        for method, operation in methods.items():
            yield Shown(
                name=operation["operationId"],
                method=method.upper(),
                path=path,
                tag=operation["tags"][0],
                summary=operation["summary"],
                description=operation["description"],
                token="security" in operation,
                parameters=tuple(_parameter(each) for each in operation["parameters"]),
                members=tuple(_members(operation, document)),
                answers=tuple((status, _answer(each)) for status, each in operation["responses"].items()),
                examples=tuple(_examples(method, path, operation)),
            )


def _answer(given: Mapping[str, Any]) -> str:
    """Return what an answer is; problems by their names alone, since the foot of the page explains each once."""
    names = _PROBLEM.findall(given["description"])
    return ", ".join(f"`{name}`" for name in names) if names else str(given["description"])


def _parameter(given: Mapping[str, Any]) -> Member:
    form = f"{form_of(given['schema'])}, in the {given['in']}"
    return Member(given["name"], form, bool(given.get("required")), given.get("description", ""))


def _members(operation: Mapping[str, Any], document: Mapping[str, Any]) -> Iterator[Member]:
    body = operation.get("requestBody")
    if not body:
        return
    schema = body["content"]["application/json"]["schema"]
    forms = [_resolved(each, document) for each in schema.get("anyOf", [schema])]
    members = {name: member for form in forms[::-1] for name, member in form["properties"].items()}
    for name in dict.fromkeys(name for form in forms for name in form["properties"]):
        required = all(name in form.get("required", ()) for form in forms)
        yield Member(name, form_of(members[name]), required, members[name].get("description", ""))


def _resolved(schema: Mapping[str, Any], document: Mapping[str, Any]) -> Mapping[str, Any]:
    if "$ref" not in schema:
        return schema
    found: Mapping[str, Any] = document["components"]["schemas"][_name(schema["$ref"])]
    return found


def _name(reference: str) -> str:
    return reference.rpartition("/")[2]


def form_of(schema: Mapping[str, Any]) -> str:
    """Say in words what a value may be."""
    if "$ref" in schema:
        return f"object {_name(schema['$ref'])}"
    if "enum" in schema:
        return "one of " + ", ".join("null" if each is None else str(each) for each in schema["enum"])
    for joined in ("anyOf", "allOf", "oneOf"):
        if joined in schema:
            return " or ".join(form_of(each) for each in schema[joined])
    sort = schema.get("type", "any value")
    words = " or ".join(sort) if isinstance(sort, list) else str(sort)
    return f"list of {form_of(schema['items'])}" if "items" in schema else words + _bounds(schema)


def _bounds(schema: Mapping[str, Any]) -> str:
    least = schema.get("minimum", schema.get("exclusiveMinimum"))
    return f" from {least}" if isinstance(least, int) and least > 0 else ""


def _examples(method: str, path: str, operation: Mapping[str, Any]) -> Iterator[str]:
    """Give commands that can be copied into a shell."""
    bodies = operation.get("requestBody", {}).get("content", {}).get("application/json", {}).get("examples", {})
    for value in [each["value"] for each in bodies.values()] or [None]:
        yield _command(method, path, operation, value)


def _command(method: str, path: str, operation: Mapping[str, Any], body: Any) -> str:
    query = {}
    for parameter in operation["parameters"]:
        if "example" in parameter and parameter["in"] == "path":
            path = path.replace(f"{{{parameter['name']}}}", str(parameter["example"]))
        elif "example" in parameter and parameter["in"] == "query":
            query[parameter["name"]] = parameter["example"]
    path = path.replace("{sha256}", "$SHA256")
    address = ADDRESS + path + (f"?{urlencode(query)}" if query else "")
    quoted = f'"{address}"' if "$" in address else shlex.quote(address)
    words = ["curl -sS", *([f"-X {method.upper()}"] if method == "put" else []), quoted]
    if "security" in operation:
        words.append('-H "Authorization: Bearer $TOKEN"')
    if any(each["name"] == "If-Match" for each in operation["parameters"]):
        words.append('-H "If-Match: $ETAG"')
    if body is not None:
        words += ["-H 'Content-Type: application/json'", "--data " + shlex.quote(json.dumps(body, ensure_ascii=False))]
    return " \\\n  ".join(words)
