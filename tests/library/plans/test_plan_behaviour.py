"""What the answer of a plan tells of its fabric: part by part, in ranges with their basis."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from counterpane.craft.behaviour.figures import FACTS
from counterpane.craft.component import Component
from counterpane.craft.constructions import CannotBePlanned
from counterpane.craft.stitches import Vocabulary
from counterpane.library.errors import NotFound
from counterpane.library.plans.behaving import component_behaviour, figure_json, span
from counterpane.library.plans.plan_behaviour import behaviour_of_plan
from counterpane.library.plans.plans import make_plan, plan_request_of

Starters = Mapping[str, Component]
SMOOTH: Mapping[str, Any] = {
    "parts": {"body": "stocking-stitch", "bottom": "rib-two-by-two-border"},
    "gauge": {"stitches": 22, "rows": 30, "over_cm": 10, "in": "stocking-stitch"},
    "size": {"width_cm": 70, "length_cm": 90},
}


def told(
    content: Mapping[str, Any], starters: Starters, vocabulary: Vocabulary, tex: Fraction | None = None
) -> dict[str, Any]:
    """Return the behaviour of the plan of a request, of a yarn of so many tex."""

    def find(slug: str) -> Component:
        if slug not in starters:
            raise NotFound(f"There is no component {slug!r}.")
        return starters[slug]

    return behaviour_of_plan(make_plan(plan_request_of(content, find, vocabulary), vocabulary), vocabulary, tex)


def figures(value: Any) -> Iterator[Mapping[str, Any]]:
    """Give every figure in an answer."""
    if isinstance(value, Mapping):
        if "basis" in value and "low" in value:
            yield value
        for each in value.values():
            yield from figures(each)
    elif isinstance(value, list):
        for each in value:
            yield from figures(each)


def test_each_fabric_of_a_plan_is_told_once_from_the_bottom_up(starters: Starters, vocabulary: Vocabulary) -> None:
    """The parts stand in their order with what they do; a selvedge is no fabric."""
    parts = told(SMOOTH, starters, vocabulary)["parts"]
    assert [(part["part"], part["lies"]) for part in parts] == [
        ("bottom", "draws in"),
        ("sides", "shortens"),
        ("body", "curls"),
        ("top", "shortens"),
    ]
    assert (parts[0]["width"]["low"], parts[0]["width"]["high"]) == (0.6, 0.75)
    assert parts[2]["curl"]["sides"] == "to the back"


def test_bands_are_numbered(starters: Starters, vocabulary: Vocabulary) -> None:
    """Two bands are body 1 and body 2."""
    content = {**SMOOTH, "parts": {"body": [{"component": slug, "rows": 20} for slug in ("garter", "seed-stitch")]}}
    assert [part["part"] for part in told(content, starters, vocabulary)["parts"]][2:4] == ["body 1", "body 2"]


def test_no_figure_on_a_weak_basis_is_a_point(starters: Starters, vocabulary: Vocabulary) -> None:
    """Every figure of every starter names its source, and only stocking stitch itself is one value."""
    found = [
        figure for component in starters.values() for figure in figures(component_behaviour(component, vocabulary))
    ]
    assert len(found) > 20
    for figure in found:
        assert figure["source"]
        assert figure["low"] != figure["high"] or figure["source"] == "by definition"


@pytest.mark.parametrize("name", FACTS)
def test_ends_are_rounded_outwards(name: str) -> None:
    """What is shown is no narrower than what is known."""
    shown = figure_json(FACTS[name])
    assert shown is not None
    low, high = FACTS[name].low, FACTS[name].high
    assert low is not None and high is not None
    assert Fraction(str(shown["low"])) <= low and high <= Fraction(str(shown["high"]))
    assert " to " in span(FACTS[name])


def test_a_cast_on_has_no_behaviour(starters: Starters, vocabulary: Vocabulary) -> None:
    """What has no rows is not spoken of."""
    assert component_behaviour(starters["long-tail"], vocabulary) is None


GARTER_SWATCHED = [
    {"stitches": "22", "rows": 30, "over_cm": 10, "in": "waffle"},
    {"stitches": "20.5", "rows": 42, "over_cm": 10, "in": "garter-border"},
]
WAFFLE: Mapping[str, Any] = {
    "parts": {"body": "waffle"},
    "gauge": GARTER_SWATCHED,
    "size": {"width_cm": 70, "length_cm": 90},
}


def test_seams_are_told_from_the_bottom_up(starters: Starters, vocabulary: Vocabulary) -> None:
    """Garter round waffle frills at both ends and draws the body up at the sides, by gauges that were given."""
    seams = told(WAFFLE, starters, vocabulary)["seams"]
    assert [(seam["part"], seam["lies"]) for seam in seams] == [
        ("bottom", "across"),
        ("sides", "along"),
        ("top", "across"),
    ]
    assert [seam["excess"]["low"] > 0 for seam in seams] == [True, False, True]
    assert {seam["excess"]["basis"] for seam in seams} == {"common practice"}


def test_a_take_up_gives_the_row_in_words_with_its_counts(starters: Starters, vocabulary: Vocabulary) -> None:
    """Ten stitches fewer, increased in the last row of the bottom border; taken away in the first row of the top."""
    seams = told(WAFFLE, starters, vocabulary)["seams"]
    below, above = seams[0]["take_up"], seams[2]["take_up"]
    assert (below["chosen"], below["row"]["before"], below["row"]["after"]) == (10, 144, 154)
    assert (below["row"]["section"], below["row"]["row"], below["row"]["side"]) == ("bottom", 12, "WS")
    assert below["row"]["text"].count("m1") and above["row"]["text"].count("k2tog")
    assert (above["row"]["section"], above["row"]["row"], above["row"]["after"]) == ("top", 1, 144)
    assert "10 stitches fewer" in seams[0]["message"]


def test_extra_rows_are_listed_with_their_words(starters: Starters, vocabulary: Vocabulary) -> None:
    """A pair of turned rows before a row, in the words of either edge."""
    extra = told(WAFFLE, starters, vocabulary)["seams"][1]["extra_rows"]
    assert (extra["chosen"], extra["every"], extra["before_rows"][:3]) == (50, [4, 6], [3, 7, 13])
    assert extra["instructions"] == [
        {"edge": "right", "before": "RS", "text": "k6, turn, k6, turn"},
        {"edge": "left", "before": "WS", "text": "k6, turn, k6, turn"},
    ]


def test_what_is_not_known_of_a_seam_is_said(starters: Starters, vocabulary: Vocabulary) -> None:
    """No figure is made up for welts beside a waffle."""
    content = {**SMOOTH, "parts": {"body": "waffle", "bottom": "welt-border"}}
    seam = told(content, starters, vocabulary)["seams"][0]
    assert (seam["excess"], seam["take_up"]) == (None, None)
    assert "not known" in seam["message"]


def test_openings_are_estimates_that_end_in_a_rod(starters: Starters, vocabulary: Vocabulary) -> None:
    """The yarn's diameter is not known, so the low end is not; plain fabric has none to tell of."""
    content = {**SMOOTH, "parts": {"body": "eyelet-dots"}}
    openings = told(content, starters, vocabulary)["openings"]
    assert [(each["section"], each["yarn_overs"], each["size"]["low"]) for each in openings] == [("body", 1, None)]
    assert 7.3 < openings[0]["size"]["high"] < 7.8
    assert "measure with a rod" in openings[0]["message"]
    assert told(SMOOTH, starters, vocabulary)["openings"] == []


