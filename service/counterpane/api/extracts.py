"""Patterns of several sizes in one of them, over HTTP."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.checks import LONGEST_ESCAPE
from counterpane.api.operations import Answer, Call, operation
from counterpane.api.problems import Problem
from counterpane.api.sending import as_json
from counterpane.library.texts.extracts import extract_text
from counterpane_schema.check import MOST_BYTES
from counterpane_schema.extract import ExtractAnswer, ExtractRequest


@operation(
    "POST",
    "/v1/extracts",
    tag="checks",
    answer=ExtractAnswer,
    body=ExtractRequest,
    examples=examples.EXTRACT,
    problems=("not-usable",),
    most_bytes=LONGEST_ESCAPE * MOST_BYTES + 4096,
)
def extract(call: Call) -> Answer:
    """Write a pattern of several sizes in one of them.

    "K4 (5, 6)" becomes "K5", "k0 (1, 2)" and "– (3, 5)" go with their comma where nothing is worked, and so does "for
    size 3 only" in the other sizes. Everything else stays as it is. Nothing is stored.
    """
    text = call.body["text"]
    if len(text.encode()) > MOST_BYTES:
        raise Problem("too-large", f"The text has more than {MOST_BYTES:,} bytes.")
    return as_json(extract_text(text, call.body["size"]))
