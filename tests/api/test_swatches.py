"""Swatches of a plan over HTTP."""

from __future__ import annotations

from flask.testing import FlaskClient

from counterpane.api.examples import BLANKET
from counterpane_schema.swatch import SwatchAnswer


def test_the_answer_has_the_agreed_members(client: FlaskClient) -> None:
    """And the text of each swatch checks clean."""
    answer = client.post("/v1/swatches", json=BLANKET).json
    assert not SwatchAnswer().validate(answer)
    for swatch in answer["swatches"]:
        assert client.post("/v1/checks", json={"text": swatch["text"]}).json["findings"] == []


def test_what_makes_no_plan_makes_no_swatch(client: FlaskClient) -> None:
    """The problem is that of the plan."""
    body = BLANKET | {"parts": {"body": "basket-weave", "bottom": {"component": "garter-rib-border", "rows": 12}}}
    there, here = (client.post(path, json=body) for path in ("/v1/plans", "/v1/swatches"))
    assert (here.status_code, here.json["findings"]) == (422, there.json["findings"])
