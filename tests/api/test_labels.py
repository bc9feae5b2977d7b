"""`POST /v1/labels`: a composition, the words of each market, and what is not known."""

from __future__ import annotations

from typing import Any

import pytest
from flask.testing import FlaskClient

from counterpane.api.examples import LABEL
from counterpane_schema.label import LabelAnswer


def wool(**more: Any) -> dict[str, Any]:
    """Return a yarn of wool."""
    return {"fibre": [{"fibre": "wool", "percent": 100}], **more}


def test_the_examples_have_the_agreed_members(client: FlaskClient) -> None:
    """The second is printed in Regulation (EU) No 1007/2011, Annex VIII, chapter 3, section IV, variant 1."""
    answers = [client.post("/v1/labels", json=example.body).json for example in LABEL]
    assert all(set(answer) == set(LabelAnswer().fields) for answer in answers)
    assert answers[1]["labels"][0]["fibres"] == ["48.4 % polyamide, 40.6 % cotton, 11.0 % wool"]
    assert [each["hundredths"] for each in answers[1]["composition"]["fibres"]] == [48.37, 40.66, 10.97]


def test_exact_shares_are_fractions(client: FlaskClient) -> None:
    """A third stays a third, and the percentages make 100."""
    yarns = [wool(grams=1), {"grams": 2, "fibre": [{"fibre": "cotton", "percent": 100}]}]
    fibres = client.post("/v1/labels", json={"yarns": yarns}).json["composition"]["fibres"]
    assert [(each["fibre"], each["exact"], each["percent"]) for each in fibres] == [
        ("cotton", "200/3", 67),
        ("wool", "100/3", 33),
    ]


def test_grams_that_are_not_known_give_bounds_and_no_label(client: FlaskClient) -> None:
    """The answer says whom to ask, and never a figure."""
    yarns = [wool(grams=300), {"name": "edge", "fibre": [{"fibre": "cotton", "percent": 100}]}]
    answer = client.post("/v1/labels", json={"yarns": yarns, "markets": ["UK"]}).json
    assert answer["composition"]["known"] is False
    assert {each["fibre"]: each["between"] for each in answer["composition"]["fibres"]} == {
        "cotton": [0, 100],
        "wool": [0, 100],
    }
    assert answer["labels"][0]["fibres"] is None
    assert "fibre" in answer["labels"][0]["missing"]
    assert "edge" in answer["not_known"][0]["what"]


def test_bounds_are_rounded_outwards(client: FlaskClient) -> None:
    """A third of something unknown leaves 66.6 to 100 %: the bounds hold what may be."""
    yarns = [wool(grams=2), {"name": "edge", "grams": 1}]
    fibres = client.post("/v1/labels", json={"yarns": yarns}).json["composition"]["fibres"]
    assert fibres[0]["between"] == [66.6, 100]


def test_a_label_in_a_language_that_is_not_kept_is_not_known(client: FlaskClient) -> None:
    """No words are made up."""
    answer = client.post("/v1/labels", json={"yarns": [wool()], "markets": ["CN", "UK"]}).json
    assert [label["fibres"] for label in answer["labels"]] == [None, ["100% wool"]]
    assert any("CN" in each["what"] for each in answer["not_known"])


def test_care_is_the_mildest_of_the_yarns(client: FlaskClient) -> None:
    """A tender edge sets the washing of the whole, and a ward that washes at 60 degrees is told."""
    care = {"bleaching": "none", "tumble_drying": "low", "ironing": "150", "dry_cleaning": "P"}
    yarns = [
        {"name": "body", "grams": 300, "superwash": True, **wool(care={**care, "washing": "machine 60"})},
        {"name": "edge", "grams": 30, "superwash": True, **wool(care={**care, "washing": "machine 40 mild"})},
    ]
    answer = client.post("/v1/labels", json={"yarns": yarns, "markets": ["AU"]}).json
    assert answer["care"][0] == {
        "heading": "washing",
        "group": "washing",
        "value": "machine 40 mild",
        "says": "Machine wash at 40 °C at most, mild process",
        "at_most": "machine 40 mild",
        "untold": [],
        "set_by": ["edge"],
    }
    assert answer["labels"][0]["care"][0] == "Machine wash at 40 °C at most, mild process"
    assert answer["labels"][0]["missing"] == []
    wash = {"method": "machine, mild process, tumble dry", "temp_c": 40}
    inputs = {name: value for name, value in answer["safety_inputs"].items() if value is not None}
    fibres = [{"name": "wool", "pct": 100}]
    assert inputs == {"fibres": fibres, "superwash": True, "wash": wash, "decoration_pct": 0}
    ward = client.post("/v1/labels", json={"yarns": yarns, "washed": {"washing": "machine 60"}}).json
    assert [each["rule"] for each in ward["findings"] if each["severity"] == "error"] == ["washed-harder-than-borne"]


