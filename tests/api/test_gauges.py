"""Swatches over HTTP."""

from __future__ import annotations

from typing import Any

import pytest
from flask.testing import FlaskClient

from counterpane.api.examples import BLANKET, SWATCHES
from counterpane_schema.gauge import GaugeAnswer

ONE = {"stitches": 22, "rows": 30, "over_cm": 10}


def test_the_answer_has_the_agreed_members(client: FlaskClient) -> None:
    """And its gauges go into a plan request as they are."""
    answer = client.post("/v1/gauges", json=SWATCHES)
    assert answer.status_code == 200
    assert not GaugeAnswer().validate(answer.json)
    gauges = [each["gauge"] for each in answer.json["gauges"]]
    assert client.post("/v1/plans", json=BLANKET | {"gauge": gauges}).status_code == 200


def test_what_reading_leaves_open_of_sixty_centimetres(client: FlaskClient) -> None:
    """D03 to D07: worst case, standard uncertainty, tolerance and window, to 0.01 (worked vectors, no source)."""
    asked = {"swatches": [ONE], "size": {"width_cm": 60, "length_cm": 80}, "within_cm": 0.5}
    width = client.post("/v1/gauges", json=asked).json["gauges"][0]["size"]["width"]
    assert width["worst_cm"] == [58.73, 61.3]
    assert (width["standard_error_cm"], width["tolerance_cm"], width["window_cm"]) == (0.52, 1.05, 20.97)


def test_what_a_wash_did_is_read_off_both_counts(client: FlaskClient) -> None:
    """D10 backwards: 21 by 28 before, 420/19 by 700/23 after, are 0.95 and 0.92."""
    after = {"stitches": 22.105263157894736, "rows": 30.434782608695652, "over_cm": 10}
    swatch = after | {"before": {"stitches": 21, "rows": 28, "over_cm": 10}}
    wash = client.post("/v1/gauges", json={"swatches": [swatch]}).json["gauges"][0]["wash"]
    assert wash["factors"] == {"width": 0.95, "length": 0.92}
    assert wash["change_percent"] == {"width": -5.0, "length": -8.0}


@pytest.mark.parametrize(
    ("change", "pointer"),
    [
        ({"swatches": []}, "/swatches"),
        ({"swatches": [ONE | {"stitches": 0}]}, "/swatches/0/stitches"),
        ({"swatches": [ONE | {"washed": "yes"}]}, "/swatches/0/washed"),
        ({"swatches": [ONE | {"swatches": 0}]}, "/swatches/0/swatches"),
        ({"swatches": [ONE | {"before": {"stitches": 1, "rows": 1}}]}, "/swatches/0/before/over_cm"),
        ({"size": {"named": "pramm"}}, "/size/named"),
        ({"within_cm": 0}, "/within_cm"),
    ],
)
def test_what_is_no_swatch_is_refused(client: FlaskClient, change: Any, pointer: str) -> None:
    """D11 among others, each with its place."""
    answer = client.post("/v1/gauges", json={"swatches": [ONE]} | change)
    assert answer.status_code == 422
    assert pointer in [each["pointer"] for each in answer.json["errors"]]


@pytest.mark.parametrize(
    ("count", "status"), [(10**15, 422), (10**6, 200), (1, 200), (0.25, 200), (0.001, 200), (0.000001, 422)]
)
def test_a_count_that_nobody_knits_gets_an_answer(client: FlaskClient, count: float, status: int) -> None:
    """Beyond all measure it is refused; a worst case that nothing bounds is null."""
    asked = {"swatches": [ONE | {"stitches": count}], "size": {"width_cm": 60, "length_cm": 80}}
    answer = client.post("/v1/gauges", json=asked)
    assert answer.status_code == status
    if status == 200:
        assert (answer.json["gauges"][0]["size"]["width"]["worst_cm"][1] is None) == (count <= 0.25)
