"""Requests that make no plan, or only just: what stands in the way, and what the rules of fitting say of it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest

from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.making import attempt, remeasured, sampler
from counterpane.craft.rules import fabric, fitting
from counterpane.craft.stitches import Vocabulary
from counterpane.library.plans.plans import plan_request_of

from .asking import Starters, content

FOUR = {"component": "garter-border", "stitches": 4}
PICKED = {"construction": "sides-picked-up"}
GAUGES = [
    {"stitches": 22, "rows": 30, "over_cm": 10},
    {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter-border"},
]
"""Invented gauges of a body and of garter."""


def rows_up_to(last: int) -> str:
    """Return so many rows of which only the last is purled, so that they repeat after no fewer."""
    return "".join(f"Row {number}: {'Knit' if number < last else 'Purl'}.\n" for number in range(1, last + 1))


def made(starters: Starters, vocabulary: Vocabulary, body: object, parts: Mapping[str, Any]) -> Attempt:
    """Work out a request; a construction among the parts is that of the whole."""
    rest = {name: part for name, part in parts.items() if name != "construction"}
    whole = {**content(body, **rest), **{name: part for name, part in parts.items() if name == "construction"}}
    return attempt(plan_request_of(whole, starters.__getitem__, vocabulary), vocabulary)


def told(tried: Attempt) -> list[str]:
    """Return the messages and hints of the rules of fitting and fabric."""
    found = [finding for rule in (*fitting.RULES, *fabric.RULES) for finding in rule.check(tried)]
    return [
        " ".join((finding.message, finding.hint, *(f"{each.value}: {each.why}" for each in finding.changes)))
        for finding in found
    ]


@pytest.mark.parametrize(
    ("body", "parts", "message"),
    [
        (
            "garter",
            {"cast_on": "plain-bind-off"},
            "“plain-bind-off” is a bind-off and cannot be worked as the cast-on.",
        ),
        ("garter", {"bind_off": "long-tail"}, "“long-tail” is a cast-on and cannot be worked as the bind-off."),
        ({"component": "fan", "stitches": 7}, {}, "cannot take 7 stitches: its rows do not work over so many stitches"),
        (
            [{"component": "garter", "stitches": 100}, {"component": "waffle", "stitches": 101}],
            {},
            "cannot take 101 stitches",
        ),
        (
            {"text": "Row 1: *K2, yo; rep from * to end.\nRow 2: Purl."},
            {},
            "changes the count by more, the wider the piece is",
        ),
        (
            {"text": "Row 1: Knit.\nRow 2: Purl.\nRow 3: Knit.\nRow 4: Purl.\nRep rows 3 and 4."},
            {},
            "repeats only some of its rows",
        ),
        (
            [{"component": "fan"}, {"component": "basket-weave"}, {"component": "waffle"}],
            {"sides": None},
            "Choose another component for “body 3”",
        ),
        (
            {"text": "Row 1: *K7, p1; rep from * to end."},
            {"bottom": {"text": "Row 1: *K8; rep from * to last 2 sts, k2.", "rows": 8}, "top": None, "sides": FOUR},
            "5: 1 more on each side lets all parts share a count",
        ),
        (
            {"text": "Row 1: *K7, p1; rep from * to end."},
            {"bottom": {"text": "Row 1: *K8; rep from * to last st, k1.", "rows": 8}, "top": None, "sides": FOUR},
            "this band then has side borders of 4 stitches on the right and 5 on the left",
        ),
        (
            "garter",
            {"selvedge": {"text": "Row 1: K1, *p1; rep from * to end."}},
            "does not say how many stitches it has. Add “stitches”, for example 1.",
        ),
        (
            "garter",
            {"selvedge": {"text": "Row 1 (RS): *K2tog, yo; rep from * to end.\nRow 2: Purl.", "stitches": 3}},
            "would be cut inside a stitch",
        ),
        (
            "garter",
            {"selvedge": {"text": "Row 1: *Yo, k3, sl 1, k2tog, psso, yo; rep from * to end.", "stitches": 2}},
            "would be cut inside a repeat that changes the count",
        ),
        (
            "garter",
            {**PICKED, "sides": {"text": "Row 1: *K300; rep from * to end.", "rows": 6}},
            "takes no count of stitches for which the edge has the",
        ),
        (
            "garter",
            {**PICKED, "sides": {"text": "Row 1: K20.", "rows": 6}},
            "works over 20 stitches at the nearest, and the long edge needs",
        ),
        (
            "garter",
            {**PICKED, "sides": {"text": "Row 1 (RS): K1, kfb, k to end.\nRow 2: P2tog, p to end.", "rows": 6}},
            "changes its count in the WS row with which a picked-up border begins",
        ),
        (
            [{"component": "garter", "stitches": 101}, {"component": "garter", "stitches": 120}],
            {"bottom": "rib-three-by-three-border", "sides": "garter-border"},
            "Counted in 6s, the first leaves 3 over and the second 0.",
        ),
        (
            "garter",
            {"sides": {"text": "Row 1: *K2, p2; rep from * to end.", "stitches": 7}},
            "cannot take 7 stitches: its rows do not work over so many stitches. Write 8 or 4.",
        ),
        (
            {"text": rows_up_to(47)},
            {"sides": {"text": rows_up_to(53), "stitches": 7}, "length": 900},
            "The repeats of rows side by side come together only after 2,491 rows.",
        ),
        (
            "garter",
            {**PICKED, "sides": {"text": rows_up_to(1301), "rows": 2602}, "width": 4000},
            "The repeats of rows side by side come together only after 2,602 rows.",
        ),
        (
            "garter",
            {**PICKED, "sides": {"component": "garter-border", "rows": 10**12}, "width": 10**12, "length": 3 * 10**5},
            "and at most 999,999,999,999,999,999 are counted.",
        ),
        (
            "garter",
            {**PICKED, "sides": {"component": "garter-border", "stitches": 8}},
            "say with “rows” how many rows each border is worked outwards",
        ),
    ],
)
def test_what_stands_in_the_way_is_told(
    body: object, parts: Mapping[str, Any], message: str, starters: Starters, vocabulary: Vocabulary
) -> None:
    """No plan is made, and one finding says why in these words."""
    tried = made(starters, vocabulary, body, parts)
    assert tried.plan is None
    assert any(message in said for said in told(tried))


def test_narrow_borders_that_are_worked_outwards_hardly_hold_a_body_that_rolls(
    starters: Starters, vocabulary: Vocabulary
) -> None:
    """Four rows at 40 to 10 cm are one centimetre of garter beside stocking stitch."""
    parts = {**PICKED, "gauge": GAUGES, "sides": {"component": "garter-border", "rows": 4}}
    said = told(made(starters, vocabulary, "stocking-stitch", parts))
    assert any("Side borders of 4 rows, 1.0 cm, hardly hold a body that rolls." in each for each in said)


def test_side_borders_that_roll_hold_no_body_that_rolls(starters: Starters, vocabulary: Vocabulary) -> None:
    """Eight stitches of stocking stitch beside stocking stitch are more of the same."""
    parts = {"gauge": GAUGES, "sides": {"text": "Row 1 (RS): Knit.\nRow 2: Purl.", "stitches": 8}}
    said = told(made(starters, vocabulary, "stocking-stitch", parts))
    assert any("The side borders roll themselves, and the body rolls to the back." in each for each in said)


def test_a_middle_alone_has_a_sampler_and_other_gauges_without_borders(
    starters: Starters, vocabulary: Vocabulary
) -> None:
    """Where nothing is picked up, nothing is added to the smallest piece nor measured anew."""
    plan = made(starters, vocabulary, "garter", {**PICKED, "sides": None}).plan
    assert plan is not None
    assert sampler(plan, vocabulary).picked == ()
    assert remeasured(plan, plan.request.gauges, vocabulary).picked == ()
