"""Lessons over HTTP."""

from __future__ import annotations

from flask.testing import FlaskClient

from counterpane.api.examples import BLANKET
from counterpane_schema.lesson import LessonAnswer


def test_the_answer_has_the_agreed_members(client: FlaskClient) -> None:
    """A lesson with steps, sessions and a kit."""
    answer = client.post("/v1/lessons", json=BLANKET | {"session_minutes": 90}).json
    assert not LessonAnswer().validate(answer)
    assert {"steps", "sessions", "kit", "hands", "always", "safety"} <= set(answer["lesson"])


def test_the_form_is_that_of_the_header_or_of_the_body(client: FlaskClient) -> None:
    """The body beats the header."""
    text = client.post("/v1/lessons", json=BLANKET, headers={"Accept": "text/plain"})
    page = client.post("/v1/lessons", json=BLANKET | {"as": "html"}, headers={"Accept": "text/plain"})
    assert (text.mimetype, page.mimetype) == ("text/plain", "text/html")
    assert page.data.startswith(b"<!doctype html>")


def test_a_hand_that_there_is_not_is_refused_with_its_place(client: FlaskClient) -> None:
    """And a session of one minute."""
    for change, pointer in (({"hand": "both"}, "/hand"), ({"session_minutes": 1}, "/session_minutes")):
        answer = client.post("/v1/lessons", json=BLANKET | change)
        assert answer.status_code == 422
        assert pointer in [each["pointer"] for each in answer.json["errors"]]
