"""Components sent in words: what follows is filled in and shown, what does not is asked for at its pointer."""

from __future__ import annotations

from typing import Any

import pytest

from api.conftest import Desk

ROWS = "Pea eyelets\n(multiple of 4 sts plus 1)\nRow 1: K1, *yo, k2tog, k2; rep from * to end.\nRow 2: Purl.\n"
WHO: dict[str, Any] = {"kind": "body", "licence": "CC0-1.0", "author": "anna", "source": "common-practice"}


def test_a_text_becomes_a_component(desk: Desk) -> None:
    """The answer is the component that is kept, with what was derived."""
    answer = desk.add({"text": ROWS, **WHO})

    assert (answer.status_code, answer.headers["Location"]) == (201, "/v1/components/pea-eyelets")
    assert answer.json["derived"]["multiple"] == {"of": 4, "plus": 1, "least": 5}
    assert answer.json["safety"]["openings"] == {"value": "1", "unit": "yarn-over"}
    assert desk.client.get("/v1/components/pea-eyelets").json == answer.json


def test_what_is_missing_is_asked_for_at_its_pointer(desk: Desk) -> None:
    """One entry of `errors` for each question, and what does follow beside them; nothing is kept."""
    answer = desk.add({"text": ROWS})

    assert (answer.status_code, answer.content_type) == (422, "application/problem+json")
    assert answer.json["type"] == "/problems/incomplete"
    assert [each["pointer"] for each in answer.json["errors"]] == ["/kind", "/licence", "/author", "/source"]
    assert all(each["message"].endswith("?") for each in answer.json["errors"])
    assert answer.json["derived"]["said"] == "a multiple of 4 stitches plus 1, at least 5"
    assert desk.client.get("/v1/components").json["items"] == []


@pytest.mark.parametrize(
    ("old", "new", "rule", "line"),
    [("plus 1", "plus 3", "stated-multiple-wrong", 2), ("k2tog", "k2tgo", "unknown-term", 3)],
)
def test_a_text_with_errors_is_refused_with_its_findings(old: str, new: str, rule: str, line: int, desk: Desk) -> None:
    """Each finding has its place in the text that was sent."""
    answer = desk.add({"text": ROWS.replace(old, new), **WHO})

    assert (answer.status_code, answer.json["type"]) == (422, "/problems/does-not-prove")
    assert (rule, line) in [(each["rule"], each["line"]) for each in answer.json["findings"]]


@pytest.mark.parametrize("more", [{"kind": "cast-on"}, {"versions": []}, {"text": 5}, {"text": "\x00"}, {"year": 3}])
def test_the_members_of_a_text_are_described(more: dict[str, Any], desk: Desk) -> None:
    """What is not of the form in words is refused before anything is read."""
    answer = desk.add({"text": ROWS, **WHO, **more})

    assert (answer.status_code, answer.json["type"]) == (422, "/problems/not-as-described")


def test_the_same_words_twice_are_taken(desk: Desk) -> None:
    """The slug made of the name is one like any other."""
    assert [desk.add({"text": ROWS, **WHO}).status_code for _ in range(2)] == [201, 409]


def test_a_component_that_is_taken_needs_a_token(desk: Desk) -> None:
    """Words are a write like any other."""
    assert desk.client.post("/v1/components", json={"text": ROWS, **WHO}).status_code == 401
