"""Lessons over HTTP."""

from __future__ import annotations

from counterpane.api import examples, patterns
from counterpane.api.operations import Answer, Call, operation
from counterpane.library.patterns import lessons
from counterpane_schema.lesson import LessonAnswer, LessonRequest

FORMS = {media: form for media, form in patterns.FORMS.items() if form != "pdf"}


@operation(
    "POST",
    "/v1/lessons",
    tag="patterns",
    answer=LessonAnswer,
    media=tuple(FORMS),
    body=LessonRequest,
    problems=("not-usable", "cannot-be-planned", "licence-refuses"),
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
    media = patterns.MEDIA[form]
    return Answer(told, media=media if form == "json" else f"{media}; charset=utf-8")
