"""The finishing and the care of a planned piece, from the yarn of its request."""

from __future__ import annotations

from typing import Any

import pytest

from counterpane.cli.planning import bench_over
from counterpane.cli.planning import planned as planned_there
from counterpane.craft.pattern import Pattern
from counterpane.library.patterns.patterns import recheck
from counterpane.library.plans.plan_labels import for_with_yarn
from counterpane.library.plans.planning import made, pattern_of, plan
from counterpane.press.text import as_text
from counterpane.wiring import open_library

SERVICES = open_library()
REQUEST: dict[str, Any] = {
    "parts": {"body": "waffle"},
    "gauge": {"stitches": 22, "rows": 30, "over_cm": 10},
    "size": {"width_cm": 70, "length_cm": 90},
}


def written(yarn: Any, terms: str = "us") -> Pattern:
    """Return the pattern of a waffle blanket in this yarn."""
    content = {**REQUEST, "yarn": yarn, "terms": terms}
    return pattern_of(made(SERVICES, content), content, SERVICES.known)


def of(*names: str) -> list[dict[str, object]]:
    """Return fibres of equal shares."""
    return [{"name": name, "pct": 100 / len(names)} for name in names]


@pytest.mark.parametrize(
    ("names", "said", "unsaid"),
    [
        (("cotton",), "shortens when it is washed", "superwash"),
        (("merino",), "Whether the wool is superwash is not known", "acrylic"),
        (("acrylic", "cotton"), "No steam and no iron", "Steam, if"),
        (("bamboo",), "The fibres of the yarn are not known: no steam", "Pin it out"),
    ],
)
def test_the_finishing_is_that_of_the_fibres(names: tuple[str, ...], said: str, unsaid: str) -> None:
    """What is not known of a yarn is said, and nothing that could spoil it is advised."""
    text = " ".join(written({"fibres": of(*names)}).finishing)
    assert said in text and unsaid not in text


def test_a_piece_is_pinned_to_a_range_round_its_size() -> None:
    """Cotton: 70 cm wide at 22 stitches is 154 stitches, 70.0 to 71.4 cm; by hand."""
    text = " ".join(written({"fibres": of("cotton")}).finishing)
    assert "70.0 to 71.4 cm (27½ to 28 in) wide" in text


def test_the_finishing_keeps_to_the_label() -> None:
    """No steam where the label has none, a tumble dryer only where it has one."""
    steps = " ".join(written(MERINO).finishing)
    assert "No steam: its label does not allow it." in steps and "tumble dryer" not in steps
    other = {**MERINO, "care": {"ironing": "150", "tumble_drying": "low"}}
    steps = " ".join(written(other).finishing)
    assert "Steam is held above" in steps and "A short time in a tumble dryer draws it in again." in steps
    steps = " ".join(written({**MERINO, "care": {}}).finishing)
    assert "Steam, if its label allows it" in steps and "draws it in again, if its label allows one." in steps


def test_a_yarn_that_is_known_in_part_is_finished_as_the_gentlest() -> None:
    """Its other fibre may bear neither steam nor pins."""
    fibre = [{"fibre": "cotton", "percent": 60}, {"fibre": "bamboo", "percent": 40}]
    steps = " ".join(written({"fibre": fibre}).finishing)
    assert "Not all fibres of the yarn are known" in steps and "No steam" in steps and "Pin it" not in steps


def test_without_a_yarn_nothing_is_known() -> None:
    """No steam, no care."""
    pattern = written(None)
    assert any("not known: no steam" in step for step in pattern.finishing)
    assert pattern.care.startswith("Not known")


@pytest.mark.parametrize("terms", ["us", "uk"])
@pytest.mark.parametrize("names", [("cotton",), ("merino", "silk"), ("acrylic",), ("alpaca", "viscose"), ("bamboo",)])
def test_a_pattern_with_its_finishing_reads_back_as_its_plan(names: tuple[str, ...], terms: str) -> None:
    """No word of the finishing is taken for a row."""
    pattern = written({"fibres": of(*names)}, terms)
    assert recheck(pattern, as_text(pattern), SERVICES.vocabulary) == ()


MERINO: dict[str, Any] = {
    "name": "an invented wool",
    "colour": "MC",
    "metres_per_100g": 230,
    "superwash": True,
    "fibre": [{"fibre": "merino", "percent": 100}],
    "care": {
        "washing": "machine 40",
        "bleaching": "none",
        "tumble_drying": "none",
        "ironing": "110 no steam",
        "dry_cleaning": "P",
    },
}
COTTON: dict[str, Any] = {
    "colour": "CC",
    "parts": ["bottom", "top"],
    "metres_per_100g": 250,
    "fibre": [{"fibre": "cotton", "percent": 100}],
}


def planned(yarn: Any, **more: Any) -> dict[str, Any]:
    """Return the plan of a waffle blanket in this yarn."""
    return plan(SERVICES, {**REQUEST, "yarn": yarn, **more})


