"""`counterpane safety`: the same answer as the API, and the words a person reads."""

from __future__ import annotations

import json
import re

import pytest

from cli.conftest import Type

WARD = """
age_months = [0, 3]
use = "hospital"
markets = ["UK"]
hole_mm = 7.0
fibres = [{ name = "kid mohair", pct = 100 }]
wash = { method = "machine", temp_c = 60 }
attachments = [{ kind = "button", largest_mm = 12 }, { kind = "fringes" }]
"""


def test_what_stops_stands_first_and_ends_with_1(typed: Type) -> None:
    """An opening, a fringe, a button and mohair, for a newborn on a ward; the ward is to be asked."""
    done = typed("safety", "-", stdin=WARD)
    assert done.status == 1
    assert [f"({each}, " in done.out for each in ("R12", "R24", "R26", "R29", "R48")] == [True] * 5
    assert done.out.index("\nStop\n") < done.out.index("\nNote\n") < done.out.index("Not assessed: ")


def test_each_rule_that_lacks_an_input_names_it(typed: Type) -> None:
    """Nothing given is nothing assessed, and the record says what is asked for and where."""
    done = typed("safety", "-", stdin="")
    assert done.status == 0
    assert "In the input, each asks for:" in done.out
    assert "never a pass" in done.out


@pytest.mark.parametrize("text", [WARD, "", 'use = "car-seat"\nage_months = 4\n', 'age_band = "preterm"\n'])
def test_no_word_clears_a_piece(typed: Type, text: str) -> None:
    """Neither what is assessed nor what is not ends in an approval."""
    said = re.sub("general information, not approval", "", typed("safety", "-", stdin=text).out.casefold())
    assert not re.findall(r"\bsafe\b|approv|complian|suitable|all clear|✓", said)


def test_the_json_is_that_of_the_api(typed: Type) -> None:
    """6.9 mm warns, and 7 mm is not reached."""
    answer = json.loads(typed("safety", "-", "--json", stdin='age_band = "3-12m"\nhole_mm = 6.9\n').out)
    assert set(answer) == {"findings", "assessed", "not_assessed", "not_applicable"}
    assert "R11" in {each["reference"] for each in answer["findings"]} and "R12" in answer["assessed"]


@pytest.mark.parametrize(
    ("text", "said"), [('use = "cot"', "Write one of: sleep, pram"), ("buttons = 2", "Known here: ")]
)
def test_an_input_that_is_not_known_names_what_is(typed: Type, text: str, said: str) -> None:
    """The status is 2: nothing is left aside in silence."""
    done = typed("safety", "-", stdin=text)
    assert (done.status, said in done.err) == (2, True)


def test_a_plan_request_is_told_where_its_safety_is(typed: Type) -> None:
    """It says what was given and which command tells its safety, and no list of members."""
    done = typed("safety", "-", stdin='[parts]\nbody = "waffle"\n[gauge]\nstitches = 22\n')
    assert (done.status, done.out) == (2, "")
    assert "this is a plan request" in done.err and "counterpane plan FILE" in done.err
    assert "moth_treatment" not in done.err
