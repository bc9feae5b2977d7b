"""`counterpane regauge`: both ways to another gauge."""

from __future__ import annotations

import json
from typing import Any

from cli.conftest import Type

REQUEST: dict[str, Any] = {
    "parts": {"body": "waffle"},
    "gauge": {"stitches": 22, "rows": 30, "over_cm": 10, "in": "waffle"},
    "size": {"width_cm": 70, "length_cm": 90},
}


def test_a_person_reads_both_ways_and_the_change_of_shape(typed: Type) -> None:
    """A coarser gauge with more rows for its stitches makes the same counts wider for their length."""
    done = typed("regauge", "-", "--stitches", "18", "--rows", "28", "--in", "waffle", stdin=json.dumps(REQUEST))
    assert done.status == 0
    assert [line.split()[:2] for line in done.out.splitlines()[3:6]] == [
        ["as", "it"],
        ["same", "size"],
        ["same", "counts"],
    ]
    assert "14.1 % wider for its length" in done.out


def test_the_same_gauge_keeps_the_shape_in_inches_too(typed: Type) -> None:
    """22 over 10 cm are 22.352 over 4 in."""
    window = ("--over-in", "4", "--stitches", "22.352", "--rows", "30.48")
    assert "keep their shape" in typed("regauge", "-", *window, stdin=json.dumps(REQUEST)).out


def test_a_same_size_that_cannot_be_made_ends_with_1(typed: Type) -> None:
    """With what stands against it."""
    done = typed("regauge", "-", "--stitches", "18", "--rows", "1", stdin=json.dumps(REQUEST))
    assert done.status == 1
    assert "length-out-of-reach" in done.out


def test_a_gauge_that_is_no_number_ends_with_2(typed: Type) -> None:
    """With its place."""
    done = typed("regauge", "-", "--stitches", "many", "--rows", "25", stdin=json.dumps(REQUEST))
    assert (done.status, done.out) == (2, "")
    assert "/to/stitches" in done.err