def test_mass_is_told_where_the_yarn_and_the_gauge_are_known(starters: Starters, vocabulary: Vocabulary) -> None:
    """Without a yarn nothing is told; a part at a borrowed gauge and lace are not known, and never nothing."""
    assert told(WAFFLE, starters, vocabulary)["mass"] is None
    parts = told(SMOOTH, starters, vocabulary, Fraction(435))["mass"]
    known = {part["part"]: part["mass"] for part in parts}
    assert known["bottom"] is None and known["body"]["low"] < 507 < known["body"]["high"]
    assert known["body"]["basis"] == "borrowed"
    lace = {**SMOOTH, "parts": {"body": "feather-lace"}, "gauge": {**SMOOTH["gauge"], "in": "feather-lace"}}
    body = told(lace, starters, vocabulary, Fraction(435))["mass"][2]
    assert (body["mass"], "weigh a swatch" in body["message"]) == (None, True)


GAUGES = st.fixed_dictionaries(
    {
        "stitches": st.decimals("0.5", 90, places=1).map(float),
        "rows": st.decimals("0.5", 90, places=1).map(float),
        "over_cm": st.sampled_from([1, 5, 10, 20]),
        "count_error": st.sampled_from([0, 0.25, 3, 100]),
        "window_error_cm": st.sampled_from([0, 0.1, 100]),
    }
)
BODIES = st.sampled_from(["stocking-stitch", "garter", "eyelet-dots", "rope-cable", "rib-two-by-two"])
BORDERS = st.sampled_from(["garter-border", "seed-stitch-border", "rib-two-by-two-border"])


@settings(max_examples=80, deadline=None)
@given(st.tuples(BODIES, BORDERS), st.tuples(GAUGES, st.one_of(st.none(), GAUGES)))
def test_whatever_the_gauges_every_figure_is_a_range(
    starters: Starters, vocabulary: Vocabulary, slugs: tuple[str, str], swatches: tuple[Any, Any]
) -> None:
    """Readings said to be exact, or off by more than they count, leave ends in order and nothing to fall over."""
    (body, border), (first, second) = slugs, swatches
    gauges = [first | {"in": body}, *([second | {"in": border}] if second else [])]
    parts = {"body": body, "bottom": border, "sides": border, "top": border}
    content = {"parts": parts, "gauge": gauges, "size": {"width_cm": 70, "length_cm": 90}}
    try:
        answer = told(content, starters, vocabulary, Fraction(400))
    except CannotBePlanned:
        return
    for figure in figures(answer):
        if figure["low"] is not None and figure["high"] is not None:
            assert figure["low"] <= figure["high"]
