"""Assessing safety inputs: what is found, looked at, and not looked at, and in which words."""

import json
import re
from typing import Any

import pytest

from counterpane.craft.rules.safety import RULES
from counterpane.craft.safety import AGE_BANDS, MARKETS, USES
from counterpane.library.patterns.cautions import CAUTIONS
from counterpane.library.safety.safety import assess

ALWAYS = {
    "baby-out-of-sight",
    "adult-dozing-beside-the-baby",
    "pin-left-in",
    "baby-left-cold",
    "loose-blanket-in-sleep-space",
    "blanket-over-the-pram",
    "blanket-under-the-harness",
    "chemistry-not-shown",
    "mothballs-near-a-baby",
}
"""Rules that are printed for every piece of an age, a use or a fibre, so that other rules' examples trip them too."""

NEVER_PRINTED = ("safe", "approved", "fits tucked in", "breathable", "all clear", "compliant", "✓", "✔")


def rules_of(inputs: dict[str, Any], severity: str | None = None) -> list[str]:
    """Return the rules that speak of these inputs."""
    return [each["rule"] for each in assess(inputs)["findings"] if severity in (None, each["severity"])]


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.slug)
def test_a_bad_example_trips_its_rule_and_no_other(rule: Any) -> None:
    """Each bad example trips exactly its rule, beside what is always printed."""
    spoken = set(rules_of(json.loads(rule.bad)))
    assert rule.slug in spoken
    assert spoken - {rule.slug} <= ALWAYS


@pytest.mark.parametrize("rule", [rule for rule in RULES if rule.good], ids=lambda rule: rule.slug)
def test_a_good_example_trips_nothing_but_what_is_always_printed(rule: Any) -> None:
    """No good example trips its rule, nor any other that is not always printed."""
    spoken = set(rules_of(json.loads(rule.good)))
    assert rule.slug not in spoken
    assert spoken <= ALWAYS


def test_only_the_note_on_pins_has_no_good_example() -> None:
    """One rule is printed whatever is entered, and so nothing makes it silent."""
    assert [rule.slug for rule in RULES if not rule.good] == ["pin-left-in"]


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.slug)
def test_a_rule_explains_itself(rule: Any) -> None:
    """Each rule has a title, a reason, a source, a reference, a basis, and where its sources speak."""
    assert rule.title and rule.reason and rule.source and rule.reference and rule.jurisdiction
    assert rule.basis in {"published", "borrowed", "house", "memory"}


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.slug)
def test_a_source_has_its_year_or_says_that_it_has_none(rule: Any) -> None:
    """The edition or the year of each source stands in its text, or that it is the house's, a practice, or memory."""
    assert re.search(r"\b(?:19|20)\d\d\b|house|memory|practice", rule.source)


def test_a_finding_has_the_members_of_the_contract() -> None:
    """The answer and its findings have exactly the members that are agreed."""
    answer = assess({"age_band": "3-12m", "use": "pram", "markets": ["UK"], "hole_mm": 6.9})
    assert list(answer) == ["findings", "assessed", "not_assessed", "not_applicable"]
    first = answer["findings"][0]
    assert list(first) == ["rule", "reference", "severity", "basis", "markets", "message", "source"]
    assert (first["reference"], first["severity"], first["markets"]) == ("R11", "warn", ["UK"])


def test_the_strictest_findings_come_first() -> None:
    """Stops stand before warnings, and warnings before notes."""
    answer = assess({"age_band": "0-3m", "use": "sleep", "markets": ["UK", "US"], "hole_mm": 7, "tail_mm": 12})
    order = [each["severity"] for each in answer["findings"]]
    assert order == sorted(order, key=["stop", "warn", "note"].index)


def test_nothing_known_assesses_nothing() -> None:
    """Without inputs no rule passes: what is always printed speaks, and all else is not assessed."""
    answer = assess({})
    assert answer["assessed"] == answer["not_applicable"] == []
    assert [each["reference"] for each in answer["findings"]] == ["R02", "R43", "R44"]
    assert len(answer["not_assessed"]) == 47 - 3


EVERYTHING: dict[str, Any] = {
    "age_band": "3-12m",
    "use": "hospital",
    "markets": ["UK"],
    "hole_mm": 4,
    "float_mm": 0,
    "tail_mm": 0,
    "loop_mm": 0,
    "loop_perimeter_mm": 0,
    "attachments": [],
    "fibres": [{"name": "wool", "pct": 100, "micron": 19}],
    "halo": False,
    "raised_surface": False,
    "superwash": True,
    "wash": {"method": "machine", "temp_c": 60},
    "mass_g": 200,
    "width_cm": 100,
    "length_cm": 60,
    "layers": 1,
    "filled": False,
    "weighted": False,
    "enclosed_part": False,
    "openwork": False,
    "gaps": False,
    "gauge_sts_10cm": 22,
    "features": [],
    "chemistry": {"baby_class": True},
    "flame_retardant": False,
    "decoration_pct": 0,
    "says_pure": True,
    "sold": True,
    "label": ["fibre", "maker", "batch"],
    "medical_device": False,
    "emollient": False,
}
"""All that can be known of a plain piece."""


