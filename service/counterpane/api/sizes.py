"""Sizes by name over HTTP."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.operations import Answer, Call, operation
from counterpane.api.sending import as_json
from counterpane.library.plans import sizes
from counterpane_schema.size import NamedSizeAnswer, NamedSizeList


@operation("GET", "/v1/sizes", tag="sizes", answer=NamedSizeList, examples=examples.ALL)
def list_sizes(call: Call) -> Answer:
    """List the sizes that have a name.

    Each with the span of what its sources say, and the size that is planned where a plan names it. No standard sets the
    size of a blanket.
    """
    items = [{**card, "href": f"/v1/sizes/{card['name']}"} for card in sizes.cards(call.services.facts)]
    return as_json({"items": items})


@operation("GET", "/v1/sizes/<name>", tag="sizes", answer=NamedSizeAnswer, examples=examples.SIZE)
def get_size(call: Call) -> Answer:
    """Get a size by its name.

    With what each source says, and by how much it is wider and longer than the insides of cots, as figures only.
    """
    size = sizes.get(call.services.facts, call.path["name"])
    return as_json({**size, "href": f"/v1/sizes/{size['name']}"})
