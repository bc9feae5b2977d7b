"""Written patterns as files to look at and to print, with their pictures."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from counterpane.craft.constructions import Plan
from counterpane.craft.drawing import Picture
from counterpane.craft.pattern import Pattern
from counterpane.craft.stitches import Vocabulary
from counterpane.library import planning
from counterpane.library.drawings import pictures
from counterpane.library.services import Services

PAGES = ("html", "pdf")
"""Forms that are whole files with pictures."""

ON_PAPER = "pdf"
"""The form that shows of the fabric a corner alone, since each loop is drawn into it."""


def page(services: Services, content: Mapping[str, Any], form: str) -> bytes:
    """Return the written pattern of a request as a file of this form; raise CannotBePlanned where there is no plan."""
    plan = planning.made(services, planning.planned_part(content))
    pattern = planning.pattern_of(plan, content, services.known)
    drawn = pictures_for(plan, pattern, services.vocabulary, form)
    return services.pages[form](pattern, drawn, content.get("paper") or "a4")


def pictures_for(plan: Plan, pattern: Pattern, vocabulary: Vocabulary, form: str) -> tuple[Picture, ...]:
    """Return the pictures of a plan that go with its pattern in a form."""
    return pictures(plan, vocabulary, pattern.title, pattern.terms, close_up=form == ON_PAPER)
