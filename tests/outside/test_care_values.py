"""Care values against ISO 3758 and ASTM D5489, as pages on them tell it; none of the standards was read itself."""

from __future__ import annotations

import re

import pytest

from counterpane.library.yarn.labels import label
from counterpane_schema.label import Care
from craft.care.makings import FACTS, LAW

GROUPS = {group.name: [value.word for value in group.values] for group in LAW.groups}


def degrees(pattern: str) -> list[int]:
    """Return the temperatures of washings that have this form."""
    return [int(found[1]) for word in GROUPS["washing"] if (found := re.fullmatch(pattern, word))]


def test_washing_temperatures() -> None:
    """doublered.eu, care page: 95 to 30 (50 from memory), one bar 60 to 30, two bars 40 and 30; hand at most 40."""
    assert degrees(r"machine (\d+)") == [95, 70, 60, 50, 40, 30]
    assert degrees(r"machine (\d+) mild") == [60, 50, 40, 30]
    assert degrees(r"machine (\d+) very mild") == [40, 30]
    assert degrees(r"hand (\d+)") == [40, 30]


def test_the_sign_for_washing_at_the_temperature_of_the_room() -> None:
    """ISO 3758:2023 as told by Intertek bulletin 1396: by hand, one bar."""
    assert "hand ambient" in GROUPS["washing"]


def test_the_other_groups() -> None:
    """A table of the symbols' owner, doublered.eu, and Intertek bulletin 1396 for iron without steam."""
    assert GROUPS["bleaching"] == ["any", "oxygen", "none"]
    assert GROUPS["tumble_drying"] == ["normal", "low", "none"]
    assert len(GROUPS["natural_drying"]) == 8
    assert [word.split()[0] for word in GROUPS["ironing"]] == ["200", "200", "150", "150", "110", "none"]
    assert GROUPS["dry_cleaning"] == ["P", "P mild", "F", "F mild", "none"]
    assert GROUPS["wet_cleaning"] == ["normal", "mild", "very mild", "none"]


def test_the_coolest_iron_has_no_steam() -> None:
    """A table of the symbols' owner: one dot, 110 degrees, no steam."""
    assert "110" not in GROUPS["ironing"]


def test_the_order_of_a_label() -> None:
    """The same table and guetermann.com, 2018: wash, bleach, dry, iron, professional care."""
    assert list(dict.fromkeys(group.heading for group in LAW.groups)) == FACTS["care-order"]["value"]


@pytest.mark.parametrize("name", GROUPS)
def test_the_wire_takes_the_values_of_the_facts(name: str) -> None:
    """The words that may be sent are those that are known, no more and no fewer."""
    field = Care().fields[name]
    assert list(field.words) == GROUPS[name]  # type: ignore[attr-defined]


@pytest.mark.parametrize(
    ("celsius", "dots", "fahrenheit"),
    [
        ("30", "1", "85"),
        ("40", "2", "105"),
        ("50", "3", "120"),
        ("60", "4", "140"),
        ("70", "5", "160"),
        ("95", "6", "200"),
    ],
)
def test_the_dots_of_the_united_states(celsius: str, dots: str, fahrenheit: str) -> None:
    """ASTM D5489 as told by gwfash.com: the degrees Fahrenheit are rounded, and 40 °C is 104 °F by formula."""
    care = {"washing": f"machine {celsius}", "bleaching": "none", "tumble_drying": "none", "ironing": "150"}
    yarn = {"fibre": [{"fibre": "cotton", "percent": 100}], "care": {**care, "dry_cleaning": "none"}}
    said = label({"yarns": [yarn], "markets": ["US", "UK"]}, FACTS)["labels"]
    plural = "s" if dots != "1" else ""
    assert said[0]["care"][0].endswith(f"({dots} dot{plural}, {fahrenheit} °F)")
    assert "dot" not in said[1]["care"][0]
    assert not any("dot" in line for line in said[0]["care"][1:])


def test_a_hand_wash_has_dots_too() -> None:
    """The same: the dots stand for degrees, whatever the process."""
    care = {"washing": "hand 30", "bleaching": "none", "tumble_drying": "none", "ironing": "110 no steam"}
    yarn = {"fibre": [{"fibre": "cotton", "percent": 100}], "care": {**care, "dry_cleaning": "none"}}
    said = label({"yarns": [yarn], "markets": ["US"]}, FACTS)["labels"][0]["care"]
    assert said[0] == "Hand wash only, at 30 °C at most (1 dot, 85 °F)"
