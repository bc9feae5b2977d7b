"""Sizes by name over HTTP."""

from __future__ import annotations

from flask.testing import FlaskClient

from counterpane.api.examples import BLANKET
from counterpane_schema.size import NamedSizeAnswer, NamedSizeCard


def test_the_sizes_are_listed_and_each_can_be_had(client: FlaskClient) -> None:
    """The address of each leads to all that is known of it."""
    items = client.get("/v1/sizes").json["items"]
    assert {"preemie", "pram", "cot", "throw"} <= {item["name"] for item in items}
    assert not NamedSizeCard(many=True).validate(items)
    assert not NamedSizeAnswer().validate(client.get(items[0]["href"]).json)


def test_another_name_leads_to_the_same_size(client: FlaskClient) -> None:
    """A crib blanket in the US is a cot blanket in the UK."""
    assert client.get("/v1/sizes/crib").json == client.get("/v1/sizes/cot").json
    assert client.get("/v1/sizes/crib").json["href"] == "/v1/sizes/cot"


def test_a_size_that_there_is_not_is_not_found(client: FlaskClient) -> None:
    """With the nearest name."""
    answer = client.get("/v1/sizes/thrrow")
    assert (answer.status_code, answer.json["hint"]) == (404, "Probably meant: throw.")


def test_a_plan_takes_a_name_or_both_sides(client: FlaskClient) -> None:
    """Neither, or a side in both units, is refused at its place."""
    assert client.post("/v1/plans", json=BLANKET | {"size": {"named": "pram"}}).status_code == 200
    both = {"named": "pram", "width_cm": 70, "width_in": 28}
    for size, pointer in (({}, "/size/width_cm"), (both, "/size/width_cm"), ({"named": "pramm"}, "/size/named")):
        answer = client.post("/v1/plans", json=BLANKET | {"size": size})
        assert answer.status_code == 422
        assert pointer in [each["pointer"] for each in answer.json["errors"]]
