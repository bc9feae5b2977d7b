"""The reasons for moves and decisions over HTTP."""

from __future__ import annotations

from counterpane.api.operations import Answer, Call, Example, operation
from counterpane.api.sending import as_json
from counterpane.library.review import reasons
from counterpane_schema.standing import ReasonList


@operation("GET", "/v1/reasons", tag="reviewing", answer=ReasonList, examples=(Example(),))
def list_reasons(call: Call) -> Answer:
    """List the reasons for which something is moved or decided: a closed list of codes with their meaning."""
    return as_json({"items": reasons.reasons_json()})
