"""Texts said in other words, over HTTP."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.checks import LONGEST_ESCAPE
from counterpane.api.operations import Answer, Call, operation
from counterpane.api.problems import Problem
from counterpane.api.sending import as_json
from counterpane.library.texts.wordings import say_text, wanted_of
from counterpane_schema.check import MOST_BYTES
from counterpane_schema.wording import WordingAnswer, WordingRequest


@operation(
    "POST",
    "/v1/wordings",
    tag="wordings",
    answer=WordingAnswer,
    body=WordingRequest,
    examples=examples.WORDING,
    most_bytes=LONGEST_ESCAPE * MOST_BYTES + 4096,
)
def say(call: Call) -> Answer:
    """Say rows in other words.

    In US or UK terms, abbreviated or in full words, as they stand or as a table. At a count every repeat is written out
    as well. Labels, counts, repeat lines and statements keep their places; a row that cannot be read stays as printed,
    with a finding. Reading the answer gives the same rows again. Nothing is stored.
    """
    text = call.body["text"]
    if len(text.encode()) > MOST_BYTES:
        raise Problem("too-large", f"The text has more than {MOST_BYTES:,} bytes.")
    return as_json(say_text(text, call.services.vocabulary, wanted_of(call.body)))
