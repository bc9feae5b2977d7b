"""One sheet of counts for a class, over HTTP."""

from __future__ import annotations

from flask.testing import FlaskClient

from counterpane.api.examples import CLASSROOM
from counterpane_schema.class_counts import ClassAnswer


def test_the_answer_has_a_row_for_each_knitter(client: FlaskClient) -> None:
    """In their order, with their labels."""
    answer = client.post("/v1/class-sheets", json=CLASSROOM).json
    assert not ClassAnswer().validate(answer)
    assert [each["label"] for each in answer["knitters"]] == ["A", "Ines"]


def test_more_than_ten_knitters_are_refused(client: FlaskClient) -> None:
    """And none at all, with the place."""
    for knitters in (CLASSROOM["knitters"] * 6, []):
        answer = client.post("/v1/class-sheets", json=CLASSROOM | {"knitters": knitters})
        assert answer.status_code == 422
        assert "/knitters" in [each["pointer"] for each in answer.json["errors"]]
