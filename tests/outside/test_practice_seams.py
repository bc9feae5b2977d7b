"""How parts fit beside one another, by figures of the trade: common practice, no source."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

import pytest

from counterpane.craft.behaviour import Seam, seams
from counterpane.craft.component import Component
from counterpane.craft.constructions.making import attempt
from counterpane.craft.stitches import Vocabulary
from counterpane.library.plans.plans import plan_request_of

Starters = Mapping[str, Component]


def beside_waffle(
    border: str, stitches: float, rows: int, starters: Starters, vocabulary: Vocabulary
) -> dict[str, Seam]:
    """Return the seams of a border at its own gauge beside a body at 22 by 30, 70 by 90 cm."""
    gauges = [
        {"stitches": 22, "rows": 30, "over_cm": 10, "in": "waffle"},
        {"stitches": stitches, "rows": rows, "over_cm": 10, "in": border},
    ]
    parts = {"body": "waffle", "bottom": border, "sides": border, "top": border}
    content = {"parts": parts, "gauge": gauges, "size": {"width_cm": 70, "length_cm": 90}}
    plan = attempt(plan_request_of(content, starters.__getitem__, vocabulary), vocabulary).plan
    assert plan is not None
    return {seam.part: seam for seam in seams(plan, vocabulary)}


@pytest.mark.parametrize(
    "case", [("garter-border", 42, 5, (4, 6)), ("seed-stitch-border", 34, 15, (14, 16))], ids=["garter", "moss"]
)
def test_one_extra_pair_of_border_rows_for_so_many_body_rows(
    case: tuple[str, int, int, tuple[int, int]], starters: Starters, vocabulary: Vocabulary
) -> None:
    """Garter at 42 rows takes a pair for every 5 rows at 30, after 4 and 6; moss at 34 for every 15."""
    border, rows, body_rows, every = case
    more = beside_waffle(border, 22, rows, starters, vocabulary)["sides"].extra_rows
    assert more is not None
    assert more.every == every
    last = more.before[-1] + every[0] // 2
    assert abs(Fraction(last, more.chosen) - body_rows) <= Fraction(1, 2)
    assert {after - before for before, after in zip(more.before, more.before[1:], strict=False)} == set(every)


def test_a_garter_end_is_wider_than_the_body(starters: Starters, vocabulary: Vocabulary) -> None:
    """153 stitches at 20.5 are 74.6 cm and at 22 they are 69.5 cm; between the borders that is 4.6 cm of frill."""
    told = beside_waffle("garter-border", 20.5, 42, starters, vocabulary)["bottom"]
    assert told.excess is not None and told.excess.low is not None
    assert told.excess.low > 0
    assert Fraction("4.6") in told.excess
