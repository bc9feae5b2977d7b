"""Written patterns over HTTP."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.operations import JSON, Answer, Call, operation
from counterpane.api.sending import as_json
from counterpane.library import planning
from counterpane_schema.pattern import PatternAnswer, PatternRequest

FORMS = {JSON: "json", "text/plain": "text", "text/markdown": "markdown"}


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
    pattern as data and as a text, or plain text or Markdown alone. Nothing is stored.
    """
    form = call.body.pop("as", FORMS[call.media])
    written = planning.pattern(call.services, call.body, form)
    if form == "json":
        return as_json(written)
    media = "text/markdown" if form == "markdown" else "text/plain"
    return Answer(written["text"].encode(), media=f"{media}; charset=utf-8")
