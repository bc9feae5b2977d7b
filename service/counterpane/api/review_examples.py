"""Requests that work, of submissions, reports and decisions; they follow those of `examples` on the page."""

from __future__ import annotations

from counterpane.api.operations import Example

SUBMITTED = (Example(body={"component": "pea-rows", "say": "Worked over 21 stitches in three yarns."}),)
REPORTED = (Example(body={"component": "waffle", "say": "A finger was caught in a dropped stitch of the ridge."}),)
QUEUE = (Example(query={"turn": "us"}), Example(query={"lane": "safety", "limit": 5}))
SUBMISSION = (Example({"number": "1"}),)
DECIDED = (
    Example(
        {"number": "1"},
        body={"decision": "ask", "because": "safety-not-told", "say": "How large are the openings when stretched?"},
    ),
)
