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
from counterpane.craft.yarn import YarnEstimate
from counterpane.library.patterns.cautions import CAUTIONS
from counterpane.library.plans.plan_fabric import estimates_json, fabric_of, parts_of
from counterpane.library.plans.plan_inputs import add_plan, derived_names, mass_json
from counterpane.library.safety.measurements import measured_json
from counterpane.library.safety.profile_finding import FindProfile, found_among, listed_of
from counterpane.library.safety.profiles import Listed, held_json
from counterpane.library.safety.safety_inputs import inputs_of
from counterpane.library.safety.safety_record import asked_for, beside, read_for

Answer = dict[str, Any]
NO_LISTS = found_among({})

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


def assess(inputs: Mapping[str, Any], find_profile: FindProfile = NO_LISTS) -> Answer:
    """Assess safety inputs, given as JSON values, and return the answer as JSON values; BadInput as `inputs_of`.

    With `profile`, a list by its name or its content, the answer holds the piece against that list too; with
    `measured`, it repeats who measured what.
    """
    given, listed = _apart(inputs, find_profile, "")
    known = given.with_measured()
    answer = assessment_json(assess_inputs(known), known)
    if known.measured:
        answer["measured"] = measured_json(known.measured)
    return answer if listed is None else answer | {"profile": held_json(listed, known)}


def with_context(answer: Answer, inputs: Mapping[str, Any]) -> Answer:
    """Return an answer of `assess` with what a person is told beside it: for whom it is read, and what is asked for."""
    known = inputs_of({name: value for name, value in inputs.items() if name != "profile"}, "").with_measured()
    concerned = [*answer["not_assessed"], *answer["assessed"], *(each["reference"] for each in answer["findings"])]
    return {
        "measured": [],
        "profile": None,
        "estimates": {},
        **answer,
        "read_for": read_for(known),
        "asked_for": asked_for(known, answer["not_assessed"]),
        **beside(answer["findings"], concerned),
    }


def safety_of_plan(
    plan: Plan,
    for_: Mapping[str, Any] | None,
    yarn: YarnEstimate | None = None,
    find_profile: FindProfile = NO_LISTS,
) -> Answer:
    """Assess a plan for the child, use and markets given, and return the answer as JSON values.

    With `for_` null the age and the use are not known: only what is printed always speaks, the rest is not assessed.
    Beside the findings stand for whom they are read, the inputs that are asked for, what was measured and by whom, the
    sources, the conflicts among them, the standing cautions, each part's own notes, and estimates from the rows, the
    gauge and the yarn, which never make a pass. BadInput points into "/for".
    """
    fabric, gauges = fabric_of(plan), plan.request.gauges
    given, listed = _apart(for_ or {}, find_profile, "/for")
    stated = given.with_measured(gauges)
    known = add_plan(stated, plan, fabric, yarn)
    assessment = assess_inputs(known)
    answer = assessment_json(assessment, known)
    concerned = [*assessment.not_assessed, *assessment.assessed, *(each["reference"] for each in answer["findings"])]
    return {
        **answer,
        "read_for": read_for(known),
        "from_the_plan": derived_names(stated, known),
        "asked_for": asked_for(known, assessment.not_assessed),
        "measured": measured_json(given.measured, gauges),
        "profile": None if listed is None else held_json(listed, known),
        "cautions": list(CAUTIONS),
        "parts": [
            {"part": name, "component": part.component.slug or None, "notes": notes_json(part.component.safety)}
            for name, part in parts_of(plan)
        ],
        "estimates": estimates_json(fabric) | {"mass": mass_json(plan, yarn)},
        **beside(answer["findings"], concerned),
    }


def _apart(given: Mapping[str, Any], find: FindProfile, pointer: str) -> tuple[SafetyInputs, Listed | None]:
    """Return the inputs and the list that they are held against, None where none is named."""
    rest = {name: value for name, value in given.items() if name != "profile"} if isinstance(given, Mapping) else given
    known, named = inputs_of(rest, pointer), given.get("profile") if isinstance(given, Mapping) else None
    return known, None if named is None else listed_of(named, find, f"{pointer}/profile")


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
