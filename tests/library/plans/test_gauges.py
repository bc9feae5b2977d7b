"""Swatches read: the gauge of each texture, what stays open, and the same gauge in a plan."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from counterpane.library.patterns import pages
from counterpane.library.patterns.patterns import recheck
from counterpane.library.plans import gauges, planning
from counterpane.library.services import Services
from counterpane.library.values import BadInput
from counterpane.press.text import as_text
from counterpane.seeding.facts import facts_by_name
from counterpane.wiring import open_library

FACTS = facts_by_name()
SWATCH: dict[str, Any] = {"in": "garter", "stitches": 22, "rows": 30, "over_cm": 10}
SIZE = {"width_cm": 60, "length_cm": 80}
REQUEST: dict[str, Any] = {"parts": {"body": "garter"}, "gauge": SWATCH, "size": SIZE}


@pytest.fixture(scope="module")
def library() -> Services:
    """Return a library with the starters."""
    return open_library()


def read(*swatches: dict[str, Any], **asked: Any) -> dict[str, Any]:
    """Return what the swatches say."""
    return gauges.read({"swatches": swatches, **asked}, FACTS)


def test_swatches_of_one_texture_are_taken_together() -> None:
    """In the order in which the textures come."""
    answer = read(SWATCH, SWATCH | {"in": "waffle"}, SWATCH | {"stitches": 23})
    assert [(each["in"], each["per_10_cm"]["stitches"]) for each in answer["gauges"]] == [
        ("garter", 22.5),
        ("waffle", 22),
    ]
    assert answer["gauges"][0]["apart"]["width_percent"] == 4.55


def test_swatches_further_apart_than_reading_explains_are_told() -> None:
    """22 and 22.5 may be one gauge, 22 and 24 are not."""
    near, far = (read(SWATCH, SWATCH | {"stitches": stitches})["gauges"][0] for stitches in (22.5, 24))
    assert (near["apart"]["more_than_reading"], far["apart"]["more_than_reading"]) == (False, True)


def test_the_gauge_of_an_answer_makes_the_same_plan(library: Services) -> None:
    """Three swatches in a list, or what is read off them, come to the same counts and tolerance."""
    listed = [SWATCH, SWATCH | {"rows": 31}, SWATCH | {"stitches": 22.5}]
    one = read(*listed)["gauges"][0]["gauge"]
    by_list, by_one = (planning.plan(library, REQUEST | {"gauge": gauge}) for gauge in (listed, one))
    assert by_list["counts"] == by_one["counts"]
    assert by_list["finished"] == by_one["finished"]


def test_several_swatches_bring_the_tolerance_of_a_plan_down(library: Services) -> None:
    """Four that agree halve it."""
    one = planning.plan(library, REQUEST)["finished"]["tolerance_cm"]["width"]
    four = planning.plan(library, REQUEST | {"gauge": [SWATCH] * 4})["finished"]["tolerance_cm"]["width"]
    assert (one, four) == (1.0, 0.5)


def test_the_worst_case_of_a_plan_is_wider_than_its_tolerance(library: Services) -> None:
    """Both ends lie beyond two standard uncertainties."""
    finished = planning.plan(library, REQUEST)["finished"]
    for side in ("width", "length"):
        size, give = finished[f"{side}_cm"], finished["tolerance_cm"][side]
        assert finished["worst_cm"][side][0] < size - give < size + give < finished["worst_cm"][side][1]


def test_a_swatch_counted_before_its_wash_tells_the_size_on_the_needle(library: Services) -> None:
    """At 21 by 28 before and 22 by 30 after, the piece shrinks by 21/22 and 28/30."""
    plan = planning.made(library, REQUEST | {"gauge": SWATCH | {"before": {"stitches": 21, "rows": 28, "over_cm": 10}}})
    for section in plan.sections:
        assert section.unwashed_cm is not None
        assert section.cm_width / section.unwashed_cm[0] == Fraction(21, 22)
        assert section.cm_length / section.unwashed_cm[1] == Fraction(28, 30)


def test_a_pattern_gives_the_lengths_before_the_wash_where_they_are_known(library: Services) -> None:
    """A knitter measures on the needle, not after the wash."""
    gauge = SWATCH | {"before": {"stitches": 21, "rows": 28, "over_cm": 10}}
    washed = pages.pattern(library, REQUEST | {"gauge": gauge}, "text")["text"]
    assert "on the needle, and 80.0 cm (31½ in) after the wash" in " ".join(washed.split())
    assert "after the wash" not in pages.pattern(library, REQUEST, "text")["text"]


def test_a_pattern_gives_the_gauge_over_the_window_of_one_swatch(library: Services) -> None:
    """Nobody counts over 40 cm because four swatches were read."""
    text = " ".join(pages.pattern(library, REQUEST | {"gauge": [SWATCH] * 4}, "text")["text"].split())
    assert "22 sts and 30 rows over 10 cm" in text
    assert "over 40 cm" not in text


@pytest.mark.parametrize("before", [None, {"stitches": 21, "rows": 28, "over_cm": 10}])
def test_a_pattern_with_what_was_counted_before_the_wash_checks_clean(library: Services, before: Any) -> None:
    """Two gauges of one fabric are no two sizes and no contradiction."""
    request = REQUEST | {"gauge": SWATCH | {"before": before}}
    pattern = planning.pattern_of(planning.made(library, request), request, library.known)
    assert recheck(pattern, as_text(pattern), library.vocabulary) == ()


def test_a_small_window_and_a_count_before_the_wash_are_warned_of() -> None:
    """Each with the swatch that it is about."""
    findings = read(SWATCH, SWATCH | {"over_cm": 4, "washed": False})["findings"]
    assert [(each["rule"], each["pointer"]) for each in findings] == [
        ("gauge-window-small", "/swatches/1"),
        ("gauge-not-washed", "/swatches/1"),
    ]


@pytest.mark.parametrize("change", [{"stitches": 0}, {"rows": -1}, {"over_cm": 0}, {"before": {"stitches": 0}}])
def test_a_gauge_that_measures_nothing_is_refused(change: dict[str, Any]) -> None:
    """D11: with the place of the swatch."""
    with pytest.raises(BadInput) as refused:
        read(SWATCH | change)
    assert refused.value.pointer.startswith("/swatches/0/")
