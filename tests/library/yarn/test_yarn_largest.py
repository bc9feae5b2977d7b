"""The largest blanket of the yarn at hand, over a library."""

from __future__ import annotations

from typing import Any

import pytest

from counterpane.api.examples import IN_YARN
from counterpane.craft.constructions import CannotBePlanned
from counterpane.library.plans import planning
from counterpane.library.plans.bench import bench_of
from counterpane.library.services import Services
from counterpane.library.values import BadInput
from counterpane.library.yarn.yarn_planning import plan_largest
from counterpane.wiring import open_library


@pytest.fixture(scope="module")
def library() -> Services:
    """Return a library with the starters."""
    return open_library()


def asked(library: Services, request: dict[str, Any]) -> dict[str, Any]:
    """Return the answer to a request."""
    return plan_largest(request, bench_of(library, request))


def test_the_size_can_be_sent_on(library: Services) -> None:
    """A plan of the size that was found has the same counts, rows and yarn."""
    answer = asked(library, IN_YARN | {"have": {"grams": 350}})
    again = planning.plan(library, IN_YARN | {"size": answer["size"]})
    assert (again["counts"], again["sections"]) == (answer["plan"]["counts"], answer["plan"]["sections"])
    assert again["yarn"] == answer["yarn"] == answer["plan"]["yarn"]


def test_balls_are_what_they_hold(library: Services) -> None:
    """7 balls of 115 m are 805 m, and no more are bought for what they make."""
    balls, metres = (asked(library, IN_YARN | {"have": have}) for have in ({"balls": 7}, {"metres": 805}))
    assert balls == metres
    assert balls["yarn"]["colours"][0]["balls"]["buy"] == 7


def test_what_there_is_covers_the_margin_and_the_high_end(library: Services) -> None:
    """Without a margin the likely amount makes more."""
    answer = asked(library, IN_YARN | {"have": {"grams": 350}})
    grams = answer["yarn"]["grams"]
    assert max(grams["high"], grams["likely"] * 1.1) <= 350
    assert answer["without_margin"]["cast_on"] > answer["cast_on"]


def test_the_colour_that_is_scarce_decides(library: Services) -> None:
    """Borders in one colour, the body in another."""
    ends = {"colour": "A", "parts": ["cast_on", "bottom", "top", "bind_off"], "metres_per_100g": 230}
    request = IN_YARN | {"yarn": [{"colour": "MC", "metres_per_100g": 230}, ends]}
    scarce, ample = (
        asked(library, request | {"have": [{"grams": 400}, {"grams": grams}]})["cast_on"] for grams in (30, 300)
    )
    assert scarce < ample


def test_too_little_for_any_size_is_refused_with_a_figure(library: Services) -> None:
    """The next step says what the size asked for would take."""
    with pytest.raises(CannotBePlanned) as refused:
        asked(library, IN_YARN | {"have": {"grams": 3}})
    (finding,) = refused.value.findings
    assert (finding.rule, finding.pointer) == ("not-enough-yarn", "/have") and "grams" in finding.hint


@pytest.mark.parametrize(
    ("yarn", "have", "pointer"),
    [
        ({"name": "no thickness"}, {"grams": 300}, "/yarn"),
        ({"name": "no ball"}, {"balls": 3}, "/have/balls"),
        ({"name": "one"}, [{"metres": 300}, {"metres": 300}], "/have"),
        ({"swatch": {"mass_g": 20, "stitches": 40, "rows": 50}}, {"metres": 500}, "/yarn"),
    ],
)
def test_yarn_that_cannot_be_reckoned_is_refused(library: Services, yarn: Any, have: Any, pointer: str) -> None:
    """Grams need a thickness or a swatch, balls what they hold, and each yarn its amount."""
    with pytest.raises(BadInput) as refused:
        asked(library, IN_YARN | {"yarn": yarn, "have": have})
    assert refused.value.pointer == pointer


def test_more_than_any_size_takes_is_said(library: Services) -> None:
    """Nothing is looked at beyond 20 metres."""
    answer = asked(library, IN_YARN | {"have": {"metres": 10**9}})
    assert answer["limited"] and answer["size"]["length_cm"] <= 2000
