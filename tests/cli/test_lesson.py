"""`counterpane lesson`: a recipe told for a class."""

from __future__ import annotations

import json
from typing import Any

from cli.conftest import Type

REQUEST: dict[str, Any] = {
    "parts": {"body": "waffle"},
    "gauge": {"stitches": 22, "rows": 30, "over_cm": 10, "in": "waffle"},
    "size": {"width_cm": 70, "length_cm": 90},
}


def test_a_teacher_reads_steps_with_what_is_seen(typed: Type) -> None:
    """As text where no form is named."""
    done = typed("lesson", "-", stdin=json.dumps(REQUEST))
    assert done.status == 0
    assert "1. Cast-on: Long-tail cast-on" in done.out
    assert "What the class sees" in done.out


def test_a_lesson_in_uk_terms_casts_off(typed: Type) -> None:
    """And has no US word for it."""
    done = typed("lesson", "-", "--terms", "uk", "--as", "markdown", stdin=json.dumps(REQUEST))
    assert "Cast-off" in done.out
    assert "ind off" not in done.out


def test_a_left_handed_lesson_says_what_mirrors(typed: Type) -> None:
    """Under a heading of its own, as a page."""
    done = typed("lesson", "-", "--hand", "left", "--as", "html", "--out", "left.html", stdin=json.dumps(REQUEST))
    assert done.status == 0
    assert "left.html" in done.err + done.out


def test_sessions_are_of_the_minutes_asked_for(typed: Type) -> None:
    """Shorter ones are more."""
    done = typed("lesson", "-", "--sessions-of", "15", "--as", "json", stdin=json.dumps(REQUEST))
    lesson = json.loads(done.out)["lesson"]
    assert lesson["session_minutes"] == 15
    assert len(lesson["sessions"]) > 1


def test_a_form_that_there_is_not_ends_with_2(typed: Type) -> None:
    """And a session of no minutes too."""
    assert typed("lesson", "-", "--as", "film", stdin=json.dumps(REQUEST)).status == 2


def test_what_cannot_be_planned_ends_with_1(typed: Type) -> None:
    """With the reason, as `plan` gives it."""
    request = REQUEST | {"size": {"width_cm": 1, "length_cm": 90}}
    assert typed("lesson", "-", stdin=json.dumps(request)).status == 1
