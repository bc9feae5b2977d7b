"""One recipe in several sizes over HTTP."""

from __future__ import annotations

from flask.testing import FlaskClient

from counterpane.api.examples import RANGE
from counterpane_schema.grade import GradeAnswer


def test_the_text_of_an_answer_checks_clean_in_every_size(client: FlaskClient) -> None:
    """In the terms it was asked for."""
    answer = client.post("/v1/grades", json=RANGE | {"terms": "uk"}).json
    assert not GradeAnswer().validate(answer)
    checked = client.post("/v1/checks", json={"text": answer["text"], "terms": "uk"}).json
    assert [size["cast_on"] for size in checked["sizes"]] == [size["counts"]["cast_on"] for size in answer["sizes"]]
    assert all(size["findings"] == [] for size in checked["sizes"])


def test_a_range_has_no_size_of_its_own_and_one_size_at_least(client: FlaskClient) -> None:
    """Each fault has its place."""
    for change, pointer in (({"size": {"named": "pram"}}, "/size"), ({"sizes": []}, "/sizes")):
        answer = client.post("/v1/grades", json=RANGE | change)
        assert answer.status_code == 422
        assert pointer in [each["pointer"] for each in answer.json["errors"]]
