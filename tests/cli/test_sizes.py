"""`counterpane sizes`: names with their spans, cots beside them, and plans that name a size."""

from __future__ import annotations

import json

from cli.conftest import Type
from counterpane.library.plans import sizes
from counterpane.seeding.facts import facts_by_name

PRAM = {"parts": {"body": "garter"}, "gauge": {"stitches": 22, "rows": 30, "over_cm": 10}, "size": {"named": "pram"}}


def test_all_sizes_are_listed(typed: Type) -> None:
    """A least size has no bound."""
    done = typed("sizes")
    assert (done.status, done.err) == (0, "")
    assert "76.2 or more" in done.out


def test_the_json_of_a_size_is_what_the_api_answers(typed: Type) -> None:
    """But for its address."""
    assert json.loads(typed("sizes", "crib", "--json").out) == sizes.get(facts_by_name(), "cot")


def test_a_side_that_is_not_known_is_said_to_be_so(typed: Type) -> None:
    """Nothing is put in its place."""
    line = next(line for line in typed("sizes", "pram").out.splitlines() if line.startswith("cot interior eu"))
    assert line.count("not known") == 2


def test_a_size_that_there_is_not_ends_with_3(typed: Type) -> None:
    """With the nearest name."""
    done = typed("sizes", "thrrow")
    assert (done.status, done.out) == (3, "")
    assert "Probably meant: throw." in done.err


def test_a_plan_of_a_named_size_says_what_the_name_stands_for(typed: Type) -> None:
    """The span, that the choice is house, and the cots as figures only."""
    said = " ".join(typed("plan", "-", stdin=json.dumps(PRAM)).out.split())
    assert "Asked for as pram, planned at 76.2 by 88.9 cm; it is said to be 35.6 to 101.6 cm wide" in said
    assert "house choice" in said
    assert "Figures only" in said


def test_a_size_that_is_named_after_a_use_leads_to_the_caution(typed: Type) -> None:
    """A name is read as advice: the rule of that use is named beside it."""
    named = {"car-seat": "blanket-under-the-harness", "pram": "blanket-over-the-pram"}
    assert [f"explain {rule}`" in typed("sizes", name).out for name, rule in named.items()] == [True] * 2
    assert "to wrap a baby in" not in typed("sizes", "swaddle").out
