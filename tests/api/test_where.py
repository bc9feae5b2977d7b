"""Which row a piece is on, over HTTP."""

from __future__ import annotations

import pytest
from flask.testing import FlaskClient

from counterpane.api.examples import BLANKET

PATH = "/v1/plans/where"


def test_the_first_question_halves_what_is_left(client: FlaskClient) -> None:
    """At its worst answer less than half of the rows are left."""
    answer = client.post(PATH, json=BLANKET).json
    assert answer["left"] == answer["rows"]
    assert answer["question"]["at_worst"] * 2 < answer["rows"]
    assert answer["candidates"] == []


def test_answers_are_sent_again_with_each_further_one(client: FlaskClient) -> None:
    """Nothing is kept between requests: the same answers leave the same rows."""
    seen = {"length_cm": "31", "part": "body"}
    one, other = (client.post(PATH, json={**BLANKET, "seen": seen}).json for _ in range(2))
    assert one == other
    assert one["left"] < client.post(PATH, json={**BLANKET, "seen": {"part": "body"}}).json["left"]


@pytest.mark.parametrize("seen", [{"part": "sleeve"}, {"needle": "RS: q2"}, {"repeats": "many"}, {"sleeve": "left"}])
def test_an_answer_that_is_none_is_refused_with_its_place(client: FlaskClient, seen: dict[str, str]) -> None:
    """The pointer leads to it."""
    answer = client.post(PATH, json={**BLANKET, "seen": seen})
    (name,) = seen
    assert (answer.status_code, answer.json["errors"][0]["pointer"]) == (422, f"/seen/{name}")
