"""`POST /v1/wordings`."""

from __future__ import annotations

import pytest
from flask.testing import FlaskClient

TEXT = "Row 1 (RS): K2, *p3, k2; rep from * to last st, k1.\nRow 2: Bind off all sts.\n"


def test_rows_come_in_words_and_written_out(client: FlaskClient) -> None:
    """Each row has both, with its counts; the text has both one under the other."""
    asked = {"text": TEXT, "terms": "uk", "words": "full", "count": 13}
    answer = client.post("/v1/wordings", json=asked).json
    first, last = answer["rows"]
    assert first["words"] == "knit 2, *purl 3, knit 2; repeat from * to the last stitch, knit 1"
    assert (first["written_out"], first["before"], first["after"]) == ("knit 2, [purl 3, knit 2] twice, knit 1", 13, 13)
    assert (last["words"], last["after"]) == ("cast off all stitches", 0)
    assert "With 13 stitches: knit 2, [purl 3" in answer["text"]


def test_a_count_that_does_not_work_is_a_finding(client: FlaskClient) -> None:
    """The answer is 200 whatever was found."""
    answer = client.post("/v1/wordings", json={"text": TEXT, "count": 12})
    assert (answer.status_code, answer.json["findings"][0]["rule"]) == (200, "repeat-does-not-fit")


@pytest.mark.parametrize(
    "asked", [{}, {"text": TEXT, "terms": "fr"}, {"text": TEXT, "as": "picture"}, {"text": TEXT, "count": 0}]
)
def test_a_wrong_request_is_refused(client: FlaskClient, asked: dict[str, object]) -> None:
    """The problem names the member."""
    answer = client.post("/v1/wordings", json=asked)
    assert (answer.status_code, answer.mimetype) == (422, "application/problem+json")


def test_a_long_text_is_refused(client: FlaskClient) -> None:
    """More than a million bytes are not read."""
    assert client.post("/v1/wordings", json={"text": "k" * 1_000_001}).status_code == 413
