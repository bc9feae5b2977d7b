"""A piece in the middle, over a library."""

from __future__ import annotations

from typing import Any

import pytest

from counterpane.api.examples import BLANKET, IN_YARN
from counterpane.library.plans import planning
from counterpane.library.plans.bench import bench_of
from counterpane.library.services import Services
from counterpane.library.values import BadInput
from counterpane.library.yarn.yarn_planning import plan_midway
from counterpane.wiring import open_library
from counterpane_schema.faults import faults_of
from counterpane_schema.midway import MidwayRequest


@pytest.fixture(scope="module")
def library() -> Services:
    """Return a library with the starters."""
    return open_library()


def asked(library: Services, at: dict[str, Any], request: dict[str, Any] = IN_YARN) -> dict[str, Any]:
    """Return the answer to a request."""
    content = request | {"at": at}
    assert not faults_of(MidwayRequest(), content)
    return plan_midway(content, bench_of(library, content))


def test_what_was_used_beats_the_swatch(library: Services) -> None:
    """A piece that has taken less than planned has more rows left."""
    at = {"rows_done": 112, "left_g": 200}
    swatch, piece = (asked(library, at | used)["yarn"] for used in ({}, {"used_g": 120}))
    assert [each["to_the_end"]["basis"] for each in (swatch, piece)] == ["weighed swatch", "this piece"]
    assert swatch["rows_left"]["sure"] < piece["rows_left"]["sure"] <= piece["rows_left"]["likely"]


def test_the_piece_as_planned_is_sure_likely_or_short(library: Services) -> None:
    """By the high end, by the likely figure, or by neither; the reserve is kept."""
    at = {"rows_done": 112, "used_g": 150, "reserve_g": 5}
    rest = asked(library, at | {"left_g": 300})["yarn"]["to_the_end"]
    for end, said in (("high", "sure"), ("likely", "likely"), ("low", "short")):
        assert asked(library, at | {"left_g": rest[end] + 5.1})["yarn"]["enough"] == said


def test_the_top_is_started_when_the_yarn_is_what_it_takes_and_the_reserve(library: Services) -> None:
    """The high end of the top border, the bind-off and an end, and what is to stay in hand."""
    yarn = asked(library, {"rows_done": 112, "left_g": 200, "reserve_g": 7})["yarn"]
    assert yarn["start_next_at_g"] == pytest.approx(yarn["after_the_body"]["high"] + 7, abs=0.11)


def test_in_the_top_border_only_the_end_is_told(library: Services) -> None:
    """No rows give way there."""
    plan = planning.plan(library, IN_YARN)
    yarn = asked(library, {"rows_done": plan["finished"]["rows"] - 4, "left_g": 50})["yarn"]
    assert (yarn["rows_left"], yarn["start_next_at_g"], yarn["enough"]) == (None, None, "sure")


def test_a_piece_that_measures_as_planned_is_planned_as_before(library: Services) -> None:
    """The gauge that came out is the one asked for, and so is every count."""
    plan = planning.plan(library, BLANKET)
    measured = {"width_cm": plan["sections"][1]["width_cm"], "length_cm": 15, "rows": 45}
    answer = asked(library, {"rows_done": 61, "measured": measured}, BLANKET)
    assert answer["gauge"]["true"]["rows"] == answer["gauge"]["planned"]["rows"]
    assert answer["again"]["counts"] == plan["counts"]
    assert [each["rows"] for each in answer["again"]["sections"]] == [each["rows"] for each in plan["sections"]]


def test_a_piece_on_the_needle_is_held_against_the_gauge_before_the_wash(library: Services) -> None:
    """It will shrink as the swatch did: one that measures as the swatch before its wash comes out as planned."""
    before = {"stitches": 20, "rows": 27, "over_cm": 10}
    gauge = {"stitches": 22, "rows": 30, "over_cm": 10, "washed": True, "before": before}
    request = BLANKET | {"gauge": gauge, "parts": {"body": "waffle"}}
    plan = planning.plan(library, request)
    wide = plan["counts"]["cast_on"] / 20 * 10
    measured = {"width_cm": round(wide, 2), "length_cm": 20, "rows": 54}
    answer = asked(library, {"rows_done": 66, "measured": measured}, request)
    assert answer["gauge"]["true"] == answer["gauge"]["planned"]


@pytest.mark.parametrize("factor", [0.9, 0.97, 1.03, 1.1])
def test_the_cast_on_is_kept_and_the_width_is_what_was_measured(library: Services, factor: float) -> None:
    """Rows are found anew for the length that was asked for; the body's gauge tells the same as the tape."""
    plan = planning.plan(library, IN_YARN)
    width = round(plan["sections"][1]["width_cm"] * factor, 1)
    measured = {"width_cm": width, "length_cm": 15, "rows": 50}
    answer = asked(library, {"rows_done": 66, "measured": measured})
    again = answer["again"]
    assert again["counts"]["cast_on"] == plan["counts"]["cast_on"]
    assert again["sections"][1]["width_cm"] == pytest.approx(width, abs=0.11)
    assert answer["gauge"]["true"]["rows"] == pytest.approx(50 / 15 * 10, abs=0.06)
    assert abs(again["finished"]["length_cm"] - 90) <= 1


def test_the_length_of_all_that_is_worked_tells_too(library: Services) -> None:
    """Without a number of rows the length is that from the cast-on."""
    plan = planning.plan(library, BLANKET)
    sections = plan["sections"]
    reached = sections[0]["length_cm"] + 60 / 30 * 10
    at = {"rows_done": sections[0]["rows"] + 60, "measured": {"length_cm": reached}}
    assert asked(library, at, BLANKET)["gauge"]["true"]["rows"] == pytest.approx(30, abs=0.2)


def test_the_yarn_of_the_plan_anew_rests_on_the_piece(library: Services) -> None:
    """Where its yarn was weighed."""
    measured = {"width_cm": 72, "length_cm": 14.6, "rows": 44}
    again = asked(library, {"rows_done": 60, "used_g": 75, "measured": measured})["again"]
    assert again["yarn"]["grams"]["basis"] == "this piece"


@pytest.mark.parametrize(
    ("request_", "at", "pointer"),
    [
        (IN_YARN, {"rows_done": 5000, "left_g": 20}, "/at/rows_done"),
        (BLANKET, {"rows_done": 50, "left_g": 20}, "/at/used_g"),
        (IN_YARN, {"rows_done": 50, "left_g": 20, "used_g": 1}, "/at/used_g"),
        (IN_YARN, {"rows_done": 50, "left_g": 20, "colour": "A"}, "/at/colour"),
        (IN_YARN, {"rows_done": 0, "measured": {"length_cm": 20}}, "/at/measured/length_cm"),
    ],
)
def test_what_does_not_belong_to_the_piece_is_refused_at_its_place(
    library: Services, request_: dict[str, Any], at: dict[str, Any], pointer: str
) -> None:
    """With the next step."""
    with pytest.raises(BadInput) as refused:
        asked(library, at, request_)
    assert refused.value.pointer == pointer and refused.value.hint
