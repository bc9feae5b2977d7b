"""A plan told for a class."""

from __future__ import annotations

from marshmallow import fields

from counterpane_schema.fields import Text, Whole, Word, answer_form
from counterpane_schema.forms import Open
from counterpane_schema.plan import PlanRequest


class LessonRequest(PlanRequest):
    """A plan request, with how the lesson on it is told."""

    terms = Word("us", "uk", metadata={"description": "US terms if not given."})
    title = Text(most=200)
    hand = Word(
        "right",
        "left",
        metadata={"description": "`left` tells it for left-handers who work mirrored; right if not given."},
    )
    learners = Word(
        "beginners",
        "practised",
        metadata={"description": "For whom the minutes are reckoned; beginners if not given."},
    )
    session_minutes = Whole(least=15, most=480, metadata={"description": "Minutes of one session; 60 if not given."})
    form = answer_form("json", "text", "markdown", "html")


class LessonAnswer(Open):
    """The lesson as data: minutes, metres and grams stand with their lower end first."""

    lesson = fields.Dict(required=True)
