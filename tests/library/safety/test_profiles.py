"""Lists of wards and charities: read strictly, found by their slugs, and told with every verdict."""

from typing import Any

import pytest

from counterpane.craft.safety import SafetyInputs
from counterpane.library.errors import NotFound
from counterpane.library.safety import profiles
from counterpane.library.safety.profile_finding import found_among
from counterpane.library.safety.safety import assess
from counterpane.library.values import BadInput
from counterpane.seeding.profiles import load_profiles

SHIPPED = load_profiles()
FIND = found_among(SHIPPED)
LIST: dict[str, Any] = {
    "name": "Ward 3",
    "dated": "2026-10-01",
    "source": "leaflet of the ward",
    "items": [{"says": "No holes over 5 mm.", "input": "hole_mm", "at_most": 5}, {"says": "No perfume."}],
}


def test_the_lists_that_ship_say_that_they_were_relayed() -> None:
    """A list that nobody saw at first hand says so, and each has a day."""
    assert len(SHIPPED) == 2
    assert all("second-hand" in each.source and each.dated.startswith("2026-") for each in SHIPPED.values())


def test_two_units_may_want_what_contradicts() -> None:
    """K3: acrylic agrees with one list and differs from another, and neither list is mended."""
    acrylic = {"fibres": [{"name": "acrylic", "pct": 100}], "wash": {"method": "machine", "temp_c": 60}}
    oxford, wool = (
        assess({**acrylic, "profile": name}, FIND)["profile"]["items"]
        for name in ("neonatal-unit-oxford-relayed", "neonatal-charity-new-zealand-relayed")
    )
    assert [each["verdict"] for each in wool] == ["differs"]
    assert "agrees" in [each["verdict"] for each in oxford]


def test_a_list_of_ones_own_is_sent_whole() -> None:
    """Each item comes back in its own words, with its verdict and what was found."""
    told = assess({"hole_mm": 4.5, "profile": LIST})["profile"]
    assert (told["name"], told["dated"], told["source"]) == ("Ward 3", "2026-10-01", "leaflet of the ward")
    assert [(each["says"], each["verdict"], each["found"]) for each in told["items"]] == [
        ("No holes over 5 mm.", "agrees", "hole_mm is 4.5"),
        ("No perfume.", "not assessed", "no input here judges this: look for yourself"),
    ]


def test_no_verdict_clears_a_blanket() -> None:
    """The list decides, and the words that stand with it say so."""
    told = assess({"hole_mm": 4.5, "profile": LIST})["profile"]
    assert "It decides" in told["about"]
    assert not {each["verdict"] for each in told["items"]} & {"pass", "passed", "ok", "safe", "approved"}


@pytest.mark.parametrize("slug", SHIPPED)
def test_a_list_can_be_sent_back_as_it_was_got(slug: str) -> None:
    """What is told of a list is a list again."""
    content = profiles.content_of(SHIPPED[slug])
    assert profiles.profile_of(content) == SHIPPED[slug]


@pytest.mark.parametrize(
    ("change", "pointer"),
    [
        ({"name": None}, "/profile/name"),
        ({"dated": "1 October"}, "/profile/dated"),
        ({"dated": "2026-02-30"}, "/profile/dated"),
        ({"items": []}, "/profile/items"),
        ({"items": [{"says": "x"}] * 101}, "/profile/items"),
        ({"items": [{"input": "hole_mm", "under": 5}]}, "/profile/items/0/says"),
        ({"items": [{"says": "x", "input": "holes", "under": 5}]}, "/profile/items/0/input"),
        ({"items": [{"says": "x", "input": "hole_mm"}]}, "/profile/items/0"),
        ({"items": [{"says": "x", "under": 5}]}, "/profile/items/0"),
        ({"items": [{"says": "x", "input": "hole_mm", "wants": True}]}, "/profile/items/0"),
        ({"items": [{"says": "x", "input": "openwork", "under": 5}]}, "/profile/items/0"),
        ({"colour": "red"}, "/profile/colour"),
    ],
)
def test_a_list_that_does_not_hold_is_refused_at_its_place(change: dict[str, Any], pointer: str) -> None:
    """Each refusal points at the field and says what to give."""
    with pytest.raises(BadInput) as refused:
        assess({"profile": {**LIST, **change}})
    assert refused.value.pointer == pointer
    assert refused.value.hint


def test_a_slug_that_is_not_known_names_the_nearest() -> None:
    """In a request it is bad input, by itself it is not found."""
    with pytest.raises(BadInput, match="neonatal-unit-oxfrd") as refused:
        assess({"profile": "neonatal-unit-oxfrd-relayed"}, FIND)
    assert "neonatal-unit-oxford-relayed" in str(refused.value.hint)
    with pytest.raises(NotFound):
        FIND("nobody", None)


def test_the_inputs_of_items_are_inputs() -> None:
    """What an item can be held to is asked of the safety inputs by a name that they know."""
    assert all(not SafetyInputs().knows(name) for name in profiles.CONDITIONS)
