"""Checks of texts over HTTP."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.operations import Answer, Call, operation
from counterpane.api.problems import Problem
from counterpane.api.sending import as_json
from counterpane.library.texts.checks import check_text
from counterpane_schema.check import MOST_BYTES, CheckAnswer, CheckRequest

LONGEST_ESCAPE = 6
"""Bytes of the longest JSON escape of one byte of text, `\\u000a`: a text within its limit always fits the body."""


@operation(
    "POST",
    "/v1/checks",
    tag="checks",
    answer=CheckAnswer,
    body=CheckRequest,
    examples=examples.CHECK,
    most_bytes=LONGEST_ESCAPE * MOST_BYTES + 4096,
)
def check(call: Call) -> Answer:
    """Check rows in words.

    The multiple is derived from the rows, every printed count is compared with it, and what cannot be read or does not
    fit is a finding with its place, its numbers and a next step. A check that ran answers 200 whatever it found.
    Nothing is stored.
    """
    text = call.body["text"]
    if len(text.encode()) > MOST_BYTES:
        raise Problem("too-large", f"The text has more than {MOST_BYTES:,} bytes.")
    return as_json(check_text(text, call.services.vocabulary, call.body.get("cast_on"), call.body.get("terms")))
