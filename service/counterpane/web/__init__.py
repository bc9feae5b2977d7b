"""Pages for people about the API, its problems and the rules, drawn on the server from plain data.

No script, no inline style, nothing from another host; the policy in each answer forbids them. The description of the
API, the sorts of problem and the rules are passed in: this package knows nothing of the API.
"""

from __future__ import annotations

import html
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby
from typing import Any

from flask import Blueprint, Response, abort, render_template
from markupsafe import Markup, escape

from counterpane.web.describing import operations_of

POLICY = "default-src 'none'; style-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"


@dataclass(frozen=True, slots=True)
class RulePages:
    """The rules by family and slug, and all that the page of one shows, by its slug."""

    cards: Sequence[Mapping[str, Any]]
    page: Callable[[str], Mapping[str, Any]]


def pages(document: Mapping[str, Any], sorts: Sequence[Mapping[str, Any]], rules: RulePages) -> Blueprint:
    """Return the pages about this API, these sorts of problem and these rules."""
    blueprint = Blueprint("pages", __name__, template_folder="templates", static_folder="static")
    known = {sort["name"]: sort for sort in sorts}
    operations = {operation.name: operation for operation in operations_of(document)}
    families = [(name, tuple(cards)) for name, cards in groupby(rules.cards, lambda card: str(card["family"]))]
    slugs = {card["slug"] for card in rules.cards}

    @blueprint.get("/")
    def api_page() -> str:
        return render_template("api.html", info=document["info"], operations=operations.values(), sorts=sorts)

    @blueprint.get("/operations/<name>")
    def operation_page(name: str) -> str:
        return render_template("operation.html", operation=operations[name]) if name in operations else abort(404)

    @blueprint.get("/problems/<name>")
    def problem_page(name: str) -> str:
        return render_template("problem.html", sort=known[name]) if name in known else abort(404)

    @blueprint.get("/rules")
    def rules_page() -> str:
        return render_template("rules.html", families=families)

    @blueprint.get("/rules/<slug>")
    def rule_page(slug: str) -> str:
        return render_template("rule.html", rule=rules.page(slug)) if slug in slugs else abort(404)

    common = {"to": str, "home": "The API of Counterpane"}  # Here each path is the address itself.
    blueprint.app_context_processor(lambda: common)
    blueprint.add_app_template_filter(marked, "marked")
    blueprint.add_app_template_filter(as_text, "text")
    blueprint.after_request(_protect)
    return blueprint


def marked(text: str) -> Markup:
    """Return a text as HTML, with what stands between backticks as code."""
    pieces = escape(text).split("`")
    return Markup("").join(
        Markup("<code>{}</code>").format(piece) if place % 2 else piece for place, piece in enumerate(pieces)
    )


def as_text(text: str) -> Markup:
    """Return a text as HTML between tags, where quotes stand for themselves."""
    return Markup(html.escape(text, quote=False))


def _protect(response: Response) -> Response:
    response.headers["Content-Security-Policy"] = POLICY
    response.headers["Referrer-Policy"] = "no-referrer"
    response.headers.setdefault("Cache-Control", "no-cache")
    return response
