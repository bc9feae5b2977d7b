"""Rules about plans: each bad example trips its rule and no other, each good one trips none."""

from __future__ import annotations

import json
from collections.abc import Mapping

import pytest

from counterpane.craft.component import Component
from counterpane.craft.constructions.amending import amended
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.making import attempt
from counterpane.craft.findings import Finding, Rule
from counterpane.craft.rules import fabric, fitting
from counterpane.craft.stitches import Vocabulary
from counterpane.library.plans import plan_request_of

RULES = (*fitting.RULES, *fabric.RULES)
each_rule = pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.slug)


def judged(text: str, starters: Mapping[str, Component], vocabulary: Vocabulary) -> tuple[Attempt, list[Finding]]:
    """Work out the request of an example and put all rules to it."""
    request = plan_request_of(json.loads(text), starters.__getitem__, vocabulary)
    made = attempt(request, vocabulary)
    return made, [finding for rule in RULES for finding in rule.check(made)]


@each_rule
def test_a_bad_example_trips_its_rule_and_no_other(
    rule: Rule[Attempt], starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """What is found bears the rule's own slug and severity, and an error is found just where there is no plan."""
    made, findings = judged(rule.bad, starters, vocabulary)
    assert {finding.rule for finding in findings} == {rule.slug}
    assert findings[0].severity == rule.severity
    assert (made.plan is None) == (rule.severity == "error")


@each_rule
def test_a_good_example_trips_no_rule(
    rule: Rule[Attempt], starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """The corrected request makes a plan about which there is nothing to say."""
    made, findings = judged(rule.good, starters, vocabulary)
    assert (made.plan is not None, findings) == (True, [])


@each_rule
def test_a_finding_has_a_place_a_next_step_and_corrections_that_work(
    rule: Rule[Attempt], starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """Each change that is offered makes the plan possible by itself."""
    made, findings = judged(rule.bad, starters, vocabulary)
    for finding in findings:
        assert (finding.pointer or "").startswith("/")
        assert finding.hint
        for change in finding.changes:
            assert attempt(amended(made.request, change), vocabulary).plan is not None
