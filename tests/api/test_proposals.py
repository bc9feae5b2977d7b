"""Proposals over HTTP: what is proposed goes on to a plan, and a request that makes no sense is refused."""

from __future__ import annotations

from typing import Any

import pytest
from flask.testing import FlaskClient

from counterpane.api.proposals import PROPOSALS

WANTED: dict[str, Any] = {"gauge": {"stitches": 22, "rows": 30, "over_cm": 10}, "size": {"named": "pram"}, "limit": 1}


def test_each_request_goes_on_as_it_stands(client: FlaskClient) -> None:
    """To a plan and to a pattern."""
    answer = client.post("/v1/proposals", json=PROPOSALS[0].body)
    assert answer.status_code == 200
    for each in answer.json["proposals"]:
        plan = client.post("/v1/plans", json=each["request"])
        assert (plan.status_code, plan.json["counts"]) == (200, each["counts"])
        assert client.post("/v1/patterns", json=each["request"]).status_code == 200


@pytest.mark.parametrize(
    ("more", "pointer"),
    [
        ({"avoid": ["wool"], "yarn": {"fibre": [{"fibre": "wool", "percent": 100}]}}, "/yarn"),
        ({"size": {"named": "no-such-size"}}, "/size/named"),
        ({"avoid": ["snags"]}, "/avoid/0"),
        ({"skills": ["knitting"]}, "/skills/0"),
        ({"limit": 13}, "/limit"),
        ({"parts": {"body": "waffle"}}, "/parts"),
    ],
)
def test_a_request_that_makes_no_sense_is_refused(client: FlaskClient, more: dict[str, Any], pointer: str) -> None:
    """With its place."""
    answer = client.post("/v1/proposals", json={**WANTED, **more})
    assert (answer.status_code, answer.json["errors"][0]["pointer"]) == (422, pointer)


def test_an_amount_that_cannot_be_reckoned_is_not_known(client: FlaskClient) -> None:
    """Balls of which nobody says what they hold, and an amount without a yarn."""
    for more in ({"yarn": {"weight": "dk"}, "have": {"balls": 5}}, {"have": {"grams": 500}}):
        found = client.post("/v1/proposals", json={**WANTED, **more}).json["proposals"]
        assert [each["yarn_enough"] for each in found] == ["not known"]
