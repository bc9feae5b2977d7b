"""Written patterns over HTTP."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.operations import JSON, Answer, Call, operation
from counterpane.api.sending import as_json
from counterpane.library.patterns import designing
from counterpane.library.patterns.pages import PAGES, page, pattern
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
    problems=("not-usable", "cannot-be-planned", "licence-refuses"),
    examples=examples.PATTERN,
)
def write_pattern(call: Call) -> Answer:
    """Write a pattern.

    Takes a plan request with the terms to write in. The form is that of `as`, else of the header Accept: JSON with the
    pattern as data and as a text, plain text or Markdown alone, or a file with pictures to look at or to print: one
    page of HTML, or PDF. With `sheet` "designer" it is the designer's sheet in the same forms: all counts, the sums
    they come from, the yarn, and all findings. Nothing is stored.
    """
    form = call.body.pop("as", FORMS[call.media])
    if call.body.get("sheet") == "designer":
        return _sheet(call, form)
    if form in PAGES:
        return _file(page(call.services, call.body, form), form)
    written = pattern(call.services, call.body, form)
    if form == "json":
        return as_json(written)
    return Answer(written["text"].encode(), media=f"{MEDIA[form]}; charset=utf-8")


def _sheet(call: Call, form: str) -> Answer:
    if form == "json":
        return as_json(designing.sheet_json(call.services, call.body))
    made = designing.sheet(call.services, call.body, form)
    return _file(made, form) if form in PAGES else Answer(made, media=f"{MEDIA[form]}; charset=utf-8")


def _file(made: bytes, form: str) -> Answer:
    headers = (("Content-Disposition", f'attachment; filename="pattern.{form}"'),)
    return Answer(made, media=MEDIA[form], headers=headers)
