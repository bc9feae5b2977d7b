"""Where a component is used, and what of a recipe has successors, over HTTP."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.operations import Answer, Call, operation
from counterpane.api.sending import as_json
from counterpane.library.editions import outdated
from counterpane_schema.outdated import OutdatedAnswer, UsedInAnswer


@operation(
    "GET",
    "/v1/components/<slug>/used-in",
    tag="components",
    answer=UsedInAnswer,
    role="reader",
    examples=examples.COMPONENT,
)
def list_used_in(call: Call) -> Answer:
    """Tell how many recipes use a component, and which revision of it each pins."""
    return as_json(outdated.used_in(call.services, call.path["slug"]))


@operation(
    "GET", "/v1/recipes/<slug>/outdated", tag="recipes", answer=OutdatedAnswer, role="reader", examples=examples.RECIPE
)
def get_outdated(call: Call) -> Answer:
    """Tell which parts of a recipe have successors, and what taking them all would change.

    The recipe is planned as it stands and with the latest revisions; `changes` are the figures that differ, of counts,
    rows, size, yarn and safety. `fits` is false where no blanket comes of it, and `findings` say why.
    """
    return as_json(outdated.outdated(call.services, call.path["slug"]))
