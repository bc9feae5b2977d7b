"""The rules of labels by their own examples."""

from __future__ import annotations

import json

import pytest

from counterpane.craft.care.labels import Labelled
from counterpane.craft.findings import Rule
from counterpane.craft.rules.label import RULES, judge_label
from counterpane.library.yarn.labels import label_of
from counterpane_schema.faults import faults_of
from counterpane_schema.label import LabelRequest
from craft.care.makings import FACTS


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.slug)
def test_the_bad_example_trips_its_rule_and_the_good_one_none(rule: Rule[Labelled]) -> None:
    """What is wrong in the one is put right in the other."""
    found = judge_label(label_of(json.loads(rule.bad), FACTS))
    assert {finding.rule for finding in found} == {rule.slug}
    assert {finding.severity for finding in found} == {rule.severity}
    assert judge_label(label_of(json.loads(rule.good), FACTS)) == ()


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.slug)
def test_examples_are_requests(rule: Rule[Labelled]) -> None:
    """Both can be sent as they stand, and a finding points into the bad one."""
    for text in (rule.bad, rule.good):
        assert faults_of(LabelRequest(), json.loads(text)) == ()
    for finding in rule.check(label_of(json.loads(rule.bad), FACTS)):
        assert finding.message and finding.hint
        assert finding.pointer and finding.pointer.startswith(("/yarns/", "/claims/", "/stated", "/washed/"))


def test_errors_stand_first() -> None:
    """What makes a label wrong comes before what is a remark."""
    content = {"yarns": [{"fibre": [{"fibre": "merino", "percent": 50}, {"fibre": "cloud", "percent": 50}]}]}
    assert [finding.severity for finding in judge_label(label_of(content, FACTS))] == ["error", "note"]


def test_of_several_claims_only_the_pure_one_is_doubted() -> None:
    """A claim that the piece is soft says nothing of its fibres."""
    rule = next(rule for rule in RULES if rule.slug == "pure-of-several-fibres")
    whole = {**json.loads(rule.bad), "claims": ["soft", "pure wool"]}
    found = [each for each in judge_label(label_of(whole, FACTS)) if each.rule == rule.slug]
    assert [each.pointer for each in found] == ["/claims/1"]
