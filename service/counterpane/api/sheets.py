"""Editors' sheets over HTTP."""

from __future__ import annotations

from dataclasses import replace

from counterpane.api import examples
from counterpane.api.checks import LONGEST_ESCAPE
from counterpane.api.operations import Answer, Call, operation
from counterpane.api.problems import Problem
from counterpane.api.sending import as_json
from counterpane.library.texts import sheets
from counterpane_schema.check import MOST_BYTES
from counterpane_schema.sheet import SheetAnswer, SheetRequest

TEXTS = 3
"""Times the largest text that a body may hold: the text, and a sheet that repeats its lines."""


@operation(
    "POST",
    "/v1/sheets",
    tag="checks",
    answer=SheetAnswer,
    body=SheetRequest,
    examples=examples.SHEET,
    problems=("not-usable",),
    most_bytes=LONGEST_ESCAPE * TEXTS * MOST_BYTES,
)
def check_sheet(call: Call) -> Answer:
    """Put what a check finds as questions to the designer, or check a sheet of such questions again.

    Send the answered sheet back with the changed text: a query whose finding is gone is settled, what came up is asked,
    and answers, decisions, notes and questions put into other words stay as they are. Nothing is stored.
    """
    text = call.body["text"]
    if len(text.encode()) > MOST_BYTES:
        raise Problem("too-large", f"The text has more than {MOST_BYTES:,} bytes.")
    sheet = sheets.sheet_of(call.body.get("sheet") or {})
    asked = {name: value for name in ("cast_on", "terms", "style") if (value := call.body.get(name)) is not None}
    sheet = replace(sheet, **asked)
    style = sheets.style_of(call.services.styles, sheet.style)
    return as_json(sheets.sheet_json(sheets.check_sheet(text, call.services.vocabulary, sheet, style)))
