"""Facts over HTTP."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.operations import Answer, Call, operation
from counterpane.api.sending import as_json
from counterpane.library import facts
from counterpane_schema.fact import FactAnswer, FactList


@operation("GET", "/v1/facts", tag="facts", answer=FactList, examples=examples.ALL)
def list_facts(call: Call) -> Answer:
    """List the facts that rules and plans rest on, each with its source."""
    return as_json({"items": [{**card, "href": f"/v1/facts/{card['name']}"} for card in facts.cards(call.services)]})


@operation("GET", "/v1/facts/<name>", tag="facts", answer=FactAnswer, examples=examples.FACT)
def get_fact(call: Call) -> Answer:
    """Get a fact with its source and what it rests on."""
    name = call.path["name"]
    return as_json({**facts.get(call.services, name), "href": f"/v1/facts/{name}"})
