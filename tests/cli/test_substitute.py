"""`counterpane substitute`."""

from __future__ import annotations

import json

import pytest

from counterpane.library.yarn.yarn_substitutes import substitute
from counterpane.seeding.facts import facts_by_name

from .conftest import Type


def test_the_json_is_what_the_api_answers(typed: Type):
    """Both say the same of the same yarns."""
    done = typed("substitute", "230", "420", "--strands", "2", "--grams", "350", "--json")
    to = {"metres_per_100g": 420, "strands": 2}
    answer = substitute({"from": {"metres_per_100g": 230}, "to": to, "amount": {"grams": 350}}, facts_by_name())
    assert (done.status, json.loads(done.out)) == (0, answer)


def test_a_person_reads_the_verdict_and_is_sent_to_the_swatch(typed: Type):
    """Thickness alone tells no gauge."""
    done = typed("substitute", "double knitting", "Nm 2.3")
    assert "Thickness alone tells no gauge: knit a swatch" in done.out
    assert "8 % thinner" not in done.out and "Classes alone do not tell" in done.out


def test_a_yarn_that_is_not_known_ends_with_2(typed: Type):
    """With the classes that are."""
    done = typed("substitute", "gold", "230")
    assert done.status == 2 and "worsted" in done.err


@pytest.mark.parametrize(
    ("first", "second", "said"),
    [
        ("0", "420", "/from/metres_per_100g: 0 m to 100 g is no thickness"),
        ("230", "0 tex", "/to/tex: 0 tex is no thickness"),
        ("Nm 0.0", "230", "/from/nm: Nm 0 is no thickness"),
    ],
)
def test_a_thickness_of_0_is_none(typed: Type, first: str, second: str, said: str):
    """It is told, and so it is not called unknown."""
    done = typed("substitute", first, second)
    assert (done.status, said in done.err, "known" in done.err) == (2, True, False)
