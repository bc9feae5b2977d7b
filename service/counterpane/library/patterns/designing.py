"""The designer's sheet of a request, beside the pattern for the knitter."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from counterpane.craft.constructions import Plan
from counterpane.craft.pattern.designing import DesignerSheet, designer_sheet
from counterpane.library.patterns.languages import language_of
from counterpane.library.plans import planning
from counterpane.library.plans.known import Known
from counterpane.library.plans.plan_told import told_of
from counterpane.library.services import Services

Content = Mapping[str, Any]
Answer = dict[str, Any]

OF_THE_PLAN = ("recipe", "counts", "finished", "sections", "picked", "nearest", "stitches_total", "yarn", "findings")
"""Members of the answer of a plan that belong on the sheet."""


def sheet_of(plan: Plan, content: Content, known: Known) -> DesignerSheet:
    """Return the designer's sheet of a plan, with the terms, units, title and yarn of its request."""
    told = told_of(plan, content, known)
    pattern = planning.pattern_told(plan, content, known, told)
    return designer_sheet(plan, pattern, known.vocabulary, told.yarn)


def sheet(services: Services, content: Content, form: str) -> bytes:
    """Return the designer's sheet of a request in a form that is read or printed."""
    language_of(services, content)
    made = planning.made(services, planning.planned_part(content))
    return services.sheet_press(sheet_of(made, content, services.known), form, content.get("paper") or "a4")


def sheet_json(services: Services, content: Content) -> Answer:
    """Return the designer's sheet of a request as JSON values and as a text."""
    language_of(services, content)
    asked = planning.planned_part(content)
    made = planning.made(services, asked)
    found = sheet_of(made, content, services.known)
    text = services.sheet_press(found, "text", "a4").decode()
    return whole_json(services.sheet_data(found), planning.answer_of(made, asked, services.known), text)


def whole_json(derived: Mapping[str, Any], answer: Mapping[str, Any], text: str) -> Answer:
    """Return the derivations beside the members of the plan's answer that they explain, and the sheet as a text."""
    return {"sheet": {**derived, **{name: answer[name] for name in OF_THE_PLAN}}, "text": text}
