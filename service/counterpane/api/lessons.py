"""Lessons over HTTP."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.operations import JSON, Answer, Call, operation
from counterpane.library import lessons
from counterpane_schema.lesson import LessonAnswer, LessonRequest

FORMS = {JSON: "json", "text/plain": "text", "text/markdown": "markdown", "text/html": "html"}
MEDIA = {form: media for media, form in FORMS.items()}


@operation(
    "POST",
    "/v1/lessons",
    tag="patterns",
    answer=LessonAnswer,
    media=tuple(FORMS),
    body=LessonRequest,
    problems=("not-usable", "cannot-be-planned"),
    examples=examples.LESSON,
)
def tell_lesson(call: Call) -> Answer:
    """Tell a lesson.

    Takes a plan request and tells its sampler for a class: each step with its rows, what is then to be seen, the usual
    mistakes and the minutes; the pieces to prepare with their yarn; and what mirrors for somebody left-handed. The form
    is that of `as`, else of the header Accept. Nothing is stored.
    """
    form = call.body.pop("as", FORMS[call.media])
    told = lessons.written(call.services, call.body, form)
    return Answer(told, media=MEDIA[form] if form == "json" else f"{MEDIA[form]}; charset=utf-8")
