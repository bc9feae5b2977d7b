"""Safety over HTTP."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.operations import Answer, Call, operation
from counterpane.api.sending import as_json
from counterpane.library.safety.safety import assess
from counterpane_schema.safety import SafetyAnswer, SafetyInputs


@operation(
    "POST",
    "/v1/safety",
    tag="safety",
    answer=SafetyAnswer,
    body=SafetyInputs,
    problems=("not-usable",),
    examples=examples.SAFETY,
)
def assess_safety(call: Call) -> Answer:
    """Assess what is known of a piece.

    General information, not an approval: what is not sent is not known, and a rule that lacks an input stands under
    `not_assessed`, which is never a pass. With `profile` the piece is held against a list of a ward or charity too.
    Nothing is stored.
    """
    return as_json(assess(call.body, call.services.known.find_profile))
