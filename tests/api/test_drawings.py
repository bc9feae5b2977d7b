"""Pictures of plans over HTTP."""

from __future__ import annotations

from xml.etree import ElementTree

from flask.testing import FlaskClient

from counterpane.api import examples

REQUEST = dict(examples.DRAWING[0].body or {})


def test_a_schematic_comes_as_svg(client: FlaskClient) -> None:
    """With the title that was asked for; the same request gives the same bytes."""
    answer = client.post("/v1/drawings", json=REQUEST)
    assert (answer.status_code, answer.mimetype) == (200, "image/svg+xml")
    assert ElementTree.fromstring(answer.text).findtext("{*}title") == "Waffle blanket: schematic"
    assert answer.data == client.post("/v1/drawings", json=REQUEST).data


def test_a_view_that_there_is_not_is_refused(client: FlaskClient) -> None:
    """With the place of the fault."""
    answer = client.post("/v1/drawings", json={**REQUEST, "view": "photograph"})
    assert answer.status_code == 422
    assert answer.get_json()["errors"][0]["pointer"] == "/view"


def test_parts_that_share_no_count_are_refused_with_what_to_change(client: FlaskClient) -> None:
    """As a plan of them is."""
    parts = {"body": "basket-weave", "bottom": {"component": "garter-rib-border", "rows": 12}}
    answer = client.post("/v1/drawings", json={**REQUEST, "parts": parts})
    assert (answer.status_code, answer.mimetype) == (422, "application/problem+json")
