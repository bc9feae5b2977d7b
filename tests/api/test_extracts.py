"""One size of a pattern over HTTP."""

from __future__ import annotations

import pytest
from flask.testing import FlaskClient

TEXT = "Cast on 9 (12, 15) sts.\nRow 1: K9 (12, 15).\n"


@pytest.mark.parametrize("size", [3, "3", "15"])
def test_the_text_of_one_size_is_answered(client: FlaskClient, size: int | str) -> None:
    """A number may be sent as a number or as text."""
    answer = client.post("/v1/extracts", json={"text": TEXT, "size": size})
    assert answer.status_code == 200
    assert answer.json == {"text": "Cast on 15 sts.\nRow 1: K15.\n", "size": 3, "names": [], "left": []}


def test_a_size_that_is_not_there_is_refused_with_its_pointer(client: FlaskClient) -> None:
    """The sizes that the text has are named."""
    answer = client.post("/v1/extracts", json={"text": TEXT, "size": "4"})
    assert answer.status_code == 422
    assert answer.json["errors"][0]["pointer"] == "/size"
    assert "9, 12, 15" in answer.json["detail"]


@pytest.mark.parametrize("size", [0, 1.5, True, None, ["2"]])
def test_a_size_of_another_type_is_refused(client: FlaskClient, size: object) -> None:
    """It is a number from 1 or a text."""
    assert client.post("/v1/extracts", json={"text": TEXT, "size": size}).status_code == 422


def test_a_text_of_more_than_a_million_bytes_is_refused(client: FlaskClient) -> None:
    """As a check refuses it."""
    assert client.post("/v1/extracts", json={"text": " " * 1_000_001, "size": 1}).status_code == 413
