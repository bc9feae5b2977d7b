"""Yarn of a plan as JSON values, and what is refused of a request's yarn."""

from __future__ import annotations

from typing import Any

import pytest

from counterpane.api.examples import BLANKET
from counterpane.library.plans import planning
from counterpane.library.services import Services
from counterpane.library.values import BadInput
from counterpane.library.yarn.yarn_requests import yarns_of
from counterpane.wiring import open_library
from counterpane_schema.faults import faults_of
from counterpane_schema.plan import PlanAnswer, PlanRequest

WOOL: dict[str, Any] = {
    "name": "an invented wool",
    "weight": "double knitting",
    "fibre": [{"fibre": "wool", "percent": 75}, {"fibre": "polyamide", "percent": 25}],
    "ball_g": 50,
    "ball_m": 115,
}
FIGURE = {"low", "likely", "high", "basis", "source"}


@pytest.fixture(scope="module")
def library() -> Services:
    """Return a library with the starters."""
    return open_library()


def test_a_plan_without_yarn_has_none(library: Services) -> None:
    """Null asks for none and gets none."""
    assert planning.plan(library, BLANKET)["yarn"] is None


def test_each_figure_has_its_ends_its_basis_and_its_source(library: Services) -> None:
    """By part, by colour and together; parts that are not known are null."""
    yarn = planning.plan(library, BLANKET | {"yarn": WOOL})["yarn"]
    (colour,) = yarn["colours"]
    figures = [yarn["metres"], yarn["grams"], colour["metres"], colour["grams"], colour["loop_mm"]]
    figures += [part[name] for part in colour["parts"] for name in ("metres", "grams")]
    assert all(set(figure) == FIGURE and figure["low"] <= figure["likely"] <= figure["high"] for figure in figures)


def test_the_answer_is_of_the_shape_that_is_described(library: Services) -> None:
    """The schema of the answer takes it, and the schema of the request takes the yarn."""
    request = BLANKET | {"yarn": WOOL}
    answer = planning.plan(library, request)
    assert not faults_of(PlanRequest(), request)
    assert not faults_of(PlanAnswer(), answer | {"safety": {}})


def test_one_yarn_and_a_list_of_one_are_the_same(library: Services) -> None:
    """A list has one yarn for each colour."""
    one, several = (planning.plan(library, BLANKET | {"yarn": yarn})["yarn"] for yarn in (WOOL, [WOOL]))
    assert one == several


def test_fibres_are_read_by_either_name() -> None:
    """`fibre` of the yarn and `fibres` of the safety inputs say the same."""
    other = [{"name": "wool", "pct": 75}, {"name": "polyamide", "pct": 25}]
    (one,), (two,) = yarns_of(WOOL), yarns_of({"fibres": other})
    assert one.fibre == two.fibre


@pytest.mark.parametrize(
    "told",
    [{"tex": 250}, {"metres_per_100g": 400}, {"ball_g": 50, "ball_m": 200}, {"tex": 251, "metres_per_100g": 400}],
)
def test_a_thickness_may_be_told_in_three_ways(told: dict[str, Any]) -> None:
    """400 m to 100 g are 250 tex; labels are rounded, so one in a hundred is let pass."""
    assert round(float(yarns_of(told)[0].tex or 0)) in (250, 251)


@pytest.mark.parametrize(
    ("yarn", "pointer"),
    [
        ({"tex": 250, "metres_per_100g": 300}, "/yarn/metres_per_100g"),
        ({"metres_per_100g": 300, "ball_g": 50, "ball_m": 200}, "/yarn/ball_m"),
        ({"rows": [1, 2]}, "/yarn/every"),
        ({"rows": [1, 9], "every": 8}, "/yarn/every"),
        ({"every": 8}, "/yarn/every"),
        ({"fibre": [], "fibres": []}, "/yarn/fibres"),
        ({"swatch": {"mass_g": 1, "stitches": 20, "rows": 20}}, "/yarn/swatch/scale_g"),
        ([{"colour": "A"}, {"name": "nowhere"}], "/yarn/1"),
        ([{"colour": "MC"}, {"colour": "mc"}], "/yarn/1/colour"),
        ([{"colour": "MC"}, {"colour": "A", "tex": 9, "metres_per_100g": 1}], "/yarn/1/metres_per_100g"),
    ],
)
def test_a_yarn_that_contradicts_itself_is_refused_at_its_place(yarn: Any, pointer: str) -> None:
    """Nothing is chosen silently: the message says where and the hint what to do."""
    with pytest.raises(BadInput) as refused:
        yarns_of(yarn)
    assert refused.value.pointer == pointer and refused.value.hint


def test_a_swatch_in_a_texture_of_no_part_is_refused_at_its_place(library: Services) -> None:
    """The yarn of one texture says little of another."""
    swatch = {"mass_g": 20, "stitches": 40, "rows": 50, "in": "old-shale"}
    with pytest.raises(BadInput) as refused:
        planning.plan(library, BLANKET | {"yarn": WOOL | {"swatch": swatch}})
    assert refused.value.pointer == "/yarn"


def test_notes_say_what_is_not_known(library: Services) -> None:
    """Grams without a thickness, stitches without a figure, an edge without one."""
    body = {"text": "Row 1 (RS): *k4, mb; rep from * to end.\nRow 2: purl."}
    parts = {"body": body, "cast_on": "loop-cast-on"}
    yarn = planning.plan(library, BLANKET | {"parts": parts, "yarn": {"name": "a yarn"}})["yarn"]
    assert yarn["grams"] is None
    assert [note for note in yarn["notes"] if "mb" in note or "Grams" in note or "Loop cast-on" in note] == yarn[
        "notes"
    ][:3]


def test_the_hours_rest_on_the_pace_that_was_given(library: Services) -> None:
    """Else on that of practised knitters; the answer says which."""
    usual, own = (planning.plan(library, BLANKET | more)["time"] for more in ({}, {"pace": {"stitches_a_minute": 10}}))
    assert usual["stitches_a_minute"] == [15, 25] and own["stitches_a_minute"] == [10.0, 10.0]
    assert usual["hours"][1] < own["hours"][0] <= own["hours"][1]
    assert faults_of(PlanRequest(), BLANKET | {"pace": {"stitches_a_minute": 121}})


def test_balls_are_joined_in_order_and_within_the_blanket(library: Services) -> None:
    """As often as the answer says, each by its rows."""
    answer = planning.plan(library, BLANKET | {"yarn": WOOL})
    (colour,) = answer["yarn"]["colours"]
    rows = [join["rows"] for join in colour["joins_at"]]
    assert [join["ball"] for join in colour["joins_at"]] == [*range(2, colour["joins"] + 2)]
    assert rows == sorted(rows) and all(1 <= first <= last <= answer["finished"]["rows"] for first, last in rows)


def test_ends_are_woven_in_by_fibre(library: Services) -> None:
    """What is not known is told with care."""
    wool, unknown = (
        planning.plan(library, BLANKET | {"yarn": yarn})["yarn"]["weaving"]
        for yarn in ({"fibre": [{"fibre": "wool", "percent": 100}], "superwash": False}, {"name": "a yarn"})
    )
    assert wool[0].startswith("Ends of untreated wool") and "not known" in unknown[0]
