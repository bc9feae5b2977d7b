"""A recipe at another gauge over HTTP."""

from __future__ import annotations

from flask.testing import FlaskClient

from counterpane.api.examples import BLANKET
from counterpane_schema.regauge import RegaugeAnswer

COARSE = {"in": "waffle", "stitches": 18, "rows": 25, "over_cm": 10}


def test_the_answer_has_the_agreed_members(client: FlaskClient) -> None:
    """And the same size is what a plan at that gauge comes to."""
    answer = client.post("/v1/regauges", json=BLANKET | {"to": COARSE}).json
    assert not RegaugeAnswer().validate(answer)
    plan = client.post("/v1/plans", json=BLANKET | {"gauge": COARSE}).json
    assert answer["same_size"]["counts"] == plan["counts"]


def test_a_gauge_to_take_it_to_is_needed(client: FlaskClient) -> None:
    """Without it, or with none that measures, the place is named."""
    for change, pointer in (
        ({}, "/to"),
        ({"to": COARSE | {"rows": 0}}, "/to/rows"),
        ({"to": COARSE | {"in": "waf"}}, "/to/in"),
    ):
        answer = client.post("/v1/regauges", json=BLANKET | change)
        assert answer.status_code in (404, 422)
        assert pointer in [each["pointer"] for each in answer.json["errors"]]
