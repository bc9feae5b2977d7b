"""Rules over HTTP."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.operations import Answer, Call, operation
from counterpane.api.sending import as_json
from counterpane.library import rules
from counterpane_schema.rule import RuleAnswer, RuleList


@operation("GET", "/v1/rules", tag="rules", answer=RuleList, examples=examples.ALL)
def list_rules(call: Call) -> Answer:
    """List the rules by which texts, plans and pieces are judged."""
    return as_json({"items": [{**card, **_addresses(card["slug"])} for card in rules.cards()]})


@operation("GET", "/v1/rules/<slug>", tag="rules", answer=RuleAnswer, examples=examples.RULE)
def get_rule(call: Call) -> Answer:
    """Get a rule: what it looks for and why, with a bad example and the same put right."""
    slug = call.path["slug"]
    return as_json({**rules.get(slug), **_addresses(slug)})


def _addresses(slug: str) -> dict[str, str]:
    return {"href": f"/v1/rules/{slug}", "page": f"/rules/{slug}"}
