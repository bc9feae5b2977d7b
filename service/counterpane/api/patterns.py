"""Written patterns over HTTP."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.operations import JSON, Answer, Call, operation
from counterpane.api.sending import as_json
from counterpane.library import planning
from counterpane.library.pages import PAGES, page
from counterpane_schema.pattern import PatternAnswer, PatternRequest

FORMS = {
    JSON: "json",
    "text/plain": "text",
    "text/markdown": "markdown",
    "text/html": "html",
    "application/pdf": "pdf",
}
MEDIA = {form: media for media, form in FORMS.items()}


@operation(
    "POST",
    "/v1/patterns",
    tag="patterns",
    answer=PatternAnswer,
    media=tuple(FORMS),
    body=PatternRequest,
    problems=("not-usable", "cannot-be-planned"),
    examples=examples.PATTERN,
)
def write_pattern(call: Call) -> Answer:
    """Write a pattern.

    Takes a plan request with the terms to write in. The form is that of `as`, else of the header Accept: JSON with the
    pattern as data and as a text, plain text or Markdown alone, or a file with pictures to look at or to print: one
    page of HTML, or PDF. Nothing is stored.
    """
    form = call.body.pop("as", FORMS[call.media])
    if form in PAGES:
        name = f'attachment; filename="pattern.{form}"'
        return Answer(page(call.services, call.body, form), media=MEDIA[form], headers=(("Content-Disposition", name),))
    written = planning.pattern(call.services, call.body, form)
    if form == "json":
        return as_json(written)
    return Answer(written["text"].encode(), media=f"{MEDIA[form]}; charset=utf-8")
