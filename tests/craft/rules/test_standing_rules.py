"""The rules about where the revisions stand that a plan takes."""

from __future__ import annotations

import json

import pytest

from counterpane.craft.component.standing import PlacedPart
from counterpane.craft.findings import Finding, Rule
from counterpane.craft.rules.standing import RULES


def found(text: str) -> list[Finding]:
    """Return what all rules of the family say of an example."""
    part = PlacedPart(**json.loads(text))
    return [finding for rule in RULES for finding in rule.check(part)]


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.slug)
def test_a_bad_example_trips_its_rule_alone(rule: Rule[PlacedPart]) -> None:
    """With the severity that the rule says, at the place of the part, and with the sentence that was given."""
    (finding,) = found(rule.bad)
    assert (finding.rule, finding.severity, finding.pointer) == (rule.slug, rule.severity, "/parts/body")
    assert "Row 3 was misprinted." in finding.message


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.slug)
def test_a_good_example_trips_none(rule: Rule[PlacedPart]) -> None:
    """An accepted part is not spoken of."""
    assert found(rule.good) == []


def test_a_replacement_is_a_correction() -> None:
    """The value can be put where the pointer shows; without one there is none."""
    part = PlacedPart("/parts/body", "waffle", "deprecated", "It puckers.", "seed-stitch")
    (finding,) = RULES[0].check(part)
    assert [(change.pointer, change.value) for change in finding.changes] == [("/parts/body", "seed-stitch")]
    (bare,) = RULES[0].check(PlacedPart("/parts/body", "waffle", "deprecated", "It puckers."))
    assert bare.changes == ()


@pytest.mark.parametrize(
    ("until", "over", "said"),
    [("2026-12-24", False, "until 2026-12-24: "), ("2026-12-24", True, "which has passed"), (None, False, "e: It is")],
)
def test_a_quarantine_says_whether_its_day_has_passed(until: str | None, over: bool, said: str) -> None:
    """It stays an error either way."""
    part = PlacedPart("/parts/body", "waffle", "quarantined", "It is looked at.", None, until, over)
    (finding,) = (each for rule in RULES for each in rule.check(part))
    assert (finding.severity, said in finding.message.replace("quarantine:", "e:")) == ("error", True)
