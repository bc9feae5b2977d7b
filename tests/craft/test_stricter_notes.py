"""Which of two safety notes is stricter: house rule, unknown is never fine."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import pytest

from counterpane.craft.component import Component, Measure, MeasuredOpening, Note
from counterpane.craft.component.stricter import stricter

ONE, TWO, LONG = Measure("1", "yarn-over"), Measure("2", "yarn-over"), Measure("3", "stitches")


@pytest.mark.parametrize(
    ("own", "other", "wins"),
    [
        ("none", "not known", True),
        ("none", ONE, True),
        ("not known", ONE, True),
        (ONE, TWO, True),
        (TWO, LONG, True),
        ("none", "none", False),
        ("not known", "none", False),
        (ONE, "not known", False),
        (TWO, ONE, False),
        (ONE, ONE, False),
    ],
)
def test_what_was_found_beats_what_is_not_known_and_that_beats_none(
    starters: Mapping[str, Component], own: Note, other: Note, wins: bool
) -> None:
    """The larger of two in one unit; two in different units both stand."""
    waffle = starters["waffle"]
    ours, theirs = (replace(waffle, safety=replace(waffle.safety, openings=note)) for note in (own, other))
    assert stricter(ours, theirs) == ({"openings": other} if wins else {})


def test_the_larger_measured_opening_is_stricter(starters: Mapping[str, Component]) -> None:
    """Than a smaller one, and than none at all."""
    small, large = (MeasuredOpening(mm, "a", "2026-01-01", "wool", "20", "by hand") for mm in ("6.9", "10"))
    waffle = starters["waffle"]
    ours, theirs = replace(waffle, measured=(small,)), replace(waffle, measured=(small, large))
    assert stricter(ours, theirs) == stricter(waffle, theirs) == {"measured": Measure("10", "mm")}
    assert stricter(theirs, ours) == stricter(theirs, waffle) == {}
