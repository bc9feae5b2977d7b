"""Assessing safety inputs and plans: what was found, what was looked at, and what was not."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, fields
from typing import Any

from counterpane.craft.component import Note, SafetyNotes
from counterpane.craft.constructions import Plan
from counterpane.craft.findings import Rule
from counterpane.craft.rules.safety import RULES
from counterpane.craft.safety import SafetyFinding, SafetyInputs
from counterpane.library.cautions import CAUTIONS
from counterpane.library.plan_fabric import add_plan, estimates_json, fabric_of, parts_of
from counterpane.library.safety_inputs import inputs_of

STRICTNESS = ("stop", "warn", "note")
"""Severities of safety findings, the strictest first."""


@dataclass(slots=True)
class Assessment:
    """What the rules came to, by reference.

    A rule that spoke and lacks an input that could make it stricter stands under findings and under not assessed.
    """

    findings: list[SafetyFinding] = field(default_factory=list)
    assessed: list[str] = field(default_factory=list)
    not_assessed: list[str] = field(default_factory=list)
    not_applicable: list[str] = field(default_factory=list)


def assess(inputs: Mapping[str, Any]) -> dict[str, Any]:
    """Assess safety inputs, given as JSON values, and return the answer as JSON values; BadInput as `inputs_of`."""
    known = inputs_of(inputs)
    return assessment_json(assess_inputs(known), known)


def safety_of_plan(plan: Plan, for_: Mapping[str, Any] | None) -> dict[str, Any]:
    """Assess a plan for the child, use and markets given, and return the answer as JSON values.

    With `for_` null the age and the use are not known: only what is printed always speaks, the rest is not assessed.
    Beside the findings stand the standing cautions, each part's own notes, and estimates from the rows and the gauge,
    which never make a pass. BadInput points into "/for".
    """
    fabric = fabric_of(plan)
    known = add_plan(inputs_of(for_ or {}, "/for"), plan, fabric)
    return assessment_json(assess_inputs(known), known) | {
        "cautions": list(CAUTIONS),
        "parts": [
            {"part": name, "component": part.component.slug or None, "notes": notes_json(part.component.safety)}
            for name, part in parts_of(plan)
        ],
        "estimates": estimates_json(fabric),
    }


def notes_json(notes: SafetyNotes) -> dict[str, Any]:
    """Return a component's safety notes as JSON values: "none", "not known", or a value with its unit."""
    return {each.name: _note(getattr(notes, each.name)) for each in fields(notes)}


def _note(note: Note) -> str | dict[str, str]:
    return note if isinstance(note, str) else {"value": note.value, "unit": note.unit}


def assess_inputs(inputs: SafetyInputs) -> Assessment:
    """Put every rule to the inputs; the strictest findings first, else in the order of their references."""
    assessment = Assessment()
    for rule in RULES:
        _put(rule, inputs, assessment)
    assessment.findings.sort(key=lambda finding: STRICTNESS.index(finding.severity))
    assessment.not_assessed.sort()
    return assessment


def _put(rule: Rule[SafetyInputs], inputs: SafetyInputs, assessment: Assessment) -> None:
    reference = rule.reference or rule.slug
    if inputs.concerns(rule.scope) is False:
        assessment.not_applicable.append(reference)
        return
    findings = tuple(finding for finding in rule.check(inputs) if isinstance(finding, SafetyFinding))
    assessment.findings.extend(findings)
    lacks = not all(inputs.knows(need) for need in rule.needs)
    if lacks and rule.severity not in {finding.severity for finding in findings}:
        assessment.not_assessed.append(reference)
    elif not findings:
        assessment.assessed.append(reference)


def assessment_json(assessment: Assessment, inputs: SafetyInputs) -> dict[str, Any]:
    """Return an assessment as JSON values; a finding for no market in particular names those entered."""
    return {
        "findings": [finding_json(finding, inputs.markets or ()) for finding in assessment.findings],
        "assessed": assessment.assessed,
        "not_assessed": assessment.not_assessed,
        "not_applicable": assessment.not_applicable,
    }


def finding_json(finding: SafetyFinding, markets: Iterable[str]) -> dict[str, Any]:
    """Return a finding as JSON values, its message and next step as one text."""
    return {
        "rule": finding.rule,
        "reference": finding.reference,
        "severity": finding.severity,
        "basis": finding.basis,
        "markets": list(finding.markets or markets),
        "message": finding.words,
        "source": finding.source,
    }