def test_care_that_a_yarn_does_not_tell_is_not_known(client: FlaskClient) -> None:
    """Not printed, not guessed, and asked for."""
    yarns = [wool(grams=1, care={"washing": "hand 30"}), wool(grams=1, name="edge")]
    answer = client.post("/v1/labels", json={"yarns": yarns, "markets": ["AU"]}).json
    assert (answer["care"][0]["value"], answer["care"][0]["untold"]) == (None, ["edge"])
    assert answer["labels"][0]["care"] is None
    assert answer["labels"][0]["missing"] == ["care"]
    assert any("edge does not tell any" in each["what"] for each in answer["not_known"])


def test_the_safety_rules_hear_of_every_fibre(client: FlaskClient) -> None:
    """By name without a share where grams are not known, by its word where it is no legal name, and never in part."""

    def fibres(*yarns: dict[str, Any]) -> Any:
        return client.post("/v1/labels", json={"yarns": list(yarns)}).json["safety_inputs"]["fibres"]

    odd = {"fibre": [{"fibre": "brushed alpaca", "percent": 100}]}
    assert fibres(wool(grams=1), odd) == [{"name": "wool", "pct": None}, {"name": "brushed alpaca", "pct": None}]
    assert fibres(wool(grams=1), {"grams": 1}) is None
    trim = {"grams": 1, "left_out": "decoration", "fibre": [{"fibre": "metal", "percent": 100}]}
    assert fibres(wool(grams=99), trim)[1] == {"name": "metallised fibre", "pct": 1}


def test_shares_that_do_not_end_are_no_wrong_label(client: FlaskClient) -> None:
    """Thirds are sent to the safety rules so that they make 100, and the rule on wrong labels has nothing to say."""
    yarns = [wool(grams=1), {"grams": 2, "fibre": [{"fibre": "cotton", "percent": 100}]}]
    body = {"yarns": yarns, "claims": ["soft"], "stated": {"maker": "A. Maker", "address": "1 Lane", "batch": "7"}}
    inputs = client.post("/v1/labels", json=body).json["safety_inputs"]
    assert [each["pct"] for each in inputs["fibres"]] == [66.6667, 33.3333]
    assert (inputs["says_pure"], inputs["label"]) == (False, ["fibre", "maker", "batch", "bilingual"])
    safety = client.post("/v1/safety", json={**inputs, "sold": True, "markets": ["UK"]}).json
    assert {"R38", "R39"} <= set(safety["assessed"])
    pure = client.post("/v1/labels", json={**body, "claims": ["pure wool"]}).json["safety_inputs"]
    found = client.post("/v1/safety", json=pure).json["findings"]
    assert "fibre-label-wrong" in {finding["rule"] for finding in found}


def test_the_label_feeds_the_safety_rules(client: FlaskClient) -> None:
    """What a label works out can be sent to the safety rules as it stands; what is not known stays null."""
    for example in LABEL:
        inputs = client.post("/v1/labels", json=example.body).json["safety_inputs"]
        assert client.post("/v1/safety", json=inputs).status_code == 200


def test_next_to_nothing_is_something(client: FlaskClient) -> None:
    """The smallest binary number is a mass like any other: its yarn is there, as a trace."""
    yarns = [wool(grams=5e-324), {"grams": 1, "fibre": [{"fibre": "cotton", "percent": 100}]}]
    fibres = client.post("/v1/labels", json={"yarns": yarns}).json["composition"]["fibres"]
    assert [(each["fibre"], each["percent"]) for each in fibres] == [("cotton", 100), ("wool", 0)]


@pytest.mark.parametrize(
    ("body", "pointer"),
    [
        ({}, "/yarns"),
        ({"yarns": []}, "/yarns"),
        ({"yarns": [{"grams": 0}]}, "/yarns/0/grams"),
        ({"yarns": [{"fibre": [{"fibre": "wool", "percent": 101}]}]}, "/yarns/0/fibre/0/percent"),
        ({"yarns": [{"fibre": [{"fiber": "wool", "percent": 100}]}]}, "/yarns/0/fibre/0/fiber"),
        ({"yarns": [wool()], "places": 3}, "/places"),
        ({"yarns": [wool()], "markets": ["MARS"]}, "/markets/0"),
        ({"yarns": [wool()] * 101}, "/yarns"),
    ],
)
def test_what_does_not_fit_is_refused_at_its_place(client: FlaskClient, body: dict[str, Any], pointer: str) -> None:
    """With the next step."""
    answer = client.post("/v1/labels", json=body)
    assert answer.status_code == 422
    assert pointer in {error["pointer"] for error in answer.json["errors"]}
