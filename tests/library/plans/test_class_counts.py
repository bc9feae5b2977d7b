"""One sheet of counts for a class of several gauges."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from counterpane.craft.component import Component
from counterpane.craft.constructions import CannotBePlanned
from counterpane.library.plans.bench import Bench
from counterpane.library.plans.class_counts import plan_class
from counterpane.library.plans.planning import answer_of
from counterpane.library.values import BadInput
from counterpane.seeding.known import load_known

REQUEST: dict[str, Any] = {
    "parts": {"body": "waffle"},
    "size": {"width_cm": 70, "length_cm": 90},
    "yarn": {"ball_g": 50, "ball_m": 115},
}


@pytest.fixture(scope="module")
def bench(starters: Mapping[str, Component]) -> Bench:
    """Return a bench of the starters."""
    return Bench(starters.__getitem__, load_known())


def _knitter(stitches: int, rows: int, **more: Any) -> dict[str, Any]:
    return {"gauge": {"stitches": stitches, "rows": rows, "over_cm": 10}, **more}


@settings(max_examples=10, deadline=None)
@given(stitches=st.integers(14, 34), rows=st.integers(18, 48))
def test_each_row_is_the_plan_at_that_gauge(stitches: int, rows: int, bench: Bench) -> None:
    """Cast-on, rows, size and yarn are those of the whole answer of a plan."""
    knitter = _knitter(stitches, rows)
    row = plan_class(REQUEST | {"knitters": [_knitter(22, 30), knitter]}, bench)["knitters"][1]
    own = REQUEST | {"gauge": knitter["gauge"]}
    try:
        plan = answer_of(bench.made(own), own, bench.known)
    except CannotBePlanned as refusal:
        assert [each["message"] for each in row["findings"]] == [each.message for each in refusal.findings]
        return
    assert row["cast_on"] == plan["counts"]["cast_on"]
    assert row["parts"] == [{"name": part["name"], "rows": part["rows"]} for part in plan["sections"]]
    assert (row["finished"], row["yarn"]["metres"]) == (plan["finished"], plan["yarn"]["metres"])


def test_counts_by_hand(bench: Bench) -> None:
    """70 cm at 22 over 10 cm are 154 stitches; waffle between 6 and 6 takes 3n + 13, so 154 = 3 x 47 + 13."""
    row = plan_class(REQUEST | {"knitters": [_knitter(22, 30, label="Ines")]}, bench)["knitters"][0]
    parts = {"body": "waffle", "sides": {"component": "garter-border", "stitches": 6}}
    sided = plan_class(REQUEST | {"parts": parts, "knitters": [_knitter(22, 30)]}, bench)["knitters"][0]
    assert row["label"] == "Ines"
    assert (sided["cast_on"], sided["label"]) == (154, "A")


def test_one_who_has_no_plan_gets_the_reason_and_the_others_their_counts(bench: Bench) -> None:
    """At 1 row over 10 cm no 90 cm come out."""
    rows = plan_class(REQUEST | {"knitters": [_knitter(22, 1), _knitter(22, 30)]}, bench)["knitters"]
    assert (rows[0]["cast_on"], rows[0]["yarn"]) == (None, None)
    assert rows[0]["findings"]
    assert rows[1]["cast_on"]


def test_a_gauge_that_measures_nothing_is_refused_with_its_place(bench: Bench) -> None:
    """Among the knitters."""
    with pytest.raises(BadInput) as refused:
        plan_class(REQUEST | {"knitters": [_knitter(22, 30), _knitter(0, 30)]}, bench)
    assert refused.value.pointer == "/knitters/1/gauge/stitches"
