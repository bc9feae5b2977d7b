"""Lessons on plans of the starters."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest

from counterpane.craft.component import Component
from counterpane.craft.teaching import Lesson
from counterpane.craft.teaching.script import total_minutes
from counterpane.craft.yarn import Yarn, estimate
from counterpane.craft.yarn.pace import hours
from counterpane.library.patterns.lessons import plan_lesson
from counterpane.library.plans.bench import Bench
from counterpane.library.plans.plans import sampler_of
from counterpane.library.values import BadInput
from counterpane.press.lesson import page
from counterpane.press.page import Items, Paragraph
from counterpane.seeding.known import load_known

BODIES = ("waffle", "basket-weave", "eyelet-dots", "rope-cable", "linen-stitch", "seed-stitch", "old-shale")


@pytest.fixture(scope="module")
def bench(starters: Mapping[str, Component]) -> Bench:
    """Return a bench of the starters."""
    return Bench(starters.__getitem__, load_known())


def _request(body: str, **more: Any) -> dict[str, Any]:
    gauge = {"stitches": 22, "rows": 30, "over_cm": 10, "in": body}
    return {"parts": {"body": body}, "gauge": gauge, "size": {"width_cm": 70, "length_cm": 90}, **more}


@pytest.mark.parametrize("body", BODIES)
def test_the_minutes_of_the_steps_are_the_hours_of_the_sampler(body: str, bench: Bench) -> None:
    """All steps but the bind-off, which the model of hours leaves out."""
    request = _request(body)
    lesson = plan_lesson(request | {"learners": "practised"}, bench)
    model = hours(sampler_of(bench.made(request), bench.vocabulary), bench.vocabulary)
    time = total_minutes(lesson.steps[:-1])
    assert (time.quick / 60, time.slow / 60) == (model.quick, model.slow)


@pytest.mark.parametrize("body", BODIES)
def test_the_finished_piece_takes_the_yarn_of_the_sampler(body: str, bench: Bench) -> None:
    """As the yarn model has it for the same rows, ends with it."""
    request = _request(body)
    small = sampler_of(bench.made(request), bench.vocabulary)
    assert plan_lesson(request, bench).kit.pieces[-1].metres == estimate(small, (Yarn(),), bench.vocabulary).metres


@pytest.mark.parametrize("body", BODIES)
def test_the_rows_of_the_steps_are_all_rows_of_the_sampler(body: str, bench: Bench) -> None:
    """Each once, part by part."""
    request = _request(body)
    small = sampler_of(bench.made(request), bench.vocabulary)
    rows = [
        (step.part, row)
        for step in plan_lesson(request, bench).steps
        if step.rows
        for row in range(step.rows[0], step.rows[1] + 1)
    ]
    assert rows == [(part.name, row) for part in small.sections for row in range(1, part.rows + 1)]


def test_a_border_that_is_picked_up_is_told_too(bench: Bench) -> None:
    """After the bind-off of the middle, with its own rows and bind-off."""
    parts = {"body": "waffle", "sides": {"component": "garter-border", "rows": 12}}
    lesson = plan_lesson(_request("waffle", parts=parts, construction="sides-picked-up"), bench)
    titles = [step.title for step in lesson.steps]
    assert "Pick up along the left edge" in titles
    assert titles[-1].startswith("Bind-off")


def test_every_lesson_carries_the_cautions(bench: Bench) -> None:
    """What every class hears, the standing cautions, and that what was not assessed is no pass."""
    lesson = plan_lesson(_request("waffle"), bench)
    said = _said(lesson)
    assert "Count needles, cable needles, pins, scissors, markers and buttons before the class and after it" in said
    assert "What is not assessed was not looked at. That is no pass." in said
    assert all(caution in said for caution in lesson.cautions.standing)


def _said(lesson: Lesson) -> str:
    blocks = list(page(lesson))
    items = [text for block in blocks if isinstance(block, Items) for text in block.texts]
    return "\n".join(items + [block.text for block in blocks if isinstance(block, Paragraph)])


def test_a_sampler_that_no_class_works_is_refused(bench: Bench) -> None:
    """With its figures and a next step."""
    text = "Row 1 (RS): k29999, *p1, k1; rep from * to last st, p1.\nRow 2: purl."
    request = _request("waffle", parts={"body": {"text": text}}, size={"width_cm": 13650, "length_cm": 90})
    request["gauge"] = {"stitches": 22, "rows": 30, "over_cm": 10}
    with pytest.raises(BadInput) as refused:
        plan_lesson(request, bench)
    assert refused.value.pointer == "/parts"