def test_the_label_of_a_plan_in_one_yarn_needs_no_weighing() -> None:
    """Its fibres are those of the yarn, in the words of the markets that the piece is for."""
    label = planned(MERINO, **{"for": {"markets": ["UK"]}})["label"]
    assert label["labels"][0]["fibres"] == ["100% wool"]
    assert label["labels"][0]["care"][0] == "Machine wash at 40 °C at most, normal process"
    assert [finding["rule"] for finding in label["findings"]] == ["fibre-name-of-trade"]
    found = label["findings"][0]
    assert found["pointer"] == "/yarn/fibre/0"
    assert found["corrections"][0]["pointer"] == "/yarn/fibre/0/fibre"
    other = planned({"fibres": of("merino")})["label"]["findings"][0]
    assert other["corrections"][0]["pointer"] == "/yarn/fibres/0/name"


def test_two_yarns_of_estimated_grams_give_bounds() -> None:
    """The bounds are those of the estimates: each yarn at its least beside the other at its most."""
    answer = planned([MERINO, COTTON])
    grams = {each["colour"]: each["grams"] for each in answer["yarn"]["colours"]}
    found = {each["fibre"]: each["between"] for each in answer["label"]["composition"]["fibres"]}
    least = 100 * grams["CC"]["low"] / (grams["CC"]["low"] + grams["MC"]["high"])
    most = 100 * grams["CC"]["high"] / (grams["CC"]["high"] + grams["MC"]["low"])
    assert found["cotton"][0] <= least + 0.05 <= found["cotton"][0] + 0.2
    assert found["cotton"][1] >= most - 0.05 >= found["cotton"][1] - 0.2
    assert answer["label"]["composition"]["all_fibres_told"]
    parts = {part["part"]: part["fibres"][0]["fibre"] for part in answer["label"]["parts"]}
    assert parts == {"the rest": "wool", "bottom and top": "cotton"}
    rules = {finding["rule"]: finding for finding in answer["label"]["findings"]}
    assert rules["care-not-told"]["pointer"] == "/yarn/1/care"
    assert rules["yarn-mass-not-told"]["severity"] == "note"


def test_a_yarn_that_works_nothing_is_no_part_of_the_piece() -> None:
    """Of two yarns for the same part the first works it; what is found of a later one points at its own place."""
    acrylic = {"colour": "idle", "parts": ["top"], "fibre": [{"fibre": "acrylic", "percent": 100}]}
    yarns = [{**COTTON, "parts": None}, {**COTTON, "colour": "A", "parts": ["top"]}, acrylic]
    yarns.append({**MERINO, "colour": "C", "parts": ["bottom"]})
    answer = planned(yarns)
    assert [each["colour"] for each in answer["yarn"]["colours"]] == ["CC", "A", "C"]
    assert {each["fibre"] for each in answer["label"]["composition"]["fibres"]} == {"wool", "cotton"}
    found = {each["rule"]: each["pointer"] for each in answer["label"]["findings"]}
    assert found["fibre-name-of-trade"] == "/yarn/3/fibre/0"
    assert not any("acrylic" in step for step in written(yarns).finishing)


def test_a_plan_without_yarn_has_no_label() -> None:
    """And one whose fibres nobody told has a label that says so."""
    assert planned(None)["label"] is None
    label = planned({"name": "a yarn"})["label"]
    assert not label["composition"]["known"] and label["not_known"]


def test_the_safety_rules_hear_of_the_fibres() -> None:
    """What the piece is for beats what its yarn tells."""
    assert for_with_yarn({}, None) == {}
    told = planned(MERINO)["label"]
    assert for_with_yarn({}, told) == {
        "fibres": [{"name": "wool", "pct": 100}],
        "superwash": True,
        "wash": {"method": "machine", "temp_c": 40},
        "decoration_pct": 0,
    }
    said = for_with_yarn({"for": {"superwash": False, "use": "pram", "wash": None}}, told)
    assert (said["superwash"], said["use"], said["wash"]["temp_c"]) == (False, "pram", 40)


def test_a_pattern_says_the_care_and_what_is_not_known_of_it() -> None:
    """All of it in one yarn; in two, what the other leaves at most."""
    assert written(MERINO).care.startswith("Machine wash at 40 °C at most, normal process. Do not bleach.")
    care = written([MERINO, COTTON]).care
    assert care.startswith("Not known: washing, bleaching, drying, ironing, professional care; ask the spinner.")
    assert "No more than: Machine wash at 40 °C at most" in care


def test_the_example_of_the_command_line_is_that_of_the_api() -> None:
    """A plan over the starters has the same label by both ways."""
    content = {**REQUEST, "yarn": MERINO}
    with bench_over(content, None) as bench:
        assert planned_there(content, bench).answer["label"] == planned(MERINO)["label"]