@pytest.mark.parametrize("band", AGE_BANDS)
@pytest.mark.parametrize("use", USES)
def test_when_everything_is_known_nothing_is_left_not_assessed(band: str, use: str) -> None:
    """A plain piece of which all is entered is looked at by every rule that concerns it."""
    assert assess({**EVERYTHING, "age_band": band, "use": use})["not_assessed"] == []


@pytest.mark.parametrize("name", EVERYTHING)
def test_an_input_that_is_left_out_never_makes_a_rule_pass(name: str) -> None:
    """With one input less, no rule is assessed that was not before, and those that need it are named."""
    for use in USES:
        whole = {**EVERYTHING, "use": use}
        lacking = {key: value for key, value in whole.items() if key != name}
        before, after = assess(whole), assess(lacking)
        assert set(after["assessed"]) <= set(before["assessed"])


def test_a_fibre_that_nobody_has_heard_of_passes_no_rule() -> None:
    """A name of no known fibre leaves the rules on fibres not assessed."""
    answer = assess({**EVERYTHING, "fibres": [{"name": "moonspun", "pct": 100}]})
    assert {"R29", "R31", "R32", "R33", "R35", "R38", "R47"} <= set(answer["not_assessed"])


@pytest.mark.parametrize("band", AGE_BANDS)
@pytest.mark.parametrize("use", USES)
def test_every_rule_stands_in_one_place(band: str, use: str) -> None:
    """Each listed rule has spoken, was assessed, was not, or does not apply, and is in no two of these."""
    answer = assess({"age_band": band, "use": use, "markets": ["US"], "hole_mm": 6, "tail_mm": 0})
    spoken = {each["reference"] for each in answer["findings"]}
    rest = answer["assessed"] + answer["not_assessed"] + answer["not_applicable"]
    assert len(rest) == len(set(rest)) == 47 - len(spoken)
    assert not spoken & set(rest)


def test_a_rule_that_could_say_more_is_also_not_assessed() -> None:
    """Sleep advice is printed for an unknown use, and the rule still counts as not assessed."""
    answer = assess({"age_band": "0-3m"})
    assert "loose-blanket-in-sleep-space" in [each["rule"] for each in answer["findings"]]
    assert "R01" in answer["not_assessed"]


def test_a_small_opening_passes_for_a_preterm_baby_only_in_plain_fabric() -> None:
    """Whether there is openwork must be known before R14 counts as assessed."""
    assert "R14" in assess({"age_band": "preterm", "hole_mm": 4.9})["not_assessed"]
    assert "R14" in assess({"age_band": "preterm", "hole_mm": 4.9, "openwork": False})["assessed"]


def sweep() -> list[dict[str, Any]]:
    """Return every finding that the rules give over all ages, uses and markets."""
    large = {"hole_mm": 13, "float_mm": 26, "tail_mm": 26, "attachments": [{"kind": "tassel"}, {"kind": "pom-pom"}]}
    small = {"hole_mm": 5, "float_mm": 11, "tail_mm": 11}
    open_ = {"openwork": True, "gaps": True, "gauge_sts_10cm": 8}
    known = [
        {"age_band": band, "use": use, "markets": markets} | more
        for band in AGE_BANDS
        for use in (*USES, None)
        for markets in ([], list(MARKETS))
        for more in (large, small, open_)
    ]
    examples = [json.loads(rule.bad) for rule in RULES]
    return [finding for inputs in (*known, *examples) for finding in assess(inputs)["findings"]]


def test_no_word_ever_clears_a_blanket() -> None:
    """No message, title, reason or caution holds a word that could be taken for a clearance; every rule is heard."""
    said = sweep()
    assert {each["rule"] for each in said} == {rule.slug for rule in RULES}
    texts = {each["message"] for each in said} | {text for rule in RULES for text in (rule.title, rule.reason)}
    assert not [text for text in texts | set(CAUTIONS) for word in NEVER_PRINTED if word in text.casefold()]


def test_tucking_in_is_never_told_without_its_country() -> None:
    """A message that speaks of tucking in names the country whose advice it is."""
    texts = {each["message"] for each in sweep()} | set(CAUTIONS)
    tucked = [text for text in texts if "tucked" in text]
    assert tucked
    assert all(any(name in text for name in ("United Kingdom", "Australia", "Netherlands")) for text in tucked)


def test_the_cautions_say_what_this_is_not() -> None:
    """The cautions begin with what the answer is, and end with when its sources were read."""
    assert "general information, not approval" in CAUTIONS[0]
    assert "2026" in CAUTIONS[-1]
    assert len(CAUTIONS) == len(set(CAUTIONS)) == 16


def test_fuzz_for_canada_alone_has_the_test_of_canada_alone() -> None:
    """Where no other market is named, the yardstick borrowed from clothing is not printed beside it."""
    inputs = {"raised_surface": True, "fibres": [{"name": "cotton", "pct": 100}], "markets": ["CA"]}
    found = [each for each in assess(inputs)["findings"] if each["rule"] == "raised-surface-flashes"]
    assert [each["markets"] for each in found] == [["CA"]]
