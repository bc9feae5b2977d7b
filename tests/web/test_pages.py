"""The pages for people: everything of the description is on them, and nothing from elsewhere."""

from __future__ import annotations

import re
from html import escape
from html.parser import HTMLParser
from itertools import pairwise

import pytest
from flask.testing import FlaskClient

from counterpane import wiring
from counterpane.api.catalogue import OPERATIONS
from counterpane.api.operations import Operation
from counterpane.web import marked
from counterpane.web.describing import form_of


@pytest.fixture(scope="module")
def client() -> FlaskClient:
    """Return a client of the application; the pages need no starters."""
    return wiring.app_of(wiring.open_library(starters=False)).test_client()


class Parts(HTMLParser):
    """Collects the elements of a page."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[tuple[str, dict[str, str | None]]] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Keep an element."""
        self.found.append((tag, dict(attrs)))


@pytest.mark.parametrize("path", ["/", "/operations/plan", "/problems/stale"])
def test_a_page_has_no_script_no_inline_style_and_nothing_from_elsewhere(client: FlaskClient, path: str) -> None:
    """And its policy forbids them."""
    answer = client.get(path)
    parts = Parts()
    parts.feed(answer.text)
    assert not {"script", "style", "iframe"} & {tag for tag, _ in parts.found}
    links = [value for _, attributes in parts.found for name, value in attributes.items() if name in ("href", "src")]
    assert all(value and value.startswith(("/", "#")) for value in links)
    assert not [
        name for _, attributes in parts.found for name in attributes if name == "style" or name.startswith("on")
    ]
    assert "default-src 'none'" in answer.headers["Content-Security-Policy"]


@pytest.mark.parametrize("operation", OPERATIONS, ids=lambda operation: operation.name)
def test_every_operation_has_a_page_with_an_example(client: FlaskClient, operation: Operation) -> None:
    """One can copy it into a shell."""
    assert "curl -sS" in client.get(f"/operations/{operation.name}").text


@pytest.mark.parametrize("operation", OPERATIONS, ids=lambda operation: operation.name)
def test_every_operation_is_in_the_list_of_all(client: FlaskClient, operation: Operation) -> None:
    """With its method and its path."""
    told = f'<a href="/operations/{operation.name}"><code>{operation.method} {escape(operation.path)}</code></a>'
    assert told.replace("&lt;", "{").replace("&gt;", "}") in client.get("/").text


@pytest.mark.parametrize("path", ["/", "/operations/add_component"])
def test_every_link_of_a_page_leads_somewhere(client: FlaskClient, path: str) -> None:
    """Anchors, problems, the style sheet and the description."""
    text = client.get(path).text
    anchors = set(re.findall(r'id="([^"]+)"', text))
    for link in set(re.findall(r'href="([^"]+)"', text)):
        assert link[1:] in anchors if link.startswith("#") else _fetched(client, link)


def test_a_page_is_small(client: FlaskClient) -> None:
    """A first visit is at most 100 kB; house."""
    assert len(_fetched(client, "/")) + len(_fetched(client, "/static/pages.css")) <= 100_000


def _fetched(client: FlaskClient, path: str) -> bytes:
    """Return the bytes of a page, and close the file that it may come from."""
    with client.get(path) as answer:
        assert answer.status_code == 200
        return answer.data


@pytest.mark.parametrize("path", ["/", "/operations/plan"])
def test_the_headings_go_down_by_one(client: FlaskClient, path: str) -> None:
    """So that they can be walked."""
    parts = Parts()
    parts.feed(client.get(path).text)
    levels = [int(tag[1]) for tag, _ in parts.found if re.fullmatch("h[1-6]", tag)]
    assert levels[0] == 1
    assert all(after <= before + 1 for before, after in pairwise(levels))


def test_an_unknown_problem_has_no_page(client: FlaskClient) -> None:
    """It is a problem itself."""
    assert client.get("/problems/nope").json["type"] == "/problems/not-found"


def test_backticks_become_code_and_the_rest_is_escaped() -> None:
    """Words of the description are no markup."""
    assert str(marked("a `b<c>` & d")) == "a <code>b&lt;c&gt;</code> &amp; d"


@pytest.mark.parametrize(
    ("schema", "words"),
    [
        ({"type": ["integer", "null"], "minimum": 1}, "integer or null from 1"),
        ({"type": "array", "items": {"$ref": "#/components/schemas/Gauge"}}, "list of object Gauge"),
        ({"anyOf": [{"enum": ["us", None]}, {}]}, "one of us, null or any value"),
    ],
)
def test_a_schema_is_said_in_words(schema: dict[str, object], words: str) -> None:
    """For the column of values."""
    assert form_of(schema) == words
