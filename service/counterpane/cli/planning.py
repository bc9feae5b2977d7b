"""From a file to a plan: what `plan`, `write` and `demo` have in common."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from counterpane.cli.documents import document_of
from counterpane.cli.endings import Unreadable
from counterpane.cli.inputs import read_text

if TYPE_CHECKING:
    from counterpane.craft.constructions import Plan
    from counterpane.craft.stitches import Vocabulary

HEADINGS = ("slug", "name", "summary", "status", "changed", "sha256", "etag")  # What a recipe has beside a plan request.
MOST_FAULTS = 5  # Faults of a document that are said one by one; house.


@dataclass(frozen=True, slots=True)
class Asked:
    """A plan request as it was given, and what to call it."""

    title: str
    content: Mapping[str, Any]


def read_request(where: str) -> Asked:
    """Read a plan request or a recipe; Unreadable for fields that are unknown, missing or of a wrong type."""
    given = read_text(where)
    document = document_of(given)
    _refuse_misfits(document, given.name)
    title = document.get("name") or document.get("slug") or "Blanket"
    return Asked(title, {name: value for name, value in document.items() if name not in HEADINGS})


def plan_of(content: Mapping[str, Any], vocabulary: Vocabulary) -> Plan:
    """Work the plan out over the components that ship with the program; CannotBePlanned where there is none."""
    from counterpane.library.plans import make_plan, plan_request_of

    return make_plan(plan_request_of(content, shipped(), vocabulary), vocabulary)


def _refuse_misfits(document: Mapping[str, Any], name: str) -> None:
    from counterpane_schema.faults import faults_of
    from counterpane_schema.plan import PlanRequest
    from counterpane_schema.recipe import RecipeContent

    is_recipe = any(heading in document for heading in HEADINGS)
    faults = faults_of(RecipeContent() if is_recipe else PlanRequest(), document)
    if faults:
        said = [f"{fault.pointer or 'the whole'}: {fault.message} {fault.hint}".strip() for fault in faults[:MOST_FAULTS]]
        more = [f"and {len(faults) - MOST_FAULTS} more"] if len(faults) > MOST_FAULTS else []
        raise Unreadable(f"{name}: this is not a plan request", "\n  ".join(said + more))
