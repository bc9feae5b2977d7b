"""One yarn in place of another."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from counterpane.library.values import BadInput
from counterpane.library.yarn.yarn_substitutes import in_words, substitute
from counterpane.seeding.facts import facts_by_name
from counterpane_schema.faults import faults_of
from counterpane_schema.yarn import SubstitutionAnswer, SubstitutionRequest

FACTS = facts_by_name()
DOUBLE_KNITTING = {"metres_per_100g": 230}


def asked(from_: dict[str, Any], to: dict[str, Any], **amount: Any) -> dict[str, Any]:
    """Return the answer to a request that the wire lets through."""
    content = {"from": from_, "to": to, "amount": amount or None}
    assert not faults_of(SubstitutionRequest(), content)
    answer = substitute(content, FACTS)
    assert not faults_of(SubstitutionAnswer(), answer)
    return answer


def test_two_strands_of_a_fine_yarn_in_place_of_double_knitting() -> None:
    """420 m to 100 g twice are 210: 9.5 % thicker than 230, and twice the metres."""
    answer = asked(DOUBLE_KNITTING, {"metres_per_100g": 420, "strands": 2, "ball_g": 50}, grams=350)
    assert (answer["thicker_percent"], answer["verdict"]) == ([9.5, 9.5], "alike")
    assert answer["amount"] == {"metres": 1610.0, "grams": 383.3, "balls": 8}


def test_the_strands_that_come_nearest_are_named() -> None:
    """Of 840 m to 100 g four come to 210, and five are further off."""
    strands = asked(DOUBLE_KNITTING, {"metres_per_100g": 840})["strands"]
    assert strands == {"best": 4, "thicker_percent": 9.5, "alike": True}


def test_a_yarn_in_its_own_place_is_just_as_much() -> None:
    """The same thickness, the same grams."""
    answer = asked(DOUBLE_KNITTING, DOUBLE_KNITTING, grams=350)
    assert answer["thicker_percent"] == [0.0, 0.0]
    assert answer["amount"]["grams"] == 350.0


def test_classes_alone_tell_a_range() -> None:
    """Two yarns of one class may be alike or not; of two classes that lie apart they are not."""
    same, apart = (asked({"weight": "dk"}, {"weight": name}) for name in ("8-ply", "chunky"))
    assert (same["verdict"], apart["verdict"]) == ("not known", "not alike")
    assert same["thicker_percent"] == [-20.0, 25.0] and same["strands"] is None


def test_a_class_that_is_open_at_an_end_is_open_in_the_answer() -> None:
    """Lace has no finest yarn."""
    answer = asked({"weight": "lace"}, {"weight": "worsted"})
    assert answer["from"]["tex"] == [None, 166.7]


@pytest.mark.parametrize(
    ("yarn", "amount", "pointer"),
    [
        ({"name": "gold"}, {"grams": 100}, "/from"),
        ({"weight": "gold"}, {"grams": 100}, "/from"),
        ({"weight": "dk"}, {"grams": 100}, "/from"),
        ({"metres_per_100g": 230}, {"balls": 4}, "/amount/balls"),
    ],
)
def test_what_cannot_be_turned_over_is_refused(yarn: Any, amount: Any, pointer: str) -> None:
    """With its place, and the next step."""
    with pytest.raises(BadInput) as refused:
        substitute({"from": yarn, "to": DOUBLE_KNITTING, "amount": amount}, FACTS)
    assert refused.value.pointer == pointer and refused.value.hint


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("230", {"metres_per_100g": Decimal(230)}),
        ("230 m", {"metres_per_100g": Decimal(230)}),
        ("434.8tex", {"tex": Decimal("434.8")}),
        ("Nm 2.3", {"nm": Decimal("2.3")}),
        ("double knitting", {"weight": "double knitting"}),
        ("8-ply", {"weight": "8-ply"}),
    ],
)
def test_a_yarn_in_a_few_words(text: str, told: dict[str, Any]) -> None:
    """As it is typed."""
    assert in_words(text) == told
