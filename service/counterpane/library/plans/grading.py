"""One recipe in several sizes: every size planned, and one text of them all, read back before anybody sees it."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Any

from counterpane.craft.constructions import CannotBePlanned, Plan, PlanRequest
from counterpane.craft.constructions.grading import in_proportion
from counterpane.craft.findings import Finding
from counterpane.craft.measures import half_up
from counterpane.craft.pattern import Pattern
from counterpane.craft.pattern.brackets import shape
from counterpane.library.plans import sizes
from counterpane.library.plans.bench import Bench
from counterpane.library.plans.graded_pattern import graded_pattern_json
from counterpane.library.plans.plan_answers import counts_json, finding_json, finished_json, recipe_json
from counterpane.library.plans.plan_requests import plan_request_of
from counterpane.library.plans.planning import pattern_of
from counterpane.library.texts.checks import check_text
from counterpane.library.values import BadInput

Answer = dict[str, Any]
Content = Mapping[str, Any]
GradePress = Callable[[Sequence[Pattern], Sequence[str]], str]
"""What lays patterns of several sizes out as one text, given their names."""

OF_THE_GRADE = ("sizes", "sample", "borders")
OF_THE_PATTERN = ("terms", "title")
ORDINALS = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth")
_NAME = re.compile(r"(?!(?:only|all|sizes?|and|or|to)\b)[a-z][a-z0-9]*(?:[ -](?!(?:only|and|or|to)\b)[a-z0-9]+)*", re.I)
MOST_TRIED = 12
"""Rounds in which the nearest counts are looked over for one whose rows are those of the sample; house."""


@dataclass(frozen=True, slots=True)
class Graded:
    """A size of the range: what it is called, its plan, and its pattern."""

    name: str
    plan: Plan
    pattern: Pattern


def plan_grade(content: Content, bench: Bench, press: GradePress, shown: GradePress | None = None) -> Answer:
    """Return a plan request in all its `sizes`, and one pattern of them with the counts in brackets.

    What `press` lays out is read back before it is answered; `shown` lays out the text of the answer, if not `press`.

    `sample` is the size, from 1, that the borders of the request are meant for; `borders` "same" keeps them in all
    sizes, "in-proportion" their share. Raises what planning raises, with the size in the message, and BadInput where
    two sizes cannot be worked in the same rows.
    """
    names = _names(content["sizes"])
    graded = _graded(content, names, bench)
    patterns = [each.pattern for each in graded]
    text = press(patterns, names)
    checked = check_text(text, bench.vocabulary, terms=patterns[0].terms)
    wrong = disagreement(checked, patterns)
    if wrong is not None:
        hint = "This is a fault of the program: report it with the request."
        message = f"The text of all sizes does not read back: {wrong}."
        raise CannotBePlanned((Finding("plan-not-proved", "error", message, hint, pointer="/sizes"),))
    read = zip(graded, _read(checked), strict=True)
    told = [_told(each) | {"text_findings": size["findings"]} for each, size in read]
    whole = shown(patterns, names) if shown else text
    return {"names": list(names), "sizes": told, "pattern": graded_pattern_json(patterns), "text": whole}


def disagreement(checked: Content, patterns: Sequence[Pattern]) -> str | None:
    """Say where a text of several sizes, checked as a stranger's would be, differs from their patterns.

    None where every size comes out without an error, with the cast-on and all rows of its own pattern.
    """
    read = _read(checked)
    if len(read) != len(patterns):
        return f"{len(read)} sizes are read"
    for number, (size, pattern) in enumerate(zip(read, patterns, strict=True), 1):
        errors = [each for each in size["findings"] if each["severity"] == "error"]
        if errors:
            return f"size {number}, line {errors[0]['line']}: {errors[0]['message']}"
        if size["cast_on"] != pattern.cast_on.stitches:
            return f"size {number} casts on {size['cast_on']}"
        meant = [(row.label, row.side, row.after) for section in pattern.every_section for row in section.rows]
        if [(row["label"], row["side"], row["after"]) for row in size["rows"]] != meant:
            return f"size {number} has other rows"
    return None


def _read(checked: Content) -> Sequence[Content]:
    """Return what was read of each size; a text in one size has it at the top."""
    return checked["sizes"] or (checked,)


def _names(given: Sequence[Content]) -> list[str]:
    """Return what each size is called: by its own name, the name of its size, or by its place."""
    names = [str(size.get("name") or size.get("named") or ORDINALS[place]) for place, size in enumerate(given)]
    for place, name in enumerate(names):
        if not _NAME.fullmatch(name):
            hint = "Use words of letters and digits that begin with a letter, such as “small”."
            raise BadInput(f"/sizes/{place}/name", f"A size cannot be called {name!r}.", hint)
        if name.lower() in (other.lower() for other in names[:place]):
            message = f"Two sizes are called {name!r}."
            raise BadInput(f"/sizes/{place}/name", message, "Give each size a name of its own.")
    return names


def graded(content: Content, bench: Bench) -> list[Graded]:
    """Return a plan request in all its `sizes`, each planned and written; raises what `plan_grade` raises."""
    return _graded(content, _names(content["sizes"]), bench)


def _graded(content: Content, names: Sequence[str], bench: Bench) -> list[Graded]:
    beside = (*OF_THE_GRADE, *OF_THE_PATTERN)
    asked = {name: value for name, value in content.items() if name not in beside}
    requests = [_request(asked, size, f"/sizes/{place}", bench) for place, size in enumerate(content["sizes"])]
    at = _sample_of(content, len(requests))
    sample = _made(requests[at], names[at], bench)
    if content.get("borders") == "in-proportion":
        requests = [in_proportion(request, sample, bench.vocabulary) for request in requests]
    model = Graded(names[at], sample, _pattern(sample, content, bench))
    return [
        model if place == at else _alike(request, names[place], model, content, bench)
        for place, request in enumerate(requests)
    ]


def _sample_of(content: Content, number: int) -> int:
    sample = content.get("sample") or 1
    if sample > number:
        raise BadInput("/sample", f"There are {number} sizes, and no size {sample}.", "Number the sizes from 1.")
    return int(sample) - 1


def _request(asked: Content, size: Content, pointer: str, bench: Bench) -> PlanRequest:
    wanted = {name: value for name, value in size.items() if name != "name"}
    try:
        written = sizes.sized({**asked, "size": wanted}, bench.known.facts)
        return plan_request_of(written, bench.find, bench.vocabulary)
    except BadInput as fault:
        place = (
            fault.pointer.replace("/size/", f"{pointer}/", 1) if fault.pointer.startswith("/size/") else fault.pointer
        )
        raise BadInput(place, str(fault), fault.hint) from None


def _made(request: PlanRequest, name: str, bench: Bench) -> Plan:
    """Return the plan of a size; CannotBePlanned with the name of the size in each message."""
    try:
        return bench.plan(request)
    except CannotBePlanned as refusal:
        findings = (replace(each, message=f"In size {name}: {each.message}") for each in refusal.findings)
        raise CannotBePlanned(tuple(findings)) from None


def _alike(request: PlanRequest, name: str, model: Graded, content: Content, bench: Bench) -> Graded:
    """Return a size at the count nearest its width whose rows read as those of the sample but for their numbers."""
    for wanted in _widths(request, name, bench):
        plan = _made(wanted, name, bench)
        pattern = _pattern(plan, content, bench)
        if _rows(pattern) == _rows(model.pattern):
            return Graded(name, plan, pattern)
    message = f"In size {name} some rows are worked otherwise than in size {model.name}: no one text says both."
    raise BadInput("/sizes", message, "Take another width for it, or plan it by itself.")


def _widths(request: PlanRequest, name: str, bench: Bench) -> Iterator[PlanRequest]:
    """Give the request at its own width, then at those of the counts near it, the nearest first."""
    yield request
    near = _made(request, name, bench).nearest
    for each in near[1:MOST_TRIED]:
        yield replace(request, width_cm=each.width_cm)


def _rows(pattern: Pattern) -> list[tuple[str, ...]]:
    return [shape(row.text) for section in pattern.every_section for row in section.rows]


def _pattern(plan: Plan, content: Content, bench: Bench) -> Pattern:
    asked = {name: value for name, value in content.items() if name not in OF_THE_GRADE}
    return pattern_of(plan, asked, bench.known)


def _told(each: Graded) -> Answer:
    plan = each.plan
    return {
        "name": each.name,
        "recipe": recipe_json(plan),
        "counts": counts_json(plan),
        "finished": finished_json(plan),
        "width_to_length": _hundredths(plan.width_cm / plan.length_cm),
        "borders_percent": _borders(plan),
        "stitches_total": plan.stitches_total,
        "findings": [finding_json(finding) for finding in plan.findings],
    }


def _borders(plan: Plan) -> Answer:
    """Return what share of the stitches across, and of the length, the borders are."""
    ends = sum((part.cm_length for part in plan.sections if part.name in ("bottom", "top")), Fraction(0))
    across = Fraction(2 * plan.counts.sides, plan.counts.cast_on)
    return {"across": _hundredths(100 * across), "along": _hundredths(100 * ends / plan.length_cm)}


def _hundredths(value: Fraction) -> float:
    return float(half_up(value, Fraction(1, 100)))
