"""A pattern as PDF, held against PDF/UA-1 (ISO 14289-1) by a checker that knows nothing of how it was made."""

from __future__ import annotations

import io
from collections.abc import Mapping
from typing import get_args

import page
import pytest
from pypdf import PdfReader, PdfWriter
from pypdf.generic import NameObject

from counterpane.craft.component import Component
from counterpane.craft.constructions.making import attempt
from counterpane.library.patterns.drawings import pictures
from counterpane.library.patterns.patterns import write_pattern
from counterpane.library.plans.plans import plan_request_of
from counterpane.press import Paper
from counterpane.press.pdf import as_pdf
from craft.constructions.asking import content
from craft.pattern.plans import vocabulary

LEAST_RULES = 100
"""Rules that the checker looks at; fewer would say that it did not look."""


def checked(pdf: bytes) -> page.ValidationReport:
    """Return the report of the checker."""
    return page.validate_pdf_bytes(pdf, profile=page.ValidationProfile.PDF_UA_1)


def of_body(
    starters: Mapping[str, Component], body: str, paper: Paper = "a4", construction: str = "one-piece"
) -> bytes:
    """Return the pattern of a blanket in this body, with all its pictures."""
    request = {**content(body, sides="garter-border"), "construction": construction}
    plan = attempt(plan_request_of(request, starters.__getitem__, vocabulary()), vocabulary()).plan
    assert plan is not None and plan.request.construction == construction
    return as_pdf(write_pattern(plan, vocabulary()), pictures(plan, vocabulary(), "Rime", "us", close_up=True), paper)


@pytest.mark.parametrize("construction", ["one-piece", "sides-picked-up"])
@pytest.mark.parametrize("paper", get_args(Paper))
@pytest.mark.parametrize("body", ["eyelet-dots", "waffle"])
def test_a_pattern_passes_every_rule(
    starters: Mapping[str, Component], body: str, paper: Paper, construction: str
) -> None:
    """Tags, their order, fonts, metadata, words for pictures: all that a machine can look at."""
    report = checked(of_body(starters, body, paper, construction))
    assert report.rules.total >= LEAST_RULES
    assert (report.is_compliant, [failure.rule_id for failure in report.failures]) == (True, [])


@pytest.mark.parametrize("mark", ["/MarkInfo", "/StructTreeRoot", "/Lang"])
def test_the_checker_sees_what_is_taken_away(starters: Mapping[str, Component], mark: str) -> None:
    """The same file without its tags or its language does not pass."""
    writer = PdfWriter(clone_from=PdfReader(io.BytesIO(of_body(starters, "waffle"))))
    del writer.root_object[NameObject(mark)]
    broken = io.BytesIO()
    writer.write(broken)
    assert not checked(broken.getvalue()).is_compliant
