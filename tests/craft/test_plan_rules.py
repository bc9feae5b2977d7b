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
from counterpane.library.plans.plans import plan_request_of

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


def findings(
    content: dict[str, object], starters: Mapping[str, Component], vocabulary: Vocabulary
) -> dict[str, list[Finding]]:
    """Return what all rules say of a request for 70 by 90 cm at an invented gauge, by rule."""
    usual = {"gauge": {"stitches": 22, "rows": 30, "over_cm": 10}, "size": {"width_cm": 70, "length_cm": 90}}
    found: dict[str, list[Finding]] = {}
    for finding in judged(json.dumps({**usual, "parts": content}), starters, vocabulary)[1]:
        found.setdefault(finding.rule, []).append(finding)
    return found


def test_bands_that_need_several_changes_get_them_together(
    starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """Four bands of 2, 3, 4 and 5 stitches with four different rests meet when some of them give way."""
    repeats = ((4, 1), (4, 2), (4, 3), (4, 0))
    body = [
        {"text": f"Rows 1 and 2: *k2, p2; rep from * to last {of + plus} sts, k{of + plus}."} for of, plus in repeats
    ]
    finding = findings({"body": body}, starters, vocabulary)["parts-share-no-count"][0]
    assert len(finding.changes) >= 2
    assert all("together" in change.why for change in finding.changes)
    for change in finding.changes:
        body[int(change.pointer.split("/")[3])]["stitches"] = change.value  # type: ignore[assignment]
    assert "parts-share-no-count" not in findings({"body": body}, starters, vocabulary)


@pytest.mark.parametrize(
    ("content", "rule", "words"),
    [
        ({"body": "garter", "sides": {"component": "garter-border", "rows": 3}}, "field-without-use", "“stitches”"),
        ({"body": {"component": "garter", "left": "Row 1: k1."}}, "field-without-use", "Leave “left” out."),
        ({"body": "stocking-stitch", "sides": None}, "border-narrow-for-curl", "at least 4.0 cm"),
        (
            {"body": "stocking-stitch", "bottom": {"component": "garter-border", "rows": 4}},
            "border-narrow-for-curl",
            "at least 10 rows",
        ),
        ({"body": {"text": "Row 1: k1, ssk, k to end.\nRow 2: k."}}, "part-count-drifts", "Balance"),
    ],
)
def test_a_finding_says_what_to_do(
    content: dict[str, object],
    rule: str,
    words: str,
    starters: Mapping[str, Component],
    vocabulary: Vocabulary,
) -> None:
    """The hint names the field, the width or the rows."""
    assert any(words in finding.hint for finding in findings(content, starters, vocabulary)[rule])


def test_a_moss_corner_in_words_breaks_over_an_even_count(
    starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """The mirror of five moss stitches is the same five, one off the base on the left."""
    parts = {"body": "garter", "bottom": "seed-stitch-border", "sides": {"text": "Row 1: k1, p1, k1, p1, k1."}}
    assert "left corner" in findings(parts, starters, vocabulary)["moss-corner-breaks"][0].message


GAUGES = (
    '"gauge": [{"stitches": 22, "rows": 30, "over_cm": 10, "in": "muff-stitch"}],'
    ' "size": {"width_cm": 70, "length_cm": 90}}'
)


def test_a_one_sided_border_of_a_reversible_body_is_told(
    starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """A border in words is looked at as its rows show it."""
    plain = r'"bottom": {"text": "Row 1 (RS): knit.\nRow 2: purl.", "rows": 12}'
    _, findings = judged(f'{{"parts": {{"body": "muff-stitch", {plain}}}, {GAUGES}', starters, vocabulary)
    (found,) = (finding for finding in findings if finding.rule == "one-sided-among-reversible")
    assert found.pointer == "/parts/bottom"


def test_a_firm_cast_on_under_a_rib_is_told(starters: Mapping[str, Component], vocabulary: Vocabulary) -> None:
    """The edge lies at the bottom border, and at the body where there is none."""
    parts = '"bottom": {"component": "rib-one-by-one-border", "rows": 12}, "cast_on": "cable-cast-on"'
    _, findings = judged(f'{{"parts": {{"body": "muff-stitch", {parts}}}, {GAUGES}', starters, vocabulary)
    (found,) = (finding for finding in findings if finding.rule == "edge-binds")
    assert (found.severity, found.pointer) == ("warning", "/parts/cast_on")


def test_a_body_that_ends_as_it_begins_is_not_told_of(
    starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """Basket weave stops after half a repeat, and the corrections of the waffle make it end as it begins."""
    _, findings = judged(f'{{"parts": {{"body": "basket-weave"}}, {GAUGES}', starters, vocabulary)
    assert "body-ends-unlike-start" not in {finding.rule for finding in findings}
    made, findings = judged(f'{{"parts": {{"body": "waffle"}}, {GAUGES}', starters, vocabulary)
    (found,) = (finding for finding in findings if finding.rule == "body-ends-unlike-start")
    for change in found.changes:
        again = attempt(amended(made.request, change), vocabulary)
        (rule,) = (rule for rule in fabric.RULES if rule.slug == "body-ends-unlike-start")
        assert again.plan is not None
        assert list(rule.check(again)) == []


def test_parts_of_one_count_each_say_these_and_no_rests(
    starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """150 and 151 stitches leave nothing over by any number: their counts say it all."""
    bands = [{"text": f"Row 1: K{count}.", "rows": 20} for count in (150, 151)]
    found = findings({"body": bands, "sides": None, "bottom": None, "top": None}, starters, vocabulary)
    message = found["parts-share-no-count"][0].message
    assert message.endswith("needs exactly 150 stitches. Body 2 with what stands beside it needs exactly 151 stitches.")
