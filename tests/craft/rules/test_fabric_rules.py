"""Rules about what two fabrics do to each other: by the gauges given, and in ranges where there is only a figure."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

import pytest

from counterpane.craft.component import Component
from counterpane.craft.constructions.making import attempt
from counterpane.craft.findings import Finding
from counterpane.craft.rules import fabric
from counterpane.craft.stitches import Vocabulary
from counterpane.library.plans.plans import plan_request_of

Starters = Mapping[str, Component]
SMOOTH = {"stitches": 22, "rows": 30, "over_cm": 10, "in": "stocking-stitch"}
WIDE = {"component": "garter-border", "stitches": 10}


def said(slug: str, starters: Starters, vocabulary: Vocabulary, **content: Any) -> list[Finding]:
    """Return what one rule says of a request for 70 by 90 cm in stocking stitch."""
    asked = {"gauge": SMOOTH, "size": {"width_cm": 70, "length_cm": 90}} | content
    made = attempt(plan_request_of(json.loads(json.dumps(asked)), starters.__getitem__, vocabulary), vocabulary)
    assert made.plan is not None
    return [finding for rule in fabric.RULES if rule.slug == slug for finding in rule.check(made)]


def bands(*slugs: str) -> list[dict[str, Any]]:
    """Return bands of 40 rows each."""
    return [{"component": slug, "rows": 40} for slug in slugs]


@pytest.mark.parametrize(
    ("parts", "pointers"),
    [
        ({"body": "stocking-stitch", "sides": WIDE}, []),
        ({"body": "garter", "sides": None, "bottom": None, "top": None}, []),
        ({"body": "stocking-stitch"}, ["/parts/sides"]),
        ({"body": "stocking-stitch", "sides": WIDE, "bottom": None}, ["/parts/bottom"]),
        ({"body": "stocking-stitch", "sides": WIDE, "top": {"component": "garter-border", "rows": 8}}, ["/parts/top"]),
        ({"body": bands("garter", "stocking-stitch"), "sides": WIDE, "bottom": None, "top": None}, ["/parts/top"]),
        ({"body": bands("garter", "stocking-stitch", "garter"), "sides": WIDE, "bottom": None, "top": None}, []),
        ({"body": bands("garter", "stocking-stitch", "garter"), "sides": None}, ["/parts/sides"]),
        ({"body": "stocking-stitch", "sides": WIDE, "bottom": "broken-rib-border"}, ["/parts/bottom"]),
    ],
)
def test_curl_is_looked_at_edge_by_edge(
    parts: Mapping[str, Any], pointers: list[str], starters: Starters, vocabulary: Vocabulary
) -> None:
    """At the sides every band counts, at an end the band that meets it; a border that rolls itself holds nothing."""
    found = said("border-narrow-for-curl", starters, vocabulary, parts=parts)
    assert [finding.pointer for finding in found] == pointers


def test_curl_says_which_way(starters: Starters, vocabulary: Vocabulary) -> None:
    """Reverse stocking stitch without side borders rolls to the front, and its end to the back."""
    top = {"component": "garter-border", "rows": 12}
    parts = {"body": "reverse-stocking-stitch", "sides": None, "bottom": None, "top": top}
    messages = [each.message for each in said("border-narrow-for-curl", starters, vocabulary, parts=parts)]
    assert [message.rsplit(" ", 3)[1:] for message in messages] == [["to", "the", "front."], ["to", "the", "back."]]


def test_a_rib_below_a_smooth_body_draws_in_by_a_range(starters: Starters, vocabulary: Vocabulary) -> None:
    """Without a gauge of its own the figures from memory speak, with both ends, and stitches to add."""
    parts = {"body": "stocking-stitch", "sides": WIDE, "bottom": "rib-two-by-two-border"}
    found = said("border-draws-in", starters, vocabulary, parts=parts)
    assert [(each.severity, each.pointer) for each in found] == [("warning", "/parts/bottom")]
    assert "0.60 to 0.75 times" in found[0].message and "from memory" in found[0].message
    assert "more between the side borders" in found[0].hint


def test_a_rib_at_a_gauge_that_lies_level_is_left_alone(starters: Starters, vocabulary: Vocabulary) -> None:
    """What the swatches say goes before the figures of the trade."""
    parts = {"body": "stocking-stitch", "sides": WIDE, "bottom": "rib-two-by-two-border"}
    gauges = [SMOOTH, SMOOTH | {"in": "rib-two-by-two-border", "stitches": 22.5}]
    assert said("border-draws-in", starters, vocabulary, parts=parts, gauge=gauges) == []


def test_garter_ends_frill_by_a_range_without_a_swatch(starters: Starters, vocabulary: Vocabulary) -> None:
    """From 5 to 10 in 100 of the width between the side borders."""
    found = said("border-frills", starters, vocabulary, parts={"body": "stocking-stitch", "sides": WIDE})
    assert len(found) == 1
    assert "frills by 3.0 to 6.1 cm" in found[0].message


def test_garter_sides_are_lower_by_a_range_without_a_swatch(starters: Starters, vocabulary: Vocabulary) -> None:
    """A note, since only a figure from memory stands behind it."""
    found = said("rows-differ-in-height", starters, vocabulary, parts={"body": "stocking-stitch", "sides": WIDE})
    assert [each.severity for each in found] == ["note"]
    assert "1.20 to 1.47 rows" in found[0].message and "memory" in found[0].message


def test_each_band_is_compared_with_the_side_borders(starters: Starters, vocabulary: Vocabulary) -> None:
    """Garter sides beside a garter band and a smooth band: only the smooth one is named."""
    parts = {"body": bands("garter", "stocking-stitch"), "sides": WIDE}
    found = said("rows-differ-in-height", starters, vocabulary, parts=parts)
    assert ["body 2" in each.message for each in found] == [True]


def test_higher_side_rows_wave_by_a_range_without_a_swatch(starters: Starters, vocabulary: Vocabulary) -> None:
    """Stocking stitch beside a garter body at a known gauge is longer row for row, whatever its swatch will say."""
    gauge = {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}
    parts = {"body": "garter", "sides": {"text": "Row 1 (RS): knit.\nRow 2 (WS): purl.", "stitches": 6}}
    found = said("side-border-waves", starters, vocabulary, parts=parts, gauge=gauge)
    assert [each.pointer for each in found] == ["/parts/sides"]
    assert " to " in found[0].message and "from memory" in found[0].message


def test_a_top_border_that_frills_is_decreased(starters: Starters, vocabulary: Vocabulary) -> None:
    """At the top stitches are taken away where the border begins, with the plain ones between two of them counted."""
    gauges = [SMOOTH, SMOOTH | {"in": "garter-border", "stitches": 20.5}]
    parts = {"body": "stocking-stitch", "sides": WIDE, "bottom": None}
    found = said("border-frills", starters, vocabulary, parts=parts, gauge=gauges)
    assert [each.pointer for each in found] == ["/parts/top"]
    assert "decreases where the border begins" in found[0].hint


def test_a_borrowed_gauge_costs_length_by_a_range(starters: Starters, vocabulary: Vocabulary) -> None:
    """24 garter rows planned at 30 to 10 cm are 8 cm and come out shorter by what 1.2 to 1.47 rows to one make."""
    found = said("gauge-borrowed", starters, vocabulary, parts={"body": "stocking-stitch", "sides": WIDE})
    assert "1.3 to 2.5 cm shorter" in found[0].message and "memory" in found[0].message


def test_a_band_of_cables_beside_a_smooth_band_draws_in_by_a_range(starters: Starters, vocabulary: Vocabulary) -> None:
    """The narrower band is named, whichever of the two lies below, and bands of one width are left alone."""
    for at, slugs in enumerate((("rope-cable", "stocking-stitch"), ("stocking-stitch", "rope-cable"))):
        found = said("band-draws-in", starters, vocabulary, parts={"body": bands(*slugs), "sides": WIDE})
        assert [each.pointer for each in found] == [f"/parts/body/{at}"]
        assert "0.75 to 0.82 times" in found[0].message or "0.75 to 0.81 times" in found[0].message
    flat = bands("stocking-stitch", "reverse-stocking-stitch")
    assert said("band-draws-in", starters, vocabulary, parts={"body": flat, "sides": WIDE}) == []


@pytest.mark.parametrize(
    ("top", "bind_off", "told"), [(12, "plain-bind-off", 1), (11, "plain-bind-off", 0), (12, "cord-bind-off", 0)]
)
def test_looks_are_compared_on_one_side_of_the_work(
    top: int, bind_off: str, told: int, starters: Starters, vocabulary: Vocabulary
) -> None:
    """A rope that faces the RS beside a chain there; a bind-off on the WS shows the RS what is not known."""
    parts = {
        "body": "stocking-stitch",
        "cast_on": "cable-cast-on",
        "top": {"component": "garter-border", "rows": top},
        "bind_off": bind_off,
    }
    assert len(said("edges-look-unlike", starters, vocabulary, parts=parts)) == told


FIVE = "Row 1: k1, p1, k1, p1, k1."
CABLE = "Row 1 (RS): *Sl next 2 sts to cn and hold in front, k2, k2 from cn; rep from * to end.\nRow 2: Purl."


@pytest.mark.parametrize(
    ("body", "left", "broken"),
    [
        ("garter", None, True),
        ({"text": CABLE}, None, True),
        ("garter", "Row 1: k1, p1, k1, p1, k1.", True),
        ("garter", "Row 1: k1, [p1, k1] into next st, p2tog, k1.", False),
    ],
)
def test_a_moss_corner_is_looked_at_beside_any_body(
    body: object, left: str | None, broken: bool, starters: Starters, vocabulary: Vocabulary
) -> None:
    """What is held for a cable beside the border is none of its stitches; a left side that is no moss breaks none."""
    sides = {"text": FIVE} if left is None else {"text": FIVE, "left": left}
    parts = {"body": body, "bottom": "seed-stitch-border", "sides": sides}
    asked = {"parts": parts, "gauge": {"stitches": 22, "rows": 30, "over_cm": 10}}
    assert bool(said("moss-corner-breaks", starters, vocabulary, **asked)) is broken


@pytest.mark.parametrize(("right", "corners"), [(FIVE, []), ("Row 1: p1, k1, p1, k1, p1.", ["right"])])
def test_the_right_corner_is_looked_at_beside_a_left_border_of_its_own(
    right: str, corners: list[str], starters: Starters, vocabulary: Vocabulary
) -> None:
    """Two stitches worked into one at the left say nothing of the right: there the moss breaks, or it goes on."""
    left = "Row 1: k1, [p1, k1] into next st, p2tog, k1."
    parts = {"body": "garter", "bottom": "seed-stitch-border", "sides": {"text": right, "left": left}}
    asked = {"parts": parts, "gauge": {"stitches": 22, "rows": 30, "over_cm": 10}}
    found = said("moss-corner-breaks", starters, vocabulary, **asked)
    assert [finding.message.split()[2] for finding in found] == corners
