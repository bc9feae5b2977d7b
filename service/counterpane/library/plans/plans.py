"""Plans: a recipe at a gauge and a size, worked out, judged by the rules, and proved before anybody sees it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from counterpane.craft.checking import examine
from counterpane.craft.component import derive
from counterpane.craft.constructions import CannotBePlanned, Part, Plan, PlanRequest
from counterpane.craft.constructions.making import CONSTRUCTIONS, attempt
from counterpane.craft.constructions.settling import body_pointer
from counterpane.craft.findings import Correction, Finding
from counterpane.craft.rules import fabric, fitting, judge_text
from counterpane.craft.stitches import Terms, Vocabulary
from counterpane.library.plans.plan_answers import plan_json
from counterpane.library.plans.plan_proofs import disagreement, lines_of, sampled
from counterpane.library.plans.plan_requests import Find, UnknownPart, plan_request_of
from counterpane.library.values import BadInput

__all__ = [
    "BadInput",
    "Find",
    "UnknownPart",
    "make_plan",
    "plan_json",
    "plan_request_of",
    "proved",
    "sampler_of",
    "sampler_rows",
]


def make_plan(request: PlanRequest, vocabulary: Vocabulary) -> Plan:
    """Work out a plan, with what the rules say of it; CannotBePlanned with findings where there is none.

    What comes out has been written in words, read back and counted by both roads.
    """
    if request.construction not in CONSTRUCTIONS:
        known = ", ".join(CONSTRUCTIONS)
        raise BadInput("/construction", f"There is no construction {request.construction!r}.", f"Use {known}.")
    words = tuple(_of_words(request, vocabulary))
    if any(finding.severity == "error" for finding in words):
        raise CannotBePlanned(words)
    made = attempt(request, vocabulary)
    findings = words + tuple(finding for rule in (*fitting.RULES, *fabric.RULES) for finding in rule.check(made))
    if made.plan is None:
        raise CannotBePlanned(findings)
    return proved(replace(made.plan, findings=findings), vocabulary)


def proved(plan: Plan, vocabulary: Vocabulary) -> Plan:
    """Return the plan when its rows, written and read back, come out as planned by both roads.

    CannotBePlanned with an internal error where they do not; no request is known to lead there.
    """
    wrong = disagreement(plan, vocabulary)
    if wrong is not None:
        message = f"The rows worked out do not prove: {wrong}."
        hint = "This is a fault of the program: report it with the request."
        raise CannotBePlanned((Finding("plan-not-proved", "error", message, hint, pointer="/parts"),))
    return plan


def sampler_of(plan: Plan, vocabulary: Vocabulary) -> Plan:
    """Return the smallest piece that shows every transition of a plan."""
    return sampled(plan, vocabulary)


def sampler_rows(plan: Plan, vocabulary: Vocabulary, terms: Terms = "us") -> tuple[str, ...]:
    """Return the sampler of a plan as lines: the cast-on, each section with its rows, and how often they repeat."""
    return lines_of(sampled(plan, vocabulary), vocabulary, terms)


def _in_words(request: PlanRequest) -> Iterator[tuple[str, Part]]:
    """Give the parts given in words with their pointers."""
    placed = [
        ("/parts/bottom", request.bottom),
        ("/parts/sides", request.sides or request.picked),
        ("/parts/selvedge", request.selvedge),
    ]
    placed += [(body_pointer(request, index), band) for index, band in enumerate(request.body)]
    for pointer, part in (*placed, ("/parts/top", request.top)):
        if part is not None and not part.component.slug:
            yield pointer, part


def _of_words(request: PlanRequest, vocabulary: Vocabulary) -> Iterator[Finding]:
    """Give what the rules of reading and counting say of each part in words, with its place in the message."""
    for pointer, part in _in_words(request):
        text = part.component.versions[0].rows
        if any(version.casts_on for version in derive(part.component, vocabulary).versions):
            continue
        for finding in judge_text(examine(text, vocabulary)):
            yield _placed(finding, f"{pointer}/text", text)


def _placed(finding: Finding, pointer: str, text: str) -> Finding:
    where = f"Line {finding.line}, column {finding.column}: " if finding.line is not None else ""
    changes = tuple(Correction(pointer, each, finding.message) for each in _whole(finding, text))
    message = where + finding.message
    return Finding(finding.rule, finding.severity, message, finding.hint, pointer=pointer, changes=changes)


def _whole(finding: Finding, text: str) -> tuple[str, ...]:
    """Return the whole text with its line changed, for each correction of a row."""
    lines = text.splitlines()
    if finding.line is None or finding.line > len(lines):
        return ()
    before, after = lines[: finding.line - 1], lines[finding.line :]
    return tuple("\n".join([*before, each, *after]) for each in finding.corrections)
