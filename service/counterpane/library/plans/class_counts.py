"""One sheet of counts for a class: one recipe in one size, planned at the gauge of each knitter."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from counterpane.craft.constructions import CannotBePlanned, Plan
from counterpane.craft.findings import Finding
from counterpane.library.plans.bench import Bench
from counterpane.library.plans.plan_answers import finding_json, finished_json
from counterpane.library.values import BadInput
from counterpane.library.yarn.yarns import yarn_json, yarn_of_plan

Answer = dict[str, Any]
Content = Mapping[str, Any]

LETTERS = "ABCDEFGHIJ"
"""What knitters are called who give no name; as many as one sheet holds. House figure."""


def plan_class(content: Content, bench: Bench) -> Answer:
    """Return the counts of a plan request at each gauge of `knitters`; the request's own gauge counts for none.

    A knitter at whose gauge there is no plan has null counts, the findings that say why, and the nearest size where
    they name one. BadInput, with its place among the knitters, for a gauge that measures nothing.
    """
    knitters: Sequence[Content] = content["knitters"]
    request = {name: value for name, value in content.items() if name != "knitters"}
    return {"knitters": [_row(place, each, request, bench) for place, each in enumerate(knitters)]}


def _row(place: int, knitter: Content, request: Content, bench: Bench) -> Answer:
    told = {"label": knitter.get("label") or LETTERS[place], "gauge": knitter["gauge"]}
    own = {**request, "gauge": knitter["gauge"]}
    try:
        plan = bench.made(own)
    except CannotBePlanned as refusal:
        return told | _without(refusal.findings)
    except BadInput as fault:
        if not fault.pointer.startswith("/gauge"):
            raise
        raise BadInput(f"/knitters/{place}{fault.pointer}", str(fault), fault.hint) from None
    return told | _counted(plan, own, bench)


def _counted(plan: Plan, own: Content, bench: Bench) -> Answer:
    return {
        "cast_on": plan.counts.cast_on,
        "parts": [{"name": section.name, "rows": section.rows} for section in plan.every_section],
        "finished": finished_json(plan),
        "yarn": yarn_json(yarn_of_plan(plan, own.get("yarn"), bench.vocabulary)),
        "findings": [finding_json(finding) for finding in plan.findings],
        "nearest_size": None,
    }


def _without(findings: Sequence[Finding]) -> Answer:
    nothing: Answer = dict.fromkeys(("cast_on", "parts", "finished", "yarn"))
    told = [finding_json(finding) for finding in findings]
    sizes = [change for each in told for change in each["corrections"] if change["pointer"].startswith("/size/")]
    return nothing | {"findings": told, "nearest_size": sizes[0] if sizes else None}
