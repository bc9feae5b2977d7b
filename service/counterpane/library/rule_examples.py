"""What is said of the bad example of a rule, worked out afresh: for the page of the rule, and never stored."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from typing import Any

from counterpane.craft.checking import examine
from counterpane.craft.component import Component
from counterpane.craft.constructions.making import attempt
from counterpane.craft.findings import Family, Finding, Rule
from counterpane.craft.rules import ALL, judge_text
from counterpane.craft.rules.style import judge_style
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.styles import Style
from counterpane.library import rules
from counterpane.library.plans.known import Facts
from counterpane.library.plans.plan_requests import plan_request_of
from counterpane.library.review.licences import licensed_in
from counterpane.library.review.standing import placed_part_of
from counterpane.library.safety import safety
from counterpane.library.texts.checks import finding_json
from counterpane.library.yarn.labels import label_of

# One rule speaks of a cast-on that is asked for beside the text.
ASKED = {"cast-on-differs": 24}


class Examples:
    """The bad examples of all rules, judged when they are asked for.

    `starters` gives the components that examples of plans name, `style` the style that examples of style depart
    from, `facts` the facts by name that labels rest on.
    """

    def __init__(
        self, vocabulary: Vocabulary, starters: Callable[[], Mapping[str, Component]], style: Style, facts: Facts
    ) -> None:
        self.vocabulary = vocabulary
        self.starters = starters
        self.style = style
        self.facts = facts

    def page(self, slug: str) -> dict[str, Any]:
        """Return all that is known of a rule, with what is said of its bad example; raise NotFound for no rule."""
        known = rules.get(slug)
        rule = ALL[slug]
        return {**known, "shown": rules.shown(rule.bad), "asked": ASKED.get(slug), "says": self._says(rule)}

    def _says(self, rule: Rule[Any]) -> list[dict[str, Any]]:
        if rule.family == "safety":
            return [found for found in safety.assess(json.loads(rule.bad))["findings"] if found["rule"] == rule.slug]
        return [_with_changes(finding) for finding in self._findings(rule)]

    def _findings(self, rule: Rule[Any]) -> tuple[Finding, ...]:
        if rule.family in rules.OF_TEXTS:
            return judge_text(examine(rule.bad, self.vocabulary, ASKED.get(rule.slug)))
        if rule.family == "style":
            return judge_style(examine(rule.bad, self.vocabulary), self.style)
        return tuple(rule.check(self._subject(rule.family, json.loads(rule.bad))))

    def _subject(self, family: Family, content: Mapping[str, Any]) -> Any:
        """Return what the rules of a family look at, read from the JSON of an example."""
        match family:
            case "label":
                return label_of(content, self.facts)
            case "licence":
                return licensed_in(content)
            case "standing":
                return placed_part_of(content)
            case _:
                request = plan_request_of(content, self.starters().__getitem__, self.vocabulary)
                return attempt(request, self.vocabulary)


def _with_changes(finding: Finding) -> dict[str, Any]:
    """Return a finding as JSON values, with the changes of a plan request beside corrected lines."""
    changes = [f"{change.pointer}: {change.value} ({change.why})" for change in finding.changes]
    said = finding_json(finding)
    return {**said, "pointer": finding.pointer, "corrections": [*said["corrections"], *changes]}
