"""Written patterns in every form: as data, as texts, and as files to look at and to print, each with its pictures."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from counterpane.craft.constructions import Plan
from counterpane.craft.drawing import Picture
from counterpane.craft.pattern import Pattern
from counterpane.craft.pattern.abbreviations import abbreviations
from counterpane.craft.stitches import Vocabulary
from counterpane.library.patterns.drawings import pictures, plans_drawn
from counterpane.library.patterns.languages import language_of
from counterpane.library.plans import planning
from counterpane.library.services import Services

PAGES = ("html", "pdf")
"""The forms that show the fabric; a text says where it is drawn, and data leaves it to who wants it drawn."""
DRAWN = (*PAGES, "json")
"""The forms that hold pictures; a text says them in words and letters."""
ON_PAPER = "pdf"
"""The form that shows of the fabric a corner alone, since each loop is drawn into it."""


def pattern(services: Services, content: Mapping[str, Any], form: str) -> dict[str, Any]:
    """Return the written pattern: as data with its text for the form "json", else the text of that form alone."""
    written, drawn = written_and_drawn(services, content, form)
    language = language_of(services, content)
    if language and form == "json":
        return dict(services.language_data(language, written, drawn))
    if language:
        return {"text": services.language_press(language, form, written, drawn, "a4").decode()}
    if form == "json":
        return {"pattern": services.as_data(written, drawn), "text": services.presses["text"](written, drawn)}
    return {"text": services.presses[form](written, drawn)}


def page(services: Services, content: Mapping[str, Any], form: str) -> bytes:
    """Return the written pattern of a request as a file of this form; raise CannotBePlanned where there is no plan."""
    written, drawn = written_and_drawn(services, content, form)
    paper = content.get("paper") or "a4"
    language = language_of(services, content)
    if language:
        return services.language_press(language, form, written, drawn, paper)
    return services.pages[form](written, drawn, paper)


def written_and_drawn(services: Services, content: Mapping[str, Any], form: str) -> tuple[Pattern, tuple[Picture, ...]]:
    """Return the written pattern of a request and the pictures that go with it in a form."""
    plan = planning.made(services, planning.planned_part(content))
    return with_pictures(plan, planning.pattern_of(plan, content, services.known), services.vocabulary, form)


def with_pictures(
    plan: Plan, written: Pattern, vocabulary: Vocabulary, form: str
) -> tuple[Pattern, tuple[Picture, ...]]:
    """Return a pattern and the pictures that go with it in a form; its list explains what they abbreviate."""
    drawn = pictures_for(plan, written, vocabulary, form)
    return _explained(written, plan, drawn, vocabulary), drawn


def pictures_for(plan: Plan, pattern: Pattern, vocabulary: Vocabulary, form: str) -> tuple[Picture, ...]:
    """Return the pictures of a plan that go with its pattern in a form."""
    if form in PAGES:
        return pictures(plan, vocabulary, pattern.title, pattern.terms, close_up=form == ON_PAPER, units=pattern.units)
    told_only = form not in DRAWN
    return plans_drawn(plan, vocabulary, pattern.title, pattern.terms, pattern.units, told_only=told_only)


def _explained(pattern: Pattern, plan: Plan, drawn: Sequence[Picture], vocabulary: Vocabulary) -> Pattern:
    """Return a pattern in full words with what its pictures abbreviate in its list; any other explains that already."""
    if pattern.words == "short":
        return pattern
    rows = tuple(row for section in plan.sections for row in section.cycle)
    lines = [line for picture in drawn for line in (*picture.lines, *(means for _, means in picture.key))]
    known = {entry.name for entry in pattern.abbreviations}
    more = [entry for entry in abbreviations(rows, lines, vocabulary, pattern.terms) if entry.name not in known]
    return replace(pattern, abbreviations=(*pattern.abbreviations, *more))
