"""Every reading and counting rule: its bad example trips it alone, the same made good trips none."""

from __future__ import annotations

import pytest

from counterpane.craft.checking import examine
from counterpane.craft.findings import Finding, Rule
from counterpane.craft.rules import ALL, TEXT_RULES, judge_text
from counterpane.craft.stitches import Vocabulary

# This one rule speaks of the cast-on that is asked for beside the text.
ASKED = {"cast-on-differs": 24}
# This one rule names the cause of a trouble that shows in another row, which has a finding of its own.
BESIDE = {"row-upsets-later-rows": {"repeat-does-not-fit"}, "too-many-unknown-terms": {"unknown-term"}}


def findings_of(rule: Rule, text: str, vocabulary: Vocabulary) -> tuple[Finding, ...]:
    """Judge an example of a rule."""
    return judge_text(examine(text, vocabulary, ASKED.get(rule.slug)))


@pytest.mark.parametrize("rule", TEXT_RULES, ids=lambda rule: rule.slug)
def test_a_bad_example_trips_exactly_its_rule(rule: Rule, vocabulary: Vocabulary) -> None:
    """Each bad example is found by its own rule and by no other, but the trouble whose cause the rule names."""
    found = {finding.rule for finding in findings_of(rule, rule.bad, vocabulary)}
    assert found == {rule.slug} | BESIDE.get(rule.slug, set())


@pytest.mark.parametrize("rule", TEXT_RULES, ids=lambda rule: rule.slug)
def test_a_good_example_trips_no_rule(rule: Rule, vocabulary: Vocabulary) -> None:
    """Each corrected example is without a finding."""
    assert findings_of(rule, rule.good, vocabulary) == ()


@pytest.mark.parametrize("rule", TEXT_RULES, ids=lambda rule: rule.slug)
def test_a_finding_has_a_place_a_message_and_a_next_step(rule: Rule, vocabulary: Vocabulary) -> None:
    """A finding stands on a line and column of the text and says what to do."""
    for finding in findings_of(rule, rule.bad, vocabulary):
        assert finding.line and finding.column and finding.message and finding.hint


@pytest.mark.parametrize("rule", TEXT_RULES, ids=lambda rule: rule.slug)
def test_a_correction_checks_clean(rule: Rule, vocabulary: Vocabulary) -> None:
    """A corrected row put in the place of the wrong one leaves no error."""
    for finding in findings_of(rule, rule.bad, vocabulary):
        lines = rule.bad.splitlines()
        for correction in finding.corrections:
            lines[(finding.line or 1) - 1] = correction
            again = judge_text(examine("\n".join(lines), vocabulary))
            assert [found for found in again if found.severity == "error"] == []


@pytest.mark.parametrize("rule", ALL.values(), ids=lambda rule: rule.slug)
def test_a_rule_is_documented(rule: Rule) -> None:
    """Title, reason, source and bad example are there for the pages made of them."""
    assert rule.title and rule.reason and rule.source and rule.bad
    assert rule.slug == rule.slug.lower() and " " not in rule.slug


def test_the_contract_names_only_rules_that_exist() -> None:
    """Every slug that outside checks may ask for is a rule."""
    promised = """unknown-term ambiguous-term bracket-not-closed repeat-without-start repeat-without-end
        two-open-repeats repeat-inside-repeat repeat-uses-nothing group-uses-several row-runs-short
        row-leaves-stitches repeat-does-not-fit rows-do-not-join stated-count-wrong stated-multiple-wrong
        stated-multiple-wasteful row-repeat-differs count-drifts cast-on-differs repeat-assumed no-rows"""
    assert set(promised.split()) <= set(ALL)
