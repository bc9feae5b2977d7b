"""The description of the API: committed, complete, and with examples that work as they stand."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import pytest
from flask.testing import FlaskClient

from api.conftest import Desk
from counterpane import wiring
from counterpane.api.catalogue import OPERATIONS
from counterpane.api.document import document, written
from counterpane.api.examples import SHA256
from counterpane.api.operations import JSON, Example, Operation
from counterpane.api.sorts import SORTS
from counterpane_schema.meanings import MEANINGS

COMMITTED = Path(__file__).parents[2] / "openapi" / "openapi.json"


def test_the_committed_document_is_the_one_that_is_made() -> None:
    """`python -m counterpane.api.document openapi/openapi.json` writes it again."""
    assert COMMITTED.read_text("utf-8") == written(document())


def test_the_served_document_is_the_committed_one(client: FlaskClient) -> None:
    """What a program fetches is what a reviewer has seen."""
    assert client.get("/openapi.json").json == json.loads(COMMITTED.read_text("utf-8"))


def test_the_document_is_of_version_3_1_without_older_forms() -> None:
    """`nullable` went with 3.0."""
    assert document()["openapi"] == "3.1.0"
    assert "nullable" not in written(document())


def test_every_route_is_described(client: FlaskClient) -> None:
    """No address answers without being in the document, but for the pages for people."""
    rules = {rule.rule for rule in client.application.url_map.iter_rules() if not rule.endpoint.startswith("pages.")}
    assert {path.replace("{", "<").replace("}", ">") for path in document()["paths"]} == rules


@pytest.mark.parametrize("operation", OPERATIONS, ids=lambda operation: operation.name)
def test_every_operation_says_what_it_does_and_shows_it(operation: Operation) -> None:
    """A summary of one line and at least one example."""
    assert operation.summary.endswith(".")
    assert operation.examples


def test_every_refusal_is_a_problem_document() -> None:
    """Each status of 400 and more is described with its sorts."""
    for methods in document()["paths"].values():
        for operation in methods.values():
            refusals = {status: each for status, each in operation["responses"].items() if status >= "400"}
            assert all(list(each["content"]) == ["application/problem+json"] for each in refusals.values())
            assert "500" in refusals


def test_every_sort_of_problem_is_described_somewhere() -> None:
    """No sort is left over, but for those that belong to no operation."""
    words = written(document())
    assert {name for name in SORTS if f"`{name}`" not in words} == {"method-not-allowed"}


def test_every_example_works_in_the_order_of_the_page() -> None:
    """Each request is answered as described, and its JSON has the form that is described."""
    services = wiring.open_library()
    desk = Desk(services, wiring.app_of(services).test_client())
    for operation in OPERATIONS:
        for example in operation.examples:
            answer = _send(desk, operation, example)
            assert answer.status_code == operation.status, (operation.name, answer.text)
            if answer.mimetype == JSON and isinstance(operation.answer, type):
                assert not operation.answer().validate(answer.json), operation.name


def _send(desk: Desk, operation: Operation, example: Example) -> Any:
    path = operation.path
    noun = operation.tag if operation.tag in ("recipes", "profiles") else "components"
    latest = desk.client.get(f"/v1/{noun}/{example.path.get('slug', 'garter-border')}").json
    for name, value in example.path.items():
        path = path.replace(f"<{name}>", latest["sha256"] if value == SHA256 else value)
    token = desk.token("keeper", "suri" if operation.role == "reviewer" else "anna")
    headers = token | ({"If-Match": desk.client.get(path).json["etag"]} if operation.current else {})
    body = {} if example.body is None else {"json": example.body}
    return desk.client.open(path, method=operation.method, query_string=example.query, headers=headers, **body)


def test_every_member_of_a_request_says_what_it_means() -> None:
    """Whoever writes a request finds each name explained, in the form itself or among the meanings."""
    made = document()
    schemas = made["components"]["schemas"]
    forms: set[str] = set()
    open_ones = [
        each["requestBody"] for path in made["paths"].values() for each in path.values() if "requestBody" in each
    ]
    while open_ones:
        found = set(re.findall(r"schemas/(\w+)", json.dumps(open_ones))) - forms
        forms |= found
        open_ones = [schemas[form] for form in found]
    members = [(form, name, each) for form in forms for name, each in schemas[form].get("properties", {}).items()]
    assert len(members) > 300
    assert [(form, name) for form, name, each in members if not each.get("description")] == []


def test_every_meaning_is_that_of_a_member() -> None:
    """A name that no form has any more is left over."""
    schemas = document()["components"]["schemas"]
    names = {name for form in schemas.values() for name in form.get("properties", {})}
    names |= {f"{form}.{name}" for form, each in schemas.items() for name in each.get("properties", {})}
    assert set(MEANINGS) - names == set()
