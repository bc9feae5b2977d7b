"""The matrix over HTTP: three forms, and what is refused."""

from __future__ import annotations

from api.conftest import Desk
from api.contents import RIB


def test_the_matrix_of_what_is_kept(desk: Desk) -> None:
    """A body and nothing beside it; with a body against another part the cell is whole."""
    desk.add(RIB)
    answer = desk.client.get("/v1/matrix").json
    assert [body["slug"] for body in answer["bodies"]] == [RIB["slug"]]
    assert answer["rows"] == [[]]


def test_the_form_is_that_of_accept(desk: Desk) -> None:
    """JSON, text and SVG; another is refused."""
    desk.add(RIB)
    for media in ("application/json", "text/plain", "image/svg+xml"):
        answer = desk.client.get("/v1/matrix", headers={"Accept": media})
        assert (answer.status_code, answer.mimetype) == (200, media)
    assert desk.client.get("/v1/matrix", headers={"Accept": "text/csv"}).status_code == 406


def test_other_kinds_and_unknown_slugs_are_refused(desk: Desk) -> None:
    """A body is no border."""
    desk.add(RIB)
    refused = desk.client.get(f"/v1/matrix?part={RIB['slug']}")
    assert (refused.status_code, refused.json["findings"][0]["pointer"]) == (422, "/part")
    assert desk.client.get("/v1/matrix?body=nothing").status_code == 404
    assert desk.client.get("/v1/matrix?beside=-1").status_code == 422
