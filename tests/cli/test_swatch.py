"""`counterpane swatch`: what to knit and to measure first."""

from __future__ import annotations

import json
from typing import Any

from cli.conftest import Type
from counterpane.library.plans.bench import bench_of
from counterpane.library.plans.swatches import write_swatches
from counterpane.wiring import open_library

REQUEST: dict[str, Any] = {
    "parts": {"body": "waffle"},
    "gauge": {"stitches": 22, "rows": 30, "over_cm": 10, "in": "waffle"},
    "size": {"width_cm": 70, "length_cm": 90},
}


def test_a_person_reads_the_steps_of_each_swatch(typed: Type) -> None:
    """With the guess said to be one."""
    said = " ".join(typed("swatch", "-", "--terms", "uk", stdin=json.dumps(REQUEST)).out.split())
    assert "Garter border (bottom, sides, top)" in said
    assert "a guess from another fabric" in said
    assert "common practice, no source" in said


def test_the_json_is_what_the_api_answers(typed: Type) -> None:
    """The same of the same request."""
    done = typed("swatch", "-", "--json", stdin=json.dumps(REQUEST))
    assert json.loads(done.out) == write_swatches(REQUEST, bench_of(open_library(), REQUEST))


def test_a_plan_that_cannot_be_made_ends_with_1(typed: Type) -> None:
    """With the problem document where JSON is asked for."""
    parts = {"body": "basket-weave", "bottom": {"component": "garter-rib-border", "rows": 12}}
    done = typed("swatch", "-", "--json", stdin=json.dumps(REQUEST | {"parts": parts}))
    assert (done.status, json.loads(done.out)["status"]) == (1, 422)
    assert typed("swatch", "-", stdin=json.dumps(REQUEST | {"parts": parts})).status == 1


def test_a_person_is_told_of_which_part_there_is_no_swatch(typed: Type) -> None:
    """Of a side border of one stitch under a cast-on of two, by `swatch` and by `plan`."""
    parts = {"body": "waffle", "cast_on": "cable-cast-on", "sides": {"text": "Row 1 (RS): k1.\nRow 2 (WS): p1."}}
    for command in ("swatch", "plan"):
        said = " ".join(typed(command, "-", stdin=json.dumps(REQUEST | {"parts": parts})).out.split())
        assert "(sides)" in said
        assert "It has no swatch: alone it has too few stitches for the cast-on." in said
