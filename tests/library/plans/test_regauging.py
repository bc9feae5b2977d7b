"""A recipe at another gauge: the same size, the same counts, the change of shape."""

from __future__ import annotations

from typing import Any

import pytest

from counterpane.library.plans.bench import Bench, bench_of
from counterpane.library.plans.regauging import plan_regauge
from counterpane.library.values import BadInput
from counterpane.wiring import open_library

FOURS = "Row 1 (RS): *k2, p2; rep from * to last 3 sts, k3.\nRow 2 (WS): p3, *k2, p2; rep from * to end."
REQUEST: dict[str, Any] = {
    "parts": {"body": {"text": FOURS}, "sides": {"component": "garter-border", "stitches": 9}},
    "gauge": {"stitches": 22, "rows": 30, "over_cm": 10},
    "size": {"width_cm": 60.45, "length_cm": 80},
}


@pytest.fixture(scope="module")
def bench() -> Bench:
    """Return the bench of a library with the starters."""
    return bench_of(open_library(), REQUEST)


def to(bench: Bench, stitches: float, rows: float, **rest: Any) -> dict[str, Any]:
    """Return the request at another gauge over 10 cm."""
    return plan_regauge(REQUEST | {"to": {"stitches": stitches, "rows": rows, "over_cm": 10}} | rest, bench)


def test_the_same_size_at_another_gauge(bench: Bench) -> None:
    """D08: 133 stitches in 4n + 21 at 22 become 109 at 18 (worked vectors, no source)."""
    answer = to(bench, 18, 25)
    assert answer["before"]["counts"]["cast_on"] == 133
    assert answer["same_size"]["counts"]["cast_on"] == 109


def test_the_same_counts_at_another_gauge(bench: Bench) -> None:
    """D09: 133 stitches at 18 are 73.89 cm."""
    same = to(bench, 18, 25)["same_counts"]
    assert (same["counts"]["cast_on"], same["finished"]["width_cm"]) == (133, 73.9)


def test_the_change_of_shape_is_that_of_the_gauges(bench: Bench) -> None:
    """22 by 30 against 18 by 28: (22 x 28) / (18 x 30) is 14.1 % wider for the length, body and piece alike."""
    shape = to(bench, 18, 28)["shape"]
    assert (shape["percent"], shape["body_percent"]) == (14.1, 14.1)
    assert to(bench, 11, 15)["shape"]["percent"] == 0


def test_another_gauge_of_one_part_alone_changes_body_and_piece_apart(bench: Bench) -> None:
    """With the borders at a gauge of their own the piece changes less than its body, or more."""
    two = [
        {"stitches": 18, "rows": 25, "over_cm": 10},
        {"in": "garter-border", "stitches": 22, "rows": 44, "over_cm": 10},
    ]
    shape = plan_regauge(REQUEST | {"to": two}, bench)["shape"]
    assert shape["percent"] != shape["body_percent"]


def test_a_same_size_that_cannot_be_made_says_why(bench: Bench) -> None:
    """At one row a centimetre the borders alone are longer than the piece."""
    same = to(bench, 18, 1)["same_size"]
    assert (same["counts"], same["findings"][0]["rule"]) == (None, "length-out-of-reach")


def test_a_gauge_of_nothing_is_refused_at_its_place(bench: Bench) -> None:
    """With the pointer into the request."""
    with pytest.raises(BadInput) as refused:
        to(bench, 0, 25)
    assert refused.value.pointer == "/to/stitches"
