"""Named sizes: spans with their sources, plans that name one, and cots beside a piece as figures only."""

from __future__ import annotations

import json
import re
from fractions import Fraction
from typing import Any

import pytest

from counterpane.library.errors import NotFound
from counterpane.library.plans import planning, sizes
from counterpane.library.services import Services
from counterpane.library.values import BadInput
from counterpane.seeding.facts import facts_by_name
from counterpane.wiring import open_library

FACTS = facts_by_name()
REQUEST: dict[str, Any] = {"parts": {"body": "garter"}, "gauge": {"stitches": 22, "rows": 30, "over_cm": 10}}


@pytest.fixture(scope="module")
def library() -> Services:
    """Return a library with the starters."""
    return open_library()


@pytest.mark.parametrize("name", sizes.named(FACTS))
def test_the_size_planned_lies_inside_what_its_sources_say(name: str) -> None:
    """No house choice lies outside the span of its sources."""
    size = sizes.get(FACTS, name)
    for side in sizes.SIDES:
        least, most = size["range_cm"][side]
        assert least <= size[f"{side}_cm"]
        assert most is None or size[f"{side}_cm"] <= most


@pytest.mark.parametrize("name", sizes.named(FACTS))
def test_every_figure_of_a_size_has_its_source(name: str) -> None:
    """The source of the whole names that of each figure."""
    fact = FACTS[sizes.PREFIX + name]
    assert all(figure["source"] in fact["source"] for figure in fact["value"]["figures"])


def test_no_two_sizes_have_a_name_in_common() -> None:
    """Whoever asks for a crib blanket is answered with one size."""
    names = [*sizes.named(FACTS), *(other for card in sizes.cards(FACTS) for other in card["also"])]
    assert len(names) == len(set(names))


def test_a_plan_of_a_named_size_is_that_of_its_inches(library: Services) -> None:
    """The counts are the same; the answer says what the name stands for."""
    by_name = planning.plan(library, REQUEST | {"size": {"named": "stroller"}})
    by_inches = planning.plan(library, REQUEST | {"size": {"width_in": 30, "length_in": 35}})
    assert by_name["counts"] == by_inches["counts"]
    assert by_name["size"]["named"] == "pram"
    assert by_name["size"]["range_cm"] == {"width": [35.6, 101.6], "length": [76.2, 152.4]}
    assert by_inches["size"]["named"] is None


def test_a_side_beside_a_name_beats_it(library: Services) -> None:
    """A pram blanket of 100 cm keeps the width of the name."""
    asked = planning.plan(library, REQUEST | {"size": {"named": "pram", "length_cm": 100}})["size"]["asked_cm"]
    assert asked == {"width": 76.2, "length": 100.0}


def test_a_name_that_is_not_known_is_refused_with_the_nearest(library: Services) -> None:
    """Its place and the next step come with it."""
    with pytest.raises(BadInput, match="pramm") as refused:
        planning.plan(library, REQUEST | {"size": {"named": "pramm"}})
    assert (refused.value.pointer, refused.value.hint) == ("/size/named", "Probably meant: pram.")
    with pytest.raises(NotFound) as missing:
        sizes.get(FACTS, "zzz")
    assert "throw" in missing.value.hint


def test_a_piece_beside_a_crib_is_a_difference_and_no_judgement() -> None:
    """71.12 by 133.03 cm, each give or take 1.59 (16 CFR 1508.3), beside a piece of 70 by 90 cm."""
    cots = {cot["name"]: cot for cot in sizes.beside_cots(FACTS, Fraction(70), Fraction(90))}
    crib = cots["crib-interior-us"]
    assert (crib["wider_by_cm"], crib["longer_by_cm"]) == ([-2.7, 0.5], [-44.6, -41.4])
    assert cots["mattress-cot-uk"]["longer_by_cm"] == [-30.0, -30.0]


def test_a_side_of_a_cot_that_is_not_known_stays_unknown() -> None:
    """EN 716 bounds the inside length; nothing is said of the width."""
    cots = {cot["name"]: cot for cot in sizes.beside_cots(FACTS, Fraction(70), Fraction(90))}
    assert cots["cot-interior-eu"]["wider_by_cm"] is None
    assert cots["cot-interior-eu"]["longer_by_cm"] == [-50.0, 0.0]
    assert "crib-not-full-size-us" not in cots


def test_no_word_says_that_a_blanket_fits_a_cot() -> None:
    """Neither fits nor tucked in, and nothing that approves."""
    said = json.dumps([sizes.get(FACTS, name) for name in sizes.named(FACTS)])
    assert not re.search(r"\b(fits?|fitted|tuck\w*|safe(?!ty rules)\w*|suitable|approved)\b", said, re.IGNORECASE)
